import { describe, expect, test } from "vitest";
import {
  exactStop,
  FULL_STOPS,
  inBetweenStop,
  isStopLabel,
  splitStop,
  stopsBetween,
  THIRD_STOPS,
} from "../../src/optics/exposure.ts";

describe("exactStop", () => {
  test("full stops are one stop apart, exactly", () => {
    FULL_STOPS.forEach((label, k) => {
      expect(exactStop(label)).toBeCloseTo(Math.SQRT2 ** k, 10);
    });
    expect(exactStop(4)).toBe(4);
    expect(stopsBetween(exactStop(2.8), exactStop(4))).toBeCloseTo(1, 12);
  });

  test("1.2 and 13 count as thirds, although halves are written so too", () => {
    expect(stopsBetween(1, exactStop(1.2))).toBeCloseTo(2 / 3, 12);
    expect(stopsBetween(1, exactStop(13))).toBeCloseTo(7 + 1 / 3, 12);
  });

  test("every label of the series has the deviation that the rounding of labels explains", () => {
    // The largest errors of published labels: 1.2 is 0.141 stop under, 13 is 0.068 over, 11 and 22 are 0.081 under.
    const errors = THIRD_STOPS.map(({ label, exact }) => stopsBetween(exact, label));
    expect(Math.max(...errors.map(Math.abs))).toBeCloseTo(0.141, 3);
    expect(stopsBetween(exactStop(13), 13)).toBeCloseTo(0.068, 3);
    expect(stopsBetween(exactStop(11), 11)).toBeCloseTo(-0.081, 3);
    expect(stopsBetween(exactStop(1.4), 1.4)).toBeCloseTo(-0.029, 3);
    expect(stopsBetween(exactStop(3.5), 3.5)).toBeCloseTo(-0.052, 3);
  });

  test("the remaining labels: 25 and 29 are thirds past 22, 27 and 38 halves", () => {
    expect(stopsBetween(22.627417, exactStop(25))).toBeCloseTo(1 / 3, 6);
    expect(stopsBetween(22.627417, exactStop(29))).toBeCloseTo(2 / 3, 6);
    expect(stopsBetween(22.627417, exactStop(27))).toBeCloseTo(1 / 2, 6);
    expect(stopsBetween(32, exactStop(38))).toBeCloseTo(1 / 2, 6);
    expect(stopsBetween(16, exactStop(18))).toBeCloseTo(1 / 3, 6);
    expect(stopsBetween(16, exactStop(20))).toBeCloseTo(2 / 3, 6);
  });

  test("a number that is no label stays as written", () => {
    for (const number of [2.1, 2.9, 1.54, 2.83, 45, 64, 0.95, 7]) {
      expect(exactStop(number)).toBe(number);
      expect(isStopLabel(number)).toBe(false);
    }
    expect(isStopLabel(2.8)).toBe(true);
  });
});

test("the third series runs from 1 to 32 without a hole and in order", () => {
  expect(THIRD_STOPS).toHaveLength(31);
  THIRD_STOPS.forEach(({ label, exact }, k) => {
    expect(stopsBetween(1, exact)).toBeCloseTo(k / 3, 12);
    expect(exactStop(label)).toBe(exact);
    if (k > 0) expect(label).toBeGreaterThan(THIRD_STOPS[k - 1]?.label as number);
  });
});

test("a fraction is a fraction of a stop, never added to the number, and only a full stop takes one", () => {
  // 8 1/3 is 8.980, not 8.333; 11 1/2 is 13.454, not 11.5.
  expect(inBetweenStop(8, 1 / 3)).toBeCloseTo(8.98, 3);
  expect(inBetweenStop(11, 1 / 2)).toBeCloseTo(13.454, 3);
  expect(inBetweenStop(3.2, 1 / 3)).toBeNull();
  expect(inBetweenStop(2.1, 1 / 2)).toBeNull();
});

test("a split is between neighbours of the full series only", () => {
  expect(splitStop(4, 5.6)).toBeCloseTo(4.757, 3);
  expect(splitStop(4, 2.8)).toBeNull();
  expect(splitStop(2.8, 5.6)).toBeNull();
  expect(splitStop(2.8, 3.2)).toBeNull();
  expect(splitStop(32, 45)).toBeNull();
});
