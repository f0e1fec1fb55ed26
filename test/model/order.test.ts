import { describe, expect, it } from "vitest";
import { beginOfShootingDay, secondsInto } from "../../src/model/order.ts";

const HOUR = 3600;

describe("shooting order", () => {
  it("begins at the day's call, so that takes after midnight come last", () => {
    const begin = beginOfShootingDay([], 18 * 60);
    expect(secondsInto(begin, 0.5 * HOUR)).toBeGreaterThan(secondsInto(begin, 23 * HOUR));
  });
  it("lets a camera roll shortly before the call without putting that take last", () => {
    const begin = beginOfShootingDay([], 8 * 60);
    expect(secondsInto(begin, 7.75 * HOUR)).toBeLessThan(secondsInto(begin, 9 * HOUR));
  });
  it("begins after the largest gap between takes where no call is noted", () => {
    const starts = [0.5, 1, 19, 21, 23.5].map((h) => h * HOUR);
    const begin = beginOfShootingDay(starts, null);
    expect(begin).toBe(19 * HOUR);
    expect([...starts].sort((a, b) => secondsInto(begin, a) - secondsInto(begin, b))).toEqual(
      [19, 21, 23.5, 0.5, 1].map((h) => h * HOUR),
    );
  });
  it("keeps an ordinary day as it is", () => {
    const starts = [9, 12, 17].map((h) => h * HOUR);
    expect(beginOfShootingDay(starts, null)).toBe(9 * HOUR);
  });
});
