/** What does not match between the lenses of one kit: for matching light, matte boxes and balance. */
import { compareText } from "../core/finding.ts";
import type { Lens, SensorMode } from "../ingest/records.ts";
import { stopsBetween } from "../optics/exposure.ts";
import type { SetConsistency } from "./types.ts";

/** Compares the lenses of a kit. A part is `null` when no lens says it. */
export function setConsistency(lenses: readonly Lens[], modes: readonly SensorMode[] = []): SetConsistency {
  const byFocal = [...lenses].sort((a, b) => focalOf(a) - focalOf(b) || compareText(a.id, b.id));
  return {
    lenses: byFocal,
    widestT: widestStops(byFocal),
    fronts: fronts(byFocal),
    massG: masses(byFocal),
    closeFocusM: closeFocus(byFocal),
    squeezes: [...new Set(byFocal.map((lens) => lens.squeeze ?? 1))].sort((a, b) => a - b),
    mounts: [...new Set(byFocal.flatMap((lens) => (lens.mount === null ? [] : [lens.mount])))].sort(),
    imageCircle: imageCircle(byFocal, modes),
  };
}

function focalOf(lens: Lens): number {
  return lens.focalMm ?? lens.focalMinMm ?? 0;
}

function widestStops(lenses: readonly Lens[]): SetConsistency["widestT"] {
  const known = lenses.flatMap((lens) => (lens.widestT === null ? [] : [lens.widestT]));
  if (known.length === 0) return null;
  const fastest = Math.min(...known);
  const slowest = Math.max(...known);
  return { fastest, slowest, spreadStops: stopsBetween(fastest, slowest), lightRatio: (slowest / fastest) ** 2 };
}

function fronts(lenses: readonly Lens[]): SetConsistency["fronts"] {
  const byDiameter = new Map<number, string[]>();
  for (const lens of lenses) {
    if (lens.frontDiameterMm === null) continue;
    byDiameter.set(lens.frontDiameterMm, [...(byDiameter.get(lens.frontDiameterMm) ?? []), lens.id]);
  }
  return [...byDiameter]
    .map(([diameterMm, ids]) => ({ diameterMm, lenses: ids }))
    .sort((a, b) => b.lenses.length - a.lenses.length || a.diameterMm - b.diameterMm);
}

/** Lightest, heaviest, and the largest change between primes that are neighbours in focal length: what a lens change asks of the balance. */
function masses(lenses: readonly Lens[]): SetConsistency["massG"] {
  const all = lenses.flatMap((lens) => (lens.massG === null ? [] : [{ id: lens.id, kind: lens.kind, grams: lens.massG }]));
  if (all.length === 0) return null;
  const known = all.filter((lens) => lens.kind === "prime");
  let largestStep: NonNullable<SetConsistency["massG"]>["largestStep"] = null;
  for (let i = 1; i < known.length; i++) {
    const [from, to] = [known[i - 1], known[i]];
    if (from === undefined || to === undefined) continue;
    const grams = Math.abs(to.grams - from.grams);
    if (largestStep === null || grams > largestStep.grams) largestStep = { from: from.id, to: to.id, grams };
  }
  const grams = all.map((lens) => lens.grams);
  return { lightest: Math.min(...grams), heaviest: Math.max(...grams), largestStep };
}

function closeFocus(lenses: readonly Lens[]): SetConsistency["closeFocusM"] {
  const known = lenses.flatMap((lens) => (lens.closeFocusM === null ? [] : [lens.closeFocusM]));
  return known.length === 0 ? null : { nearest: Math.min(...known), farthest: Math.max(...known) };
}

/** Whether every lens covers the largest active area of the cameras: the picture's diagonal against the image circle. */
function imageCircle(lenses: readonly Lens[], modes: readonly SensorMode[]): SetConsistency["imageCircle"] {
  const known = lenses.flatMap((lens) => (lens.imageCircleMm === null ? [] : [{ id: lens.id, mm: lens.imageCircleMm }]));
  if (known.length === 0 || modes.length === 0) return null;
  const largestDiagonalMm = Math.max(...modes.map((mode) => Math.hypot(mode.activeWidthMm, mode.activeHeightMm)));
  return {
    smallestMm: Math.min(...known.map((lens) => lens.mm)),
    largestDiagonalMm,
    tooSmall: known.filter((lens) => lens.mm < largestDiagonalMm).map((lens) => lens.id),
  };
}
