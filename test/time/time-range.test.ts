import { expect, test } from "vitest";
import {
  endExclusive,
  endInclusive,
  rangeContains,
  rangeFromEndExclusive,
  rangeFromEndInclusive,
  rangeIntersection,
} from "../../src/time/time-range.ts";

test("from frame 10 to the first frame after, 15, are five frames; with 15 inside they are six", () => {
  expect(rangeFromEndExclusive(10, 15)).toEqual({ start: 10, frames: 5 });
  expect(rangeFromEndInclusive(10, 15)).toEqual({ start: 10, frames: 6 });
  expect(rangeFromEndExclusive(10, 4)).toEqual({ start: 10, frames: 0 });
});

test("the end is outside, the last frame inside, and an empty range has no last frame", () => {
  const range = { start: 10, frames: 5 };
  expect(endExclusive(range)).toBe(15);
  expect(endInclusive(range)).toBe(14);
  expect(endInclusive({ start: 10, frames: 0 })).toBeNull();
  expect([9, 10, 14, 15].map((frame) => rangeContains(range, frame))).toEqual([false, true, true, false]);
});

test("ranges that touch have no frame in common", () => {
  expect(rangeIntersection({ start: 0, frames: 10 }, { start: 10, frames: 5 })).toBeNull();
  expect(rangeIntersection({ start: 0, frames: 11 }, { start: 10, frames: 5 })).toEqual({ start: 10, frames: 1 });
  expect(rangeIntersection({ start: 12, frames: 2 }, { start: 10, frames: 50 })).toEqual({ start: 12, frames: 2 });
});
