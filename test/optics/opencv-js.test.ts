/** Whole pictures and random points of two published calibrations, against OpenCV's projectPoints, initUndistortRectifyMap, remap. */
import fc from "fast-check";
import { beforeAll, describe, expect, it } from "vitest";
import { canonicalFromOpenCv } from "../../src/optics/distortion/convert.ts";
import { fastMap } from "../../src/optics/distortion/fast-map.ts";
import { idealFromRecorded, recordedFromIdeal } from "../../src/optics/distortion/map.ts";
import { pixelGrid } from "../../src/optics/distortion/map-grid.ts";
import { accepted } from "./lens-quantities.ts";
import { type Camera, openCvProject, openCvReady, openCvUndistortMap } from "./opencv.ts";
import { openCvRemap } from "./opencv-remap.ts";

/** Sources: A opencv samples/data/left_intrinsics.yml; C Camera Calibration Toolbox, Calib_Results.m. */
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
};

beforeAll(openCvReady);

describe.each(Object.entries(CAMERAS))("the published calibration %s", (_name, camera) => {
  const { distortion: d, focalMm, area } = accepted(canonicalFromOpenCv(camera, 6.4));
  const { grid, units } = pixelGrid(area, camera);
  const xMm = (px: number) => grid.firstXMm + px * grid.stepXMm;
  const yMm = (py: number) => grid.firstYMm + py * grid.stepYMm;
  const anywhere = fc.array(
    fc.tuple(
      fc.double({ min: 0, max: camera.widthPx - 1, noNaN: true }),
      fc.double({ min: 0, max: camera.heightPx - 1, noNaN: true }),
    ),
    { minLength: 50, maxLength: 50 },
  );

  it("is inverted to 1e-6 px anywhere in the frame: OpenCV projects our ideal points back onto the recorded ones", () => {
    fc.assert(
      fc.property(anywhere, (points) => {
        const rays = points.map(([px, py]): [number, number] => {
          const p = idealFromRecorded(d, xMm(px), yMm(py))!;
          return [(p.xMm - d.centreXMm) / focalMm, (p.yMm - d.centreYMm) / focalMm];
        });
        const again = openCvProject(camera, rays);
        points.forEach(([px, py], i) => {
          expect(Math.hypot(again[2 * i]! - px, again[2 * i + 1]! - py)).toBeLessThan(1e-6);
        });
      }),
      { numRuns: 20, seed: 5 },
    );
  });

  it("is evaluated to 1e-9 focal lengths at random ideal points", () => {
    const ray = fc.tuple(fc.double({ min: -0.45, max: 0.45, noNaN: true }), fc.double({ min: -0.4, max: 0.4, noNaN: true }));
    fc.assert(
      fc.property(fc.array(ray, { minLength: 50, maxLength: 50 }), (rays) => {
        const expected = openCvProject(camera, rays);
        rays.forEach(([x, y], i) => {
          const p = recordedFromIdeal(d, d.centreXMm + x * focalMm, d.centreYMm + y * focalMm)!;
          expect(Math.abs((p.xMm - d.centreXMm) / focalMm - (expected[2 * i]! - camera.cx) / camera.fx)).toBeLessThan(1e-9);
          expect(Math.abs((p.yMm - d.centreYMm) / focalMm - (expected[2 * i + 1]! - camera.cy) / camera.fy)).toBeLessThan(1e-9);
        });
      }),
      { numRuns: 20, seed: 6 },
    );
  });

  it("takes the look off a whole picture as OpenCV does: remap through our map and through its own differ by one code at most", () => {
    const { widthPx, heightPx } = camera;
    const picture = chart(widthPx, heightPx);
    const theirs = openCvUndistortMap(camera);
    const x = new Float32Array(widthPx * heightPx);
    const y = new Float32Array(widthPx * heightPx);
    const report = fastMap(d, "recorded", grid, units, x, y);
    expect(report.undefinedPoints).toBe(0);
    const ours = openCvRemap(picture, widthPx, heightPx, { x, y });
    const expected = openCvRemap(picture, widthPx, heightPx, theirs);
    let largestMap = 0;
    let differing = 0;
    let largest = 0;
    for (let i = 0; i < ours.length; i++) {
      largestMap = Math.max(largestMap, Math.abs(x[i]! - theirs.x[i]!), Math.abs(y[i]! - theirs.y[i]!));
      const off = Math.abs(ours[i]! - expected[i]!);
      if (off > 0) differing++;
      largest = Math.max(largest, off);
    }
    expect(largestMap).toBeLessThan(0.01);
    // remap counts in 32nds of a pixel, which the chart makes 1 code at most where a hundredth falls on the other side.
    expect(largest).toBeLessThanOrEqual(1);
    expect(differing).toBeLessThan(ours.length / 20);
    // A map that does nothing is another picture altogether.
    const untouched = openCvRemap(picture, widthPx, heightPx, {
      x: x.map((_, i) => i % widthPx),
      y: y.map((_, i) => Math.floor(i / widthPx)),
    });
    expect(untouched.filter((value, i) => Math.abs(value - expected[i]!) > 40).length).toBeGreaterThan(ours.length / 20);
  });
});

/** Soft waves across and down: no edge is steeper than 24 codes a pixel. */
function chart(width: number, height: number): Uint8Array {
  return Uint8Array.from({ length: width * height }, (_, i) => {
    const x = i % width;
    const y = Math.floor(i / width);
    return Math.round(128 + 60 * Math.sin((2 * Math.PI * x) / 24) + 60 * Math.cos((2 * Math.PI * y) / 32));
  });
}
