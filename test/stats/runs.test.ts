import { expect, test } from "vitest";
import { runsOf, runsOfNumbers } from "../../src/stats/runs.ts";

test("runs have both ends inside, at the edges too", () => {
  expect(runsOf([0, 0, 1, 0], 0)).toEqual([
    { first: 0, last: 1 },
    { first: 3, last: 3 },
  ]);
  expect(runsOf(Uint8Array.of(1, 1), 1)).toEqual([{ first: 0, last: 1 }]);
});

test("a value that does not occur, and an empty column, have no runs", () => {
  expect(runsOf([1, 1], 0)).toEqual([]);
  expect(runsOf([], 0)).toEqual([]);
});

test("numbers run between what was not logged; zero is a number", () => {
  expect(runsOfNumbers(Float64Array.of(Number.NaN, 0, 2, Number.NaN, 3))).toEqual([
    { first: 1, last: 2 },
    { first: 4, last: 4 },
  ]);
});
