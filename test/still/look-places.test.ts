import { describe, expect, it } from "vitest";
import { completeCanonical } from "../../src/optics/distortion/canonical.ts";
import { lookPlaces, shiftAt } from "../../src/still/look-places.ts";
import { lookOnArea } from "../../src/still/middle-look.ts";

const AREA = { widthMm: 28.8, heightMm: 16.2 };
const PIXELS = { widthPx: 4608, heightPx: 2592 };
const look = (k1: number, centreXMm = 0) =>
  lookOnArea(AREA, 1, completeCanonical("brown-conrady", { k1 }, { direction: "undistort", centreXMm }), null)!;

describe("shift of the picture", () => {
  it("is the recorded point against the ideal one, in recorded pixels", () => {
    // 14.4 mm to the side: 14.4 x 0.0001 x 14.4^2 = 0.298598 mm, at 160 pixels a mm 47.78
    const shift = shiftAt(look(1e-4), PIXELS, { xMm: 14.4, yMm: 0 });
    expect(shift?.pixels).toBeCloseTo(47.776, 2);
    expect(shift?.way).toBe("inward");
    expect(shiftAt(look(-1e-4), PIXELS, { xMm: 14.4, yMm: 0 })?.way).toBe("outward");
  });

  it("has no way where there is none, and is unknown without distortion", () => {
    expect(shiftAt(look(0), PIXELS, { xMm: 14.4, yMm: 8.1 })).toEqual({ pixels: 0, way: null });
    const shaded = { b1: -1e-3, b2: 0, b3: 0, centreXMm: 0, centreYMm: 0, squeeze: 1 };
    expect(shiftAt(lookOnArea(AREA, 1, null, shaded)!, PIXELS, { xMm: 1, yMm: 1 })).toBeNull();
  });
});

describe("the places of the figures", () => {
  it("are top right, right and top on a centred lens", () => {
    expect(
      lookPlaces(look(1e-4)).map(({ letter, recorded }) => [letter, Math.sign(recorded.xMm), Math.sign(recorded.yMm)]),
    ).toEqual([
      ["C", 1, -1],
      ["S", 1, 0],
      ["T", 0, -1],
    ]);
  });

  it("lie on the side where the figure is largest when the centre is shifted", () => {
    expect(lookPlaces(look(1e-4, 2)).map(({ recorded }) => Math.sign(recorded.xMm))).toEqual([-1, -1, 0]);
  });
});
