/** Days of the calendar without a clock: weekdays and weeks from the dates as written. */

/** Days since 1970-01-01 of a `YYYY-MM-DD` date in the Gregorian calendar. */
export function dayNumber(date: string): number {
  const year = Number(date.slice(0, 4));
  const month = Number(date.slice(5, 7));
  const day = Number(date.slice(8, 10));
  const y = month <= 2 ? year - 1 : year;
  const era = Math.floor(y / 400);
  const yearOfEra = y - era * 400;
  const dayOfYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + day - 1;
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear;
  return era * 146_097 + dayOfEra - 719_468;
}

/** The `YYYY-MM-DD` date of a day number: the inverse of `dayNumber`. */
export function dateOf(number: number): string {
  const z = number + 719_468;
  const era = Math.floor(z / 146_097);
  const dayOfEra = z - era * 146_097;
  const yearOfEra = Math.floor(
    (dayOfEra - Math.floor(dayOfEra / 1460) + Math.floor(dayOfEra / 36_524) - Math.floor(dayOfEra / 146_096)) / 365,
  );
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const m = Math.floor((5 * dayOfYear + 2) / 153);
  const day = dayOfYear - Math.floor((153 * m + 2) / 5) + 1;
  const month = m < 10 ? m + 3 : m - 9;
  const year = yearOfEra + era * 400 + (month <= 2 ? 1 : 0);
  return `${String(year).padStart(4, "0")}-${String(month).padStart(2, "0")}-${String(day).padStart(2, "0")}`;
}

/** 0 = Monday ... 6 = Sunday. */
export function weekdayOf(number: number): number {
  return (((number + 3) % 7) + 7) % 7;
}

/** Whole weeks, Monday first, that hold every date; weeks without any of the dates are left out. */
export function weeksOf(dates: readonly string[]): readonly (readonly string[])[] {
  const mondays = [...new Set(dates.map((date) => dayNumber(date) - weekdayOf(dayNumber(date))))].sort((a, b) => a - b);
  return mondays.map((monday) => [0, 1, 2, 3, 4, 5, 6].map((i) => dateOf(monday + i)));
}
