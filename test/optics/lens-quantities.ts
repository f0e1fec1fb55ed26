/** What each `quantity` of test/reference/lens-*.json means in calls of the program. */

import { coefficientsAt } from "../../src/optics/calibration.ts";
import type { CoefficientConvention, Coefficients } from "../../src/optics/convention.ts";
import { type CanonicalDistortion, canonicalDistortion } from "../../src/optics/distortion/canonical.ts";
import { canonicalFromOpenCv, coefficientsIn, type OpenCvCamera } from "../../src/optics/distortion/convert.ts";
import { fieldExtreme, pictureHeightPercent } from "../../src/optics/distortion/field.ts";
import { idealFromRecorded, recordedFromIdeal } from "../../src/optics/distortion/map.ts";
import { detectPulls } from "../../src/optics/focus-pull.ts";
import { isRefused, type Refused } from "../../src/optics/refused.ts";
import { naturalFallOff, stopsFromFactor } from "../../src/optics/shading.ts";
import { pullSeries } from "./pull-series.ts";

export type Input = Readonly<Record<string, number>> & {
  readonly camera?: OpenCvCamera;
  readonly radius?: "half-width" | "half-height" | "half-diagonal";
};

export function accepted<T extends object>(value: T | Refused): T {
  if (isRefused(value)) throw new Error(value.refused);
  return value;
}

export const CONVENTION: CoefficientConvention = {
  model: "brown-conrady",
  direction: "distort",
  radius: "mm",
  areaMm: null,
  squeezeState: null,
  shadingRadius: "mm",
  shadingValues: "loss",
};

export function canonical(change: Partial<CoefficientConvention>, coefficients: Coefficients, focalMm = 50): CanonicalDistortion {
  return accepted(canonicalDistortion({ ...CONVENTION, ...change }, coefficients, focalMm));
}

const WIDTH_MM = 24;

function openCvPoint(camera: OpenCvCamera, x: number, y: number, distort: boolean): readonly number[] {
  const { distortion: d, focalMm } = accepted(canonicalFromOpenCv(camera, WIDTH_MM));
  const toPx = (p: { xMm: number; yMm: number } | null) =>
    p === null
      ? []
      : [camera.cx + ((p.xMm - d.centreXMm) * camera.fx) / focalMm, camera.cy + ((p.yMm - d.centreYMm) * camera.fy) / focalMm];
  if (distort) return toPx(recordedFromIdeal(d, d.centreXMm + x * focalMm, d.centreYMm + y * focalMm));
  return toPx(
    idealFromRecorded(
      d,
      d.centreXMm + ((x - camera.cx) * focalMm) / camera.fx,
      d.centreYMm + ((y - camera.cy) * focalMm) / camera.fy,
    ),
  );
}

/** r_d = r_u (1 + k r_u^2) by the half height, with the frame that it is on. */
function thirdOrder(i: Input): { d: CanonicalDistortion; area: { widthMm: number; heightMm: number } } {
  const area = { widthMm: i.widthMm!, heightMm: i.heightMm! };
  return { area, d: canonical({ radius: "half-height", areaMm: { width: area.widthMm, height: area.heightMm } }, { k1: i.k! }) };
}

function wave(i: Input): CanonicalDistortion {
  return canonical({ radius: "half-diagonal", areaMm: { width: 8, height: 6 } }, { k1: i.k1!, k2: i.k2! });
}

function weight(rows: readonly [Coefficients, number, number | null][], focusDioptres: number, tStop: number): number {
  const points = rows.map(([coefficients, focus, t]) => ({ focalMm: 50, focusDioptres: focus, tStop: t, coefficients }));
  return accepted(coefficientsAt({ convention: CONVENTION, points }, { focalMm: 50, focusDioptres, tStop })).coefficients.k1!;
}

function pulls() {
  return detectPulls({ dioptres: pullSeries(), deltaDioptres: 0.028, quantisation: 0, fps: 24, perSecond: 24 });
}

export const LENS_QUANTITIES: Readonly<Record<string, (i: Input) => number | readonly number[]>> = {
  openCvDistort: (i) => openCvPoint(i.camera!, i.x!, i.y!, true),
  openCvUndistort: (i) => openCvPoint(i.camera!, i.x!, i.y!, false),
  divisionIdeal: (i) =>
    idealFromRecorded(canonical({ model: "division", direction: "undistort" }, { lambda: i.lambda! }), i.recorded!, 0)!.xMm,
  divisionRecorded: (i) =>
    recordedFromIdeal(canonical({ model: "division", direction: "undistort" }, { lambda: i.lambda! }), 0, i.ideal!)!.yMm,
  rescaleK1: (i) => {
    const areaMm = { width: i.widthMm!, height: i.heightMm! };
    const d = canonical({ radius: "focal" }, { k1: i.k1! }, i.focalMm!);
    return accepted(coefficientsIn(d, { radius: i.radius!, focalMm: i.focalMm!, areaMm })).k1!;
  },
  idealCornerPercent: (i) => {
    const { d, area } = thirdOrder(i);
    const p = recordedFromIdeal(d, area.widthMm / 2, area.heightMm / 2)!;
    const radius = Math.hypot(area.widthMm, area.heightMm) / 2;
    return (100 * (Math.hypot(p.xMm, p.yMm) - radius)) / radius;
  },
  pictureHeightPercent: (i) => {
    const { d, area } = thirdOrder(i);
    return pictureHeightPercent(d, area)!;
  },
  smiaPercent: (i) => {
    const { d, area } = thirdOrder(i);
    return 2 * pictureHeightPercent(d, area)!;
  },
  waveCornerPercent: (i) => {
    const p = recordedFromIdeal(wave(i), 4, 3)!;
    return 100 * (Math.hypot(p.xMm, p.yMm) / 5 - 1);
  },
  waveExtremePercent: (i) => fieldExtreme(wave(i), { widthMm: 8, heightMm: 6 })!.percent,
  poly5Pixel: (i) => {
    const diagonal = Math.hypot(36, 24);
    const calibration = diagonal / 4.63;
    const areaMm = { width: (calibration * 4) / 5, height: (calibration * 3) / 5 };
    const pitch = diagonal / 4.6 / Math.hypot(1500, 1000);
    const d = canonical({ radius: "half-height", areaMm }, { k1: -0.0116031622, k2: -0.0007385514 });
    const p = recordedFromIdeal(d, (i.x! - 749.5) * pitch, (i.y! - 499.5) * pitch)!;
    return [749.5 + p.xMm / pitch, 499.5 + p.yMm / pitch];
  },
  fallOffAtDeg: (i) => naturalFallOff(Math.tan((i.deg! * Math.PI) / 180), 1),
  stopsFromFactor: (i) => stopsFromFactor(i.factor!),
  cornerFallOffStops: (i) => stopsFromFactor(naturalFallOff(Math.hypot(i.widthMm!, i.heightMm!) / 2, i.focalMm!)),
  weightOfNear: (i) =>
    weight(
      [
        [{ k1: 1 }, 1000 / i.nearMm!, null],
        [{ k1: 0 }, 1000 / i.farMm!, null],
      ],
      1000 / i.askedMm!,
      4,
    ),
  partOfStops: (i) =>
    weight(
      [
        [{ k1: 0 }, 1, i.wide!],
        [{ k1: 1 }, 1, i.deep!],
      ],
      1,
      i.asked!,
    ),
  oneSidedDepth: (i) => (1000 * i.fNumber! * i.cocMm!) / i.focalMm! ** 2,
  pullCount: () => pulls().length,
  pullExtent: (i) => pulls()[i.pull!]!.toDioptres - pulls()[i.pull!]!.fromDioptres,
  pullDepthsApprox: (i) => Math.abs(pulls()[i.pull!]!.toDioptres - pulls()[i.pull!]!.fromDioptres) / (2 * 0.028),
  pullMean: () => {
    const p = pulls()[0]!;
    // The pull of one second as drawn; the detector's own start lies where focus is still within 0.15 delta of its hold.
    return (p.meanDioptresPerSecond * (p.endFrame - p.startFrame)) / 24;
  },
  pullPeak: () => pulls()[0]!.peakDioptresPerSecond,
};
