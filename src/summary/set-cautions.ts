/** What in a set of lenses does not match far enough to matter at a lens change. */
import type { SetConsistency } from "./types.ts";

/** Each with the figures its sentence needs. */
export type SetCaution =
  /** The slowest prime of the set is this much slower than the fastest: the set holds its stop. */
  | {
      readonly kind: "light";
      readonly spreadStops: number;
      readonly lightRatio: number;
      readonly fastest: number;
      readonly slowest: number;
    }
  /** Lenses whose front is not the one that most have. */
  | {
      readonly kind: "fronts";
      readonly commonMm: number;
      readonly others: readonly { readonly mm: number; readonly lenses: readonly string[] }[];
    }
  /** The largest change of mass between neighbours in focal length. */
  | { readonly kind: "mass"; readonly from: string; readonly to: string; readonly grams: number }
  | { readonly kind: "squeeze"; readonly squeezes: readonly number[] }
  | { readonly kind: "mounts"; readonly mounts: readonly string[] }
  | { readonly kind: "circle"; readonly lenses: readonly string[]; readonly diagonalMm: number };

/** A sixth of a stop is seen when shots are cut together; a change of 200 g moves the balance of a head or a gimbal. */
const LIMITS = { stops: 1 / 6, grams: 200 } as const;

/** Cautions in the order of the page; none for a set that matches. */
export function setCautions(set: SetConsistency): readonly SetCaution[] {
  const found: SetCaution[] = [];
  const t = set.widestT;
  if (t !== null && t.spreadStops > LIMITS.stops) found.push({ kind: "light", ...t });
  const [common, ...others] = set.fronts;
  if (common !== undefined && others.length > 0) {
    found.push({
      kind: "fronts",
      commonMm: common.diameterMm,
      others: others.map((front) => ({ mm: front.diameterMm, lenses: front.lenses })),
    });
  }
  const step = set.massG?.largestStep ?? null;
  if (step !== null && step.grams >= LIMITS.grams) found.push({ kind: "mass", ...step });
  if (set.squeezes.length > 1) found.push({ kind: "squeeze", squeezes: set.squeezes });
  if (set.mounts.length > 1) found.push({ kind: "mounts", mounts: set.mounts });
  const circle = set.imageCircle;
  if (circle !== null && circle.tooSmall.length > 0)
    found.push({ kind: "circle", lenses: circle.tooSmall, diagonalMm: circle.largestDiagonalMm });
  return found;
}
