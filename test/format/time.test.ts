import { describe, expect, test } from "vitest";
import { rational } from "../../src/core/rational.ts";
import {
  dateLong,
  dateMiddle,
  dateShort,
  dayMinutes,
  durationText,
  hoursMinutes,
  minutesSeconds,
  secondsText,
} from "../../src/format/time.ts";

function shown(text: string): string {
  return text.replaceAll("\u00a0", "~");
}

test.each([
  // 754 = 31 x 24 + 10.
  [754, 24, 1, "31~s 10~f"],
  [0, 24, 1, "0~s 0~f"],
  [24 * 60, 24, 1, "1~min 0~s 0~f"],
  [24 * 3600 + 24 * 61 + 3, 24, 1, "1~h 1~min 1~s 3~f"],
  [754, 24000, 1001, "31~s 10~f"],
  [59, 60000, 1001, "0~s 59~f"],
])("%d frames at %d/%d are %s", (frames, num, denom, text) => {
  expect(shown(durationText(frames, rational(num, denom)))).toBe(text);
});

test("minutes and seconds go to the nearest second, and never show sixty", () => {
  expect([78, 31.4, 0, 59.6, 3600, 1634].map(minutesSeconds)).toEqual(["1:18", "0:31", "0:00", "1:00", "60:00", "27:14"]);
  expect(shown(secondsText(2.125))).toBe("2.1~s");
});

test("hours of the shooting day go on past midnight", () => {
  expect([450, 1480, 1439, 1440, 0].map(dayMinutes)).toEqual(["07:30", "00:40+1", "23:59", "00:00+1", "00:00"]);
  // 07:30 to 18:20.
  expect(hoursMinutes(1100 - 450)).toBe("10:50");
});

describe("dates", () => {
  test.each([
    ["2026-10-06", "Tuesday 6 October 2026"],
    ["2026-03-14", "Saturday 14 March 2026"],
    ["2024-02-29", "Thursday 29 February 2024"],
    ["2000-01-01", "Saturday 1 January 2000"],
  ])("%s is %s", (date, text) => {
    expect(dateLong(date)).toBe(text);
  });

  test("without the weekday, and without the year", () => {
    expect(dateMiddle("2026-10-06")).toBe("6 October 2026");
    expect(dateShort("2026-10-06")).toBe("6 October");
  });

  test("text that is no date comes back as it is", () => {
    for (const text of ["2026-13-01", "2026-00-10", "6 Oct", "2026-02-40"]) expect(dateLong(text)).toBe(text);
  });
});
