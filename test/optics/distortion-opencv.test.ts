import { beforeAll, describe, expect, it } from "vitest";
import { canonicalFromOpenCv, openCvFromCanonical } from "../../src/optics/distortion/convert.ts";
import { idealFromRecorded, mapPoints, recordedFromIdeal } from "../../src/optics/distortion/map.ts";
import { isRefused } from "../../src/optics/refused.ts";
import { accepted } from "./lens-quantities.ts";
import { type Camera, openCvProject, openCvReady, openCvUndistortMap } from "./opencv.ts";

/** Sources: A opencv samples/data/left_intrinsics.yml; C Camera Calibration Toolbox, Calib_Results.m; the others made up. */
const CAMERAS: Readonly<Record<string, Camera>> = {
  A: {
    fx: 535.9157339616,
    fy: 535.9157339616,
    cx: 342.2831547331,
    cy: 235.5708290979,
    widthPx: 640,
    heightPx: 480,
    coefficients: [-0.2663726090966068, -0.03858889892230465, 0.0017831947042852964, -0.00028122100441115472, 0.23839153080878486],
  },
  C: {
    fx: 657.462902987407,
    fy: 657.946729179114,
    cx: 303.136648967949,
    cy: 242.569349480213,
    widthPx: 640,
    heightPx: 480,
    coefficients: [-0.254025425598056, 0.121433037265364, -0.000208645992505, 0.00001941918285, 0],
  },
  example: {
    fx: 1000,
    fy: 1000,
    cx: 960,
    cy: 540,
    widthPx: 1920,
    heightPx: 1080,
    coefficients: [-0.1, 0.02, 0.001, -0.0005, -0.003],
  },
  rational: {
    fx: 900,
    fy: 880,
    cx: 955.5,
    cy: 548.25,
    widthPx: 1920,
    heightPx: 1080,
    coefficients: [0.31, -0.12, 0.0007, -0.0011, 0.011, 0.42, -0.05, 0.004],
  },
};
const WIDTH_MM = 24.89;

beforeAll(openCvReady);

describe.each(Object.entries(CAMERAS))("OpenCV's camera %s", (name, camera) => {
  const { distortion: d, focalMm, area } = accepted(canonicalFromOpenCv(camera, WIDTH_MM));
  const pitchX = focalMm / camera.fx;
  const pitchY = focalMm / camera.fy;

  it("projects points as projectPoints does, to 1e-9 px", () => {
    const points: [number, number][] = [];
    const reach = name === "A" ? 0.4 : 0.5;
    for (let x = -reach; x <= reach; x += reach / 8) for (let y = -reach; y <= reach; y += reach / 8) points.push([x, y]);
    const expected = openCvProject(camera, points);
    let largest = 0;
    points.forEach(([x, y], i) => {
      const p = recordedFromIdeal(d, d.centreXMm + x * focalMm, d.centreYMm + y * focalMm)!;
      largest = Math.max(
        largest,
        Math.abs(camera.cx + (p.xMm - d.centreXMm) / pitchX - expected[2 * i]!),
        Math.abs(camera.cy + (p.yMm - d.centreYMm) / pitchY - expected[2 * i + 1]!),
      );
    });
    expect(largest).toBeLessThan(1e-9);
  });

  it("comes back through the inverse: what projectPoints recorded is found as the ideal point, to 1e-9 mm", () => {
    const points: [number, number][] = [];
    for (let x = -0.35; x <= 0.35; x += 0.07) for (let y = -0.25; y <= 0.25; y += 0.05) points.push([x, y]);
    const recorded = openCvProject(camera, points);
    for (const [i, [x, y]] of points.entries()) {
      const p = idealFromRecorded(
        d,
        d.centreXMm + (recorded[2 * i]! - camera.cx) * pitchX,
        d.centreYMm + (recorded[2 * i + 1]! - camera.cy) * pitchY,
      )!;
      expect(Math.abs(p.xMm - d.centreXMm - x * focalMm)).toBeLessThan(1e-9);
      expect(Math.abs(p.yMm - d.centreYMm - y * focalMm)).toBeLessThan(1e-9);
    }
  });

  it("gives the undistortion map of initUndistortRectifyMap in float32, wherever the equation does not turn back", () => {
    const map = openCvUndistortMap(camera);
    const size = camera.widthPx * camera.heightPx;
    const x = new Float64Array(size);
    const y = new Float64Array(size);
    for (let i = 0; i < size; i++) {
      x[i] = ((i % camera.widthPx) + 0.5 - camera.widthPx / 2) * pitchX;
      y[i] = (Math.floor(i / camera.widthPx) + 0.5 - camera.heightPx / 2) * pitchY;
    }
    const outside = mapPoints(d, "recorded", x, y, x, y);
    let largest = 0;
    for (let i = 0; i < size; i++) {
      if (Number.isNaN(x[i]!)) continue;
      largest = Math.max(
        largest,
        Math.abs(x[i]! / pitchX + camera.widthPx / 2 - 0.5 - map.x[i]!),
        Math.abs(y[i]! / pitchY + camera.heightPx / 2 - 0.5 - map.y[i]!),
      );
    }
    // Half a unit in the last place of a float32 of up to 2047.
    expect(largest).toBeLessThan(2 ** -13 + 1e-9);
    expect(outside).toBeLessThan(size / 100);
  });

  it("goes to OpenCV and back without loss", () => {
    const back = accepted(openCvFromCanonical({ distortion: d, focalMm, area }, camera));
    const keys = ["fx", "fy", "cx", "cy"] as const;
    for (const key of keys) expect(Math.abs(back[key] - camera[key])).toBeLessThan(1e-9);
    back.coefficients.forEach((value, i) => {
      expect(Math.abs(value - (camera.coefficients[i] ?? 0))).toBeLessThan(1e-14);
    });
  });
});

it("refuses what OpenCV has and the canonical form has not, and the reverse", () => {
  const camera = CAMERAS.example!;
  const prism = canonicalFromOpenCv({ ...camera, coefficients: [0.1, 0, 0, 0, 0, 0, 0, 0, 0.001] }, WIDTH_MM);
  expect(isRefused(prism) && prism.refused).toMatch(/thin-prism/);
  const inMm = accepted(canonicalFromOpenCv(camera, WIDTH_MM));
  const undistorts = openCvFromCanonical({ ...inMm, distortion: { ...inMm.distortion, direction: "undistort" } }, camera);
  expect(isRefused(undistorts) && undistorts.refused).toMatch(/undistort/);
});

it("five fixed-point iterations are not the inverse: 3 px short of a strongly bent corner, where Newton's method is exact", () => {
  // r (1 - 0.3 r^2) = 0.65 by r <- 0.65 / (1 - 0.3 r^2) from 0.65: 0.7443, 0.7796, 0.7949, 0.8020, 0.8054; the root is 0.8086.
  const d = accepted(
    canonicalFromOpenCv({ ...(CAMERAS.example as Camera), cx: 959.5, cy: 539.5, coefficients: [-0.3, 0] }, 1.92),
  ).distortion;
  // 1920 px on 1.92 mm: fx 1000 px is 1 mm, so mm are focal lengths here.
  let short = 0.65;
  for (let i = 0; i < 5; i++) short = 0.65 / (1 - 0.3 * short * short);
  const r = idealFromRecorded(d, 0.65, 0)!.xMm;
  expect(Math.abs(r * (1 - 0.3 * r * r) - 0.65)).toBeLessThan(1e-14);
  expect(r).toBeCloseTo(0.8086, 3);
  expect(short).toBeCloseTo(0.8054, 4);
  expect(1000 * (r - short)).toBeGreaterThan(2.5);
});
