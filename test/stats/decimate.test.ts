import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { decimate } from "../../src/stats/decimate.ts";

const NOT_LOGGED = Number.NaN;

describe("decimate", () => {
  test("keeps smallest, largest, first and last of each column", () => {
    const d = decimate([3, 9, 1, 4, 5, 5, 7, 2], 0, 8, 2);
    expect([...d.min]).toEqual([1, 2]);
    expect([...d.max]).toEqual([9, 7]);
    expect([...d.first]).toEqual([3, 5]);
    expect([...d.last]).toEqual([4, 2]);
    expect([...d.gap]).toEqual([0, 0]);
    expect([...d.start]).toEqual([0, 4, 8]);
  });

  test("a column with one frame missing says so and still has its values; a column of nothing is NaN", () => {
    const d = decimate([1, NOT_LOGGED, 3, 4, NOT_LOGGED, NOT_LOGGED], 0, 6, 3);
    expect([...d.gap]).toEqual([1, 0, 1]);
    expect([...d.min]).toEqual([1, 3, NOT_LOGGED]);
    expect([...d.last]).toEqual([1, 4, NOT_LOGGED]);
  });

  test("takes the frames from `from` up to but not including `to`", () => {
    const d = decimate([100, 1, 2, 100], 1, 3, 1);
    expect([...d.min, ...d.max]).toEqual([1, 2]);
    expect([...d.start]).toEqual([1, 3]);
  });

  test("has never more columns than frames, and none for an empty span", () => {
    expect(decimate([1, 2, 3], 0, 3, 800).columns).toBe(3);
    expect(decimate([1, 2, 3], 2, 2, 800).columns).toBe(0);
    expect(decimate([1, 2, 3], 0, 99, 800).columns).toBe(3);
    expect(decimate([1, 2, 3], 0, 3, 0).columns).toBe(0);
  });

  test("no peak is lost, and no gap", () => {
    const value = fc.oneof(fc.double({ noNaN: true, min: -1e6, max: 1e6 }), fc.constant(NOT_LOGGED));
    fc.assert(
      fc.property(fc.array(value, { minLength: 1, maxLength: 200 }), fc.integer({ min: 1, max: 50 }), (values, columns) => {
        const d = decimate(values, 0, values.length, columns);
        const logged = values.filter((v) => !Number.isNaN(v));
        const kept = (column: Float64Array) => [...column].filter((v) => !Number.isNaN(v));
        expect(Math.min(...kept(d.min))).toBe(Math.min(...logged));
        expect(Math.max(...kept(d.max))).toBe(Math.max(...logged));
        expect(d.gap.includes(1)).toBe(logged.length < values.length);
      }),
    );
  });
});
