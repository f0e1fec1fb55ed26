import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { packColumn, unpackColumn } from "../../src/core/packed-column.ts";

const whole = fc.oneof(fc.constant(Number.NaN), fc.constant(0), fc.integer({ min: -(10 ** 12), max: 10 ** 12 }));

describe("a packed column", () => {
  it("gives whole numbers and gaps back as they were, whatever they are", () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(whole, fc.integer({ min: 1, max: 70 }))), (runs) => {
        const values = runs.flatMap(([value, times]) => new Array<number>(times).fill(value));
        expect(Array.from(unpackColumn(packColumn(values, 1), values.length))).toEqual(values.map((v) => v + 0));
      }),
    );
  });

  it("keeps values to half a step", () => {
    const values = [2.4004, -2.4004, 0.0004, 123.4567];
    expect(Array.from(unpackColumn(packColumn(values, 1000), 4))).toEqual([2.4, -2.4, 0, 123.457]);
  });

  it("holds a value that stands still for an hour in a few signs, and a straight slope too", () => {
    expect(packColumn(new Array(86_400).fill(50), 10).text.length).toBeLessThan(12);
    expect(
      packColumn(
        Array.from({ length: 86_400 }, (_, i) => 3 * i),
        1,
      ).text.length,
    ).toBeLessThan(12);
  });

  it("is nothing from where its text ends", () => {
    const packed = packColumn([1, 2, 4, 8], 1);
    expect(Array.from(unpackColumn({ ...packed, text: "" }, 2))).toEqual([Number.NaN, Number.NaN]);
    expect(Array.from(unpackColumn(packed, 6)).slice(4)).toEqual([Number.NaN, Number.NaN]);
  });
});
