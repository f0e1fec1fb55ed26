import { describe, expect, it } from "vitest";
import { clockFromSyncPoints, isRateSlope } from "../../src/time/drift.ts";

describe("two sync points", () => {
  it("give the offset at time 0 and the drift: 36 ms in an hour are 10 ppm", () => {
    const clock = clockFromSyncPoints({ atSeconds: 3600, offsetSeconds: 1.036 }, { atSeconds: 7200, offsetSeconds: 1.072 });
    expect(clock.offsetSeconds).toBeCloseTo(1, 12);
    expect(clock.ppm).toBeCloseTo(10, 9);
  });
  it("at one time give none", () => {
    expect(clockFromSyncPoints({ atSeconds: 5, offsetSeconds: 0 }, { atSeconds: 5, offsetSeconds: 1 }).ppm).toBeNaN();
  });
  it("tell the slope between two rates from a crystal's drift", () => {
    // 24 against 24000/1001 is 1 part in 1001: 999 ppm
    expect(isRateSlope(999, 0)).toBe(true);
    expect(isRateSlope(-995, 0)).toBe(true);
    expect(isRateSlope(100, 0)).toBe(false);
    expect(isRateSlope(800, 0)).toBe(false);
  });
});
