import { expect, test } from "vitest";
import { lowerMiddle, minMax } from "../../src/stats/summary.ts";

const NOT_LOGGED = Number.NaN;

test("the lower middle is a value that occurs: of four the second, of five the third", () => {
  expect(lowerMiddle([8, 2, 6, 4])).toBe(4);
  expect(lowerMiddle([8, 2, 6, 4, 10])).toBe(6);
  expect(lowerMiddle([7])).toBe(7);
});

test("numbers are sorted as numbers, also negative ones", () => {
  expect(lowerMiddle([10, 9, 100])).toBe(10);
  expect(lowerMiddle([-1, -10, 3])).toBe(-1);
});

test("frames that were not logged count for nothing, and nothing logged is null", () => {
  const column = Float64Array.of(NOT_LOGGED, 5, NOT_LOGGED, 1, 3);
  expect(lowerMiddle(column)).toBe(3);
  expect(minMax(column)).toEqual({ min: 1, max: 5 });
  for (const empty of [[], [NOT_LOGGED, NOT_LOGGED]]) {
    expect(lowerMiddle(empty)).toBeNull();
    expect(minMax(empty)).toBeNull();
  }
});

test("the column itself is left in its order", () => {
  const column = Float64Array.of(3, 1, 2);
  lowerMiddle(column);
  expect([...column]).toEqual([3, 1, 2]);
});

test("infinity is a value like any other", () => {
  expect(minMax([1, Number.POSITIVE_INFINITY])).toEqual({ min: 1, max: Number.POSITIVE_INFINITY });
  expect(minMax([Number.POSITIVE_INFINITY])).toEqual({ min: Number.POSITIVE_INFINITY, max: Number.POSITIVE_INFINITY });
});
