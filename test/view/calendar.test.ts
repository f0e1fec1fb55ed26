import { describe, expect, it } from "vitest";
import { dateOf, dayNumber, weekdayOf, weeksOf } from "../../src/view/calendar.ts";

describe("calendar", () => {
  // ISO 8601 weekdays, Monday = 0 here: 1970-01-01 was a Thursday, 2000-02-29 a Tuesday, 2026-10-06 a Tuesday, 2100-03-01 a Monday.
  it.each([
    ["1970-01-01", 0, 3],
    ["2000-02-29", 11_016, 1],
    ["2026-10-06", 20_732, 1],
    ["2100-03-01", 47_541, 0],
  ])("numbers %s from 1970 and knows its weekday", (date, number, weekday) => {
    expect(dayNumber(date)).toBe(number);
    expect(weekdayOf(number)).toBe(weekday);
    expect(dateOf(number)).toBe(date);
  });

  it("gives whole weeks from Monday and leaves out weeks without a date", () => {
    const weeks = weeksOf(["2026-12-31", "2026-10-06"]);
    expect(weeks.map((week) => week[0])).toEqual(["2026-10-05", "2026-12-28"]);
    expect(weeks[1]?.at(-1)).toBe("2027-01-03");
  });
});
