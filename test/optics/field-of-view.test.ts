import { describe, expect, test } from "vitest";
import { angleOfViewDeg, anglesOfView, breathingPercent, deliveredAspect, fieldSizeMm } from "../../src/optics/field-of-view.ts";

describe("angle of view", () => {
  test("a side of twice the focal length is 90 degrees at infinity", () => {
    expect(angleOfViewDeg({ sideMm: 50, focalMm: 25 })).toBeCloseTo(90, 12);
  });

  test("a squeeze of two widens the width only, and the diagonal is that of the desqueezed frame", () => {
    const angles = anglesOfView({ widthMm: 20, heightMm: 30, focalMm: 20, squeeze: 2 });
    expect(angles?.horizontal).toBeCloseTo(90, 12);
    // 2 atan(30 / 40) = 73.740; the desqueezed frame is 40 x 30 with a diagonal of 50: 2 atan(50 / 40) = 102.680.
    expect(angles?.vertical).toBeCloseTo(73.74, 3);
    expect(angles?.diagonal).toBeCloseTo(102.68, 3);
  });

  test("a single side may have its squeeze too", () => {
    expect(angleOfViewDeg({ sideMm: 20, focalMm: 20, squeeze: 2 })).toBeCloseTo(90, 12);
  });

  test("near focus narrows it, and closer than 4 f it is not defined", () => {
    expect(angleOfViewDeg({ sideMm: 24.89, focalMm: 50, imagePlaneMm: 199 })).toBeNaN();
    expect(anglesOfView({ widthMm: 24.89, heightMm: 18.66, focalMm: 50, imagePlaneMm: 199 })).toBeNull();
    // At 1:1 m = 1: 2 atan(24.89 / 200) = 14.187.
    expect(angleOfViewDeg({ sideMm: 24.89, focalMm: 50, imagePlaneMm: 200 })).toBeCloseTo(14.1876, 3);
  });

  test("a frame without a focal length has none", () => {
    expect(angleOfViewDeg({ sideMm: 24.89, focalMm: Number.NaN, imagePlaneMm: 3000 })).toBeNaN();
    expect(angleOfViewDeg({ sideMm: 24.89, focalMm: 50, imagePlaneMm: Number.NaN })).toBeNaN();
  });
});

test("the field at 1:1 is as large as the side, at infinity infinite, and with a squeeze that much wider", () => {
  expect(fieldSizeMm({ sideMm: 24.89, focalMm: 50, imagePlaneMm: 200 })).toBeCloseTo(24.89, 12);
  expect(fieldSizeMm({ sideMm: 24.89, focalMm: 50, imagePlaneMm: 200, squeeze: 2 })).toBeCloseTo(49.78, 12);
  expect(fieldSizeMm({ sideMm: 24.89, focalMm: 50 })).toBe(Number.POSITIVE_INFINITY);
  expect(fieldSizeMm({ sideMm: 24.89, focalMm: 50, imagePlaneMm: 100 })).toBeNaN();
});

test("breathing is nothing against the same focus, and has the other sign the other way round", () => {
  const view = { sideMm: 24.89, focalMm: 50, imagePlaneMm: 1000 };
  expect(breathingPercent({ ...view, referenceMm: 1000 })).toBe(0);
  expect(breathingPercent(view)).toBeLessThan(0);
  expect(breathingPercent({ ...view, imagePlaneMm: 3000, referenceMm: 1000 })).toBeGreaterThan(0);
});

test("two to one on 4:3 is delivered as 2.67", () => {
  expect(deliveredAspect(24, 18, 2)).toBeCloseTo(8 / 3, 12);
  expect(deliveredAspect(24, 18)).toBeCloseTo(4 / 3, 12);
});
