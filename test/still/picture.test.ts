import { describe, expect, it } from "vitest";
import { type Picture, readPng, reduced, writePng } from "../../src/still/picture.ts";

/** A picture from grey values, row by row. */
function grey(widthPx: number, values: readonly number[], opacity = 255): Picture {
  return { widthPx, heightPx: values.length / widthPx, rgba: Uint8Array.from(values.flatMap((v) => [v, v, v, opacity])) };
}

/** Colour type in the header of a PNG: 0 grey, 2 colour, 4 and 6 the same with opacity. */
const colourType = (png: Uint8Array): number => png[25] ?? -1;

describe("PNG", () => {
  it("comes back as it was written, in the fewest channels that hold it", () => {
    const colour = { ...grey(2, [10, 20]), rgba: Uint8Array.from([10, 20, 30, 255, 40, 50, 60, 255]) };
    const clear = { ...colour, rgba: Uint8Array.from([10, 20, 30, 255, 40, 50, 60, 0]) };
    const cases = [
      [grey(2, [10, 20]), 0],
      [colour, 2],
      [grey(2, [10, 20], 7), 4],
      [clear, 6],
    ] as const;
    for (const [picture, type] of cases) {
      const png = writePng(picture);
      expect(colourType(png)).toBe(type);
      expect([...(readPng(png)?.rgba ?? [])]).toEqual([...picture.rgba]);
    }
  });

  it("is written with equal bytes for equal pictures", () => {
    expect(writePng(grey(3, [1, 2, 3]))).toEqual(writePng(grey(3, [1, 2, 3])));
  });

  it("that is broken gives no picture and no exception", () => {
    const png = writePng(grey(4, [1, 2, 3, 4, 5, 6, 7, 8]));
    expect(readPng(png.subarray(0, 40))).toBeNull();
    expect(readPng(new Uint8Array([1, 2, 3]))).toBeNull();
  });
});

describe("reduced", () => {
  it("leaves a picture that is small enough", () => {
    const small = grey(4, [1, 2, 3, 4]);
    expect(reduced(small, 4)).toBe(small);
  });

  it("takes the mean of squares, a part of a square at the right and below being left out", () => {
    // 5 wide to at most 2: squares of 3 would fit once, so one pixel: the mean of 1..3, 6..8, 11..13 is 7
    const values = Array.from({ length: 15 }, (_, i) => i + 1);
    const less = reduced(grey(5, values), 2);
    expect([less.widthPx, less.heightPx, less.rgba[0], less.rgba[3]]).toEqual([1, 1, 7, 255]);
  });
});
