import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  blurDiameterMm,
  depthOfField,
  depthOfFieldDioptres,
  farFromLens,
  fNumberFor,
  hyperfocalFromImagePlaneMm,
  hyperfocalMm,
  imageDistanceMm,
  nearFromLens,
  objectDistanceMm,
} from "../../src/optics/depth-of-field.ts";

const INFINITE = Number.POSITIVE_INFINITY;

const lenses = fc.record({
  focalMm: fc.double({ min: 8, max: 400, noNaN: true }),
  fNumber: fc.double({ min: 0.7, max: 45, noNaN: true }),
  cocMm: fc.double({ min: 0.003, max: 0.06, noNaN: true }),
});
/** A focus somewhere between 1:1 and well past the hyperfocal distance, as a multiple of four focal lengths. */
const multiples = fc.double({ min: 1.001, max: 2000, noNaN: true });

describe("distance from the lens", () => {
  test("its two parts add up to the focus on the scale", () => {
    fc.assert(
      fc.property(lenses, multiples, ({ focalMm }, k) => {
        const d = 4 * focalMm * k;
        const s = objectDistanceMm(d, focalMm) as number;
        expect((s + imageDistanceMm(s, focalMm)) / d).toBeCloseTo(1, 9);
        expect(s).toBeGreaterThanOrEqual(2 * focalMm * 0.999999);
      }),
    );
  });

  test("closer than four focal lengths, or no number, is refused; 1:1 itself and infinity are not", () => {
    expect(objectDistanceMm(199.999, 50)).toBeNull();
    expect(objectDistanceMm(200, 50)).toBe(100);
    expect(objectDistanceMm(INFINITE, 50)).toBe(INFINITE);
    expect(objectDistanceMm(Number.NaN, 50)).toBeNull();
    expect(objectDistanceMm(-3000, 50)).toBeNull();
    expect(objectDistanceMm(3000, Number.NaN)).toBeNull();
    expect(objectDistanceMm(3000, 0)).toBeNull();
  });
});

describe("limits from the lens", () => {
  test("1/near + 1/far = 2/s wherever the far limit is finite", () => {
    fc.assert(
      fc.property(lenses, fc.double({ min: 0.05, max: 0.999, noNaN: true }), (lens, k) => {
        const h = hyperfocalMm(lens);
        const s = Math.max(h * k, 2 * lens.focalMm);
        fc.pre(s < h);
        const sum = 1 / nearFromLens(s, h, lens.focalMm) + 1 / farFromLens(s, h, lens.focalMm);
        expect(Math.abs(sum * s - 2)).toBeLessThan(1e-9);
      }),
    );
  });

  test("the near limit of the hyperfocal distance is half of it, and the far limit is infinite exactly from there on", () => {
    const h = hyperfocalMm({ focalMm: 50, fNumber: 8, cocMm: 0.03 });
    expect(nearFromLens(h, h, 50)).toBeCloseTo(h / 2, 9);
    expect(farFromLens(h, h, 50)).toBe(INFINITE);
    expect(farFromLens(h * (1 - 1e-9), h, 50)).toBeLessThan(INFINITE);
  });

  test("a point at a limit is blurred to the circle of confusion, and no more", () => {
    fc.assert(
      fc.property(lenses, fc.double({ min: 0.05, max: 0.95, noNaN: true }), (lens, k) => {
        const h = hyperfocalMm(lens);
        const s = Math.max(h * k, 2 * lens.focalMm);
        fc.pre(s < h);
        for (const limit of [nearFromLens(s, h, lens.focalMm), farFromLens(s, h, lens.focalMm)]) {
          expect(blurDiameterMm(lens, s, limit) / lens.cocMm).toBeCloseTo(1, 6);
        }
      }),
    );
  });

  test("the blur of infinity, and of a point when focused at infinity, is the limit of the blur of far points", () => {
    const lens = { focalMm: 50, fNumber: 2.8 };
    expect(blurDiameterMm(lens, 3000, INFINITE)).toBeCloseTo(blurDiameterMm(lens, 3000, 1e12), 6);
    expect(blurDiameterMm(lens, INFINITE, 3000)).toBeCloseTo(blurDiameterMm(lens, 1e12, 3000), 6);
    expect(blurDiameterMm(lens, 3000, 3000)).toBe(0);
  });
});

describe("depth of field from the image plane", () => {
  const lens = { focalMm: 50, fNumber: 2.8, cocMm: 0.025 };

  test("grows with the f-number and the circle of confusion, shrinks with the focal length", () => {
    const total = (change: Partial<typeof lens>) => depthOfField({ ...lens, ...change, imagePlaneMm: 3000 })?.totalMm as number;
    expect(total({ fNumber: 4 })).toBeGreaterThan(total({}));
    expect(total({ cocMm: 0.03 })).toBeGreaterThan(total({}));
    expect(total({ focalMm: 75 })).toBeLessThan(total({}));
  });

  test("at infinity it reaches from the hyperfocal distance on", () => {
    // H0 = 2500 / 0.07 = 35714.286 from the lens, and the lens is 50 from the image plane.
    const limits = depthOfField({ ...lens, imagePlaneMm: INFINITE });
    expect(limits?.nearMm).toBeCloseTo(35764.286, 3);
    expect(limits?.farMm).toBe(INFINITE);
    expect(limits?.totalMm).toBe(INFINITE);
  });

  test("far is infinite at the hyperfocal distance as a focus scale shows it, and finite just before", () => {
    const scale = hyperfocalFromImagePlaneMm(lens);
    // H = 35764.286 and v = 50 x 35764.286 / 35714.286 = 50.07.
    expect(scale).toBeCloseTo(35814.356, 2);
    expect(depthOfField({ ...lens, imagePlaneMm: scale + 0.001 })?.farMm).toBe(INFINITE);
    expect(depthOfField({ ...lens, imagePlaneMm: scale - 1 })?.farMm).toBeLessThan(INFINITE);
  });

  test("is refused below 4 f, and without a stop or a circle of confusion", () => {
    expect(depthOfField({ ...lens, imagePlaneMm: 199 })).toBeNull();
    expect(depthOfField({ ...lens, fNumber: Number.NaN, imagePlaneMm: 3000 })).toBeNull();
    expect(depthOfField({ ...lens, fNumber: 0, imagePlaneMm: 3000 })).toBeNull();
    expect(depthOfField({ ...lens, cocMm: 0, imagePlaneMm: 3000 })).toBeNull();
  });

  test("the focus lies between its limits", () => {
    fc.assert(
      fc.property(lenses, multiples, (any, k) => {
        const imagePlaneMm = 4 * any.focalMm * k;
        const limits = depthOfField({ ...any, imagePlaneMm });
        expect(limits?.nearMm).toBeLessThan(imagePlaneMm);
        expect(limits?.farMm).toBeGreaterThan(imagePlaneMm);
      }),
    );
  });
});

describe("many frames at once", () => {
  test("agree with the single form, in dioptres", () => {
    const focusDioptres = Float64Array.of(1 / 3, 1, 0, 1 / 40, Number.NaN, 6);
    const { near, far } = depthOfFieldDioptres({ focusDioptres, fNumber: 2.8, focalMm: 50, cocMm: 0.025 });
    focusDioptres.forEach((focus, i) => {
      const single = depthOfField({ focalMm: 50, fNumber: 2.8, cocMm: 0.025, imagePlaneMm: focus === 0 ? INFINITE : 1000 / focus });
      // 6 dioptres is 167 mm, closer than 4 f.
      if (single === null) expect([near[i], far[i]]).toEqual([Number.NaN, Number.NaN]);
      else {
        expect(near[i]).toBeCloseTo(1000 / single.nearMm, 12);
        expect(far[i]).toBeCloseTo(1000 / single.farMm, 12);
      }
    });
    expect([...far].map((v) => v === 0)).toEqual([false, false, true, true, false, false]);
  });

  test("take a stop and a focal length of each frame, and leave out frames that lack one", () => {
    const { near, far } = depthOfFieldDioptres({
      focusDioptres: Float64Array.of(1 / 3, 1 / 3, 1 / 3),
      fNumber: Float64Array.of(2.8, Number.NaN, 2.8),
      focalMm: Float64Array.of(50, 50, Number.NaN),
      cocMm: 0.025,
    });
    // 2778.58 and 3260.55 mm, as in CV12.
    expect(1000 / (near[0] as number)).toBeCloseTo(2778.58, 1);
    expect(1000 / (far[0] as number)).toBeCloseTo(3260.55, 1);
    expect([near[1], far[1], near[2], far[2]]).toEqual([Number.NaN, Number.NaN, Number.NaN, Number.NaN]);
  });
});

describe("the number that serves as N", () => {
  test("is the f-stop if there is one, else T times the root of the transmittance, else T, and says which", () => {
    expect(fNumberFor({ fStop: 2.7, tStop: 2.9, transmittance: 0.5 })).toEqual({ fNumber: 2.7, used: "f" });
    // 4 x sqrt(0.81) = 3.6.
    expect(fNumberFor({ tStop: 4, transmittance: 0.81 })).toEqual({ fNumber: expect.closeTo(3.6, 12), used: "t-times-root-tau" });
    expect(fNumberFor({ fStop: null, tStop: 4, transmittance: null })).toEqual({ fNumber: 4, used: "t" });
  });

  test("is null without any stop, and what was not logged is no stop", () => {
    expect(fNumberFor({})).toBeNull();
    expect(fNumberFor({ transmittance: 0.8 })).toBeNull();
    expect(fNumberFor({ fStop: Number.NaN, tStop: Number.NaN })).toBeNull();
    expect(fNumberFor({ fStop: Number.NaN, tStop: 4 })).toEqual({ fNumber: 4, used: "t" });
    expect(fNumberFor({ fStop: 0 })).toBeNull();
  });
});
