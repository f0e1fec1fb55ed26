import { expect, test } from "vitest";
import { closeFocusFactor, relativeExposure, tFromF, transmittanceFrom, transmittanceStops } from "../../src/optics/exposure.ts";

test("transmittance and T-number are two ways to say one thing", () => {
  // (2.8 / 4)^2 = 0.49.
  expect(transmittanceFrom(2.8, 4)).toBeCloseTo(0.49, 12);
  expect(tFromF(2.8, 0.49)).toBeCloseTo(4, 12);
  expect(transmittanceStops(0.5)).toBe(1);
  expect(transmittanceStops(1)).toBeCloseTo(0, 12);
});

test("a stop of iris, of shutter and of filter weigh the same; the exposure index is counted apart", () => {
  const setup = { tStop: 4, shutterDeg: 180, fps: 24, ei: 800, ndStops: 0 };
  const base = relativeExposure(setup);
  const differences = [
    relativeExposure({ ...setup, tStop: 4 * Math.SQRT2 }).light - base.light,
    relativeExposure({ ...setup, shutterDeg: 90 }).light - base.light,
    relativeExposure({ ...setup, fps: 48 }).light - base.light,
    relativeExposure({ ...setup, ndStops: 1 }).light - base.light,
    relativeExposure({ ...setup, ei: 400 }).withEi - base.withEi,
  ];
  for (const difference of differences) expect(difference).toBeCloseTo(-1, 12);
  expect(relativeExposure({ ...setup, ei: 400 }).light).toBe(base.light);
  // EI 800 is three stops over EI 100.
  expect(base.withEi - base.light).toBeCloseTo(3, 12);
});

test("close focus costs less light with a large exit pupil", () => {
  // m = 1, P = 2: (1 + 1/2)^2.
  expect(closeFocusFactor(1, 2)).toBeCloseTo(2.25, 12);
  expect(closeFocusFactor(0)).toBe(1);
});
