/** The places that figures of a lens look are given for, and how far the picture is shifted there. */
import { idealFromRecorded, type PointMm } from "../optics/distortion/map.ts";
import { distortionPercent } from "../optics/distortion/percent.ts";
import { shadingFactor, stopsFromFactor } from "../optics/shading.ts";
import type { LookOnArea } from "./middle-look.ts";

export interface LookPlace {
  readonly letter: "C" | "S" | "T";
  /** On the recorded frame. */
  readonly recorded: PointMm;
}

/** Signs of the places of each kind; the first wins ties. */
const PLACES = [
  [
    "C",
    [
      [1, -1],
      [1, 1],
      [-1, -1],
      [-1, 1],
    ],
  ],
  [
    "S",
    [
      [1, 0],
      [-1, 0],
    ],
  ],
  [
    "T",
    [
      [0, -1],
      [0, 1],
    ],
  ],
] as const;

/** Corner, mid-side and mid-top: of each kind the one whose figure is largest, as the table gives it. */
export function lookPlaces(look: LookOnArea): readonly LookPlace[] {
  const amount = (xMm: number, yMm: number): number => {
    if (look.distortion !== null) return Math.abs(distortionPercent(look.distortion, xMm, yMm) ?? 0);
    return look.shading === null ? 0 : Math.abs(stopsFromFactor(shadingFactor(look.shading, xMm, yMm)));
  };
  return PLACES.map(([letter, signs]) => {
    let best = { recorded: { xMm: 0, yMm: 0 }, amount: Number.NEGATIVE_INFINITY };
    for (const [sx, sy] of signs) {
      const recorded = { xMm: (sx * look.widthMm) / 2, yMm: (sy * look.heightMm) / 2 };
      const here = amount(recorded.xMm, recorded.yMm);
      if (here > best.amount + 1e-9) best = { recorded, amount: here };
    }
    return { letter, recorded: best.recorded };
  });
}

export interface Shift {
  /** At the recorded resolution. */
  readonly pixels: number;
  /** Where the lens draws the point, against where it belongs; `null` when it is where it belongs, to a thousandth of a pixel. */
  readonly way: "inward" | "outward" | null;
}

/** How far the lens has moved what it draws at a recorded point; `null` without distortion or where that is not defined. */
export function shiftAt(
  look: LookOnArea,
  resolution: { readonly widthPx: number; readonly heightPx: number },
  recorded: PointMm,
): Shift | null {
  const { distortion } = look;
  const ideal = distortion === null ? null : idealFromRecorded(distortion, recorded.xMm, recorded.yMm);
  if (distortion === null || ideal === null) return null;
  const pixels = Math.hypot(
    ((ideal.xMm - recorded.xMm) / look.widthMm) * resolution.widthPx,
    ((ideal.yMm - recorded.yMm) / look.heightMm) * resolution.heightPx,
  );
  const radius = (p: PointMm): number => Math.hypot(p.xMm - distortion.centreXMm, p.yMm - distortion.centreYMm);
  return { pixels, way: pixels < 1e-3 ? null : radius(recorded) < radius(ideal) ? "inward" : "outward" };
}
