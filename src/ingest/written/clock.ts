import { type Reading, read, refuse } from "./reading.ts";

const DAY = 1440;

/**
 * A time of day in minutes after 00:00 of the day's date: `08:30` is 510, past midnight `00:40+1` is 1480.
 * Refused: hours above 23 (with the form that is meant), minutes above 59, seconds, 12-hour times.
 */
export function readClock(text: string): Reading<number> {
  const written = text.trim();
  const match = /^(\d{1,2}):(\d{2})\s*(\+1)?$/.exec(written);
  if (match === null) return refuse(`not a time of day: "${written}"`, "Write HH:MM such as 08:30, past midnight 00:40+1.");
  const hours = Number(match[1]);
  const minutes = Number(match[2]);
  if (minutes > 59) return refuse(`"${written}" has ${minutes} minutes`, "Minutes go up to 59.");
  if (hours >= 24 && hours < 36 && match[3] === undefined) {
    const clock = `${String(hours - 24).padStart(2, "0")}:${match[2]}+1`;
    return refuse(`"${written}" is past midnight`, `Write ${clock}.`);
  }
  if (hours > 23) return refuse(`"${written}" has hour ${hours}`, "Hours go up to 23; past midnight write 00:40+1.");
  return read(hours * 60 + minutes + (match[3] === undefined ? 0 : DAY));
}

/** A calendar date `2026-03-14`. Refused: other orders and days that do not exist. */
export function readDate(text: string): Reading<string> {
  const written = text.trim();
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(written);
  if (match === null) return refuse(`not a date: "${written}"`, "Write year-month-day such as 2026-03-14.");
  const [year, month, day] = [Number(match[1]), Number(match[2]), Number(match[3])];
  const leap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
  const days = [31, leap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][month - 1] ?? 0;
  return day >= 1 && day <= days ? read(written) : refuse(`there is no day ${written}`, "Write year-month-day such as 2026-03-14.");
}
