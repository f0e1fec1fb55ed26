/** The shallowest depth of field of a take: from its log, or from its notes. */
import { distanceFromNumber, metresFromDioptres } from "../core/quantity.ts";
import type { Take } from "../model/types.ts";
import { depthOfField, fNumberFor, hyperfocalFromImagePlaneMm } from "../optics/depth-of-field.ts";
import { type FramesAndStop, servedFocal } from "./frames.ts";
import type { DepthFigures, TakeSummary } from "./types.ts";

type Depth = NonNullable<TakeSummary["depthOfField"]>;

/** Smallest total over the frames; infinity comes last, frames that were refused are left out. `null` when no frame has a stop. */
export function shallowestDepth(frames: FramesAndStop): Depth | null {
  if (frames.stopUsed === null) return null;
  const { focusDioptres, nearDioptres, farDioptres } = frames.figures;
  if (focusDioptres.every((value) => Number.isNaN(value))) return null;
  let best = -1;
  let bestTotal = Number.POSITIVE_INFINITY;
  for (let i = 0; i < frames.figures.frames; i++) {
    const near = nearDioptres[i] as number;
    const far = farDioptres[i] as number;
    if (Number.isNaN(near)) continue;
    const total = far <= 0 ? Number.POSITIVE_INFINITY : 1 / far - 1 / near;
    if (best < 0 || total < bestTotal) {
      best = i;
      bestTotal = total;
    }
  }
  if (best < 0) return { shallowest: null, stopUsed: frames.stopUsed, source: "calculated" };
  const near = 1 / (nearDioptres[best] as number);
  const shallowest: DepthFigures = {
    frame: best,
    focusM: metresFromDioptres(focusDioptres[best] as number),
    nearM: near,
    farM: metresFromDioptres(farDioptres[best] as number),
    totalM: distanceFromNumber(bestTotal),
  };
  return { shallowest, stopUsed: frames.stopUsed, source: "calculated" };
}

/** From a take's notes: the noted stop and focal length at the nearest noted distance. Its frame is `null`. */
export function depthFromNotes(
  take: Take,
): (Depth & { readonly hyperfocalM: { readonly min: number; readonly max: number } }) | null {
  const stop = take.note?.stop?.value ?? null;
  const focus = take.note?.focus?.value ?? null;
  const focalMm = servedFocal(take);
  const cocMm = take.circleOfConfusionMm;
  if (stop === null || focus === null || focalMm === null || cocMm === null) return null;
  const widest = Math.min(stop.from, stop.to);
  const used = fNumberFor({
    fStop: stop.kind === "f" ? widest : null,
    tStop: stop.kind === "f" ? null : widest,
    transmittance: take.lens?.transmittance ?? null,
  });
  if (used === null) return null;
  const dioptres = Math.max(focus.fromDioptres, focus.toDioptres);
  const imagePlaneMm = dioptres <= 0 ? Number.POSITIVE_INFINITY : 1000 / dioptres;
  const depth = depthOfField({
    focalMm,
    fNumber: used.fNumber,
    cocMm,
    imagePlaneMm,
    pupilMagnification: take.lens?.pupilMagnification ?? 1,
  });
  const hyperfocalAt = (fNumber: number): number => hyperfocalFromImagePlaneMm({ focalMm, fNumber, cocMm }) / 1000;
  const deepest = (used.fNumber * Math.max(stop.from, stop.to)) / widest;
  return {
    shallowest:
      depth === null
        ? null
        : {
            frame: null,
            focusM: metresFromDioptres(dioptres),
            nearM: depth.nearMm / 1000,
            farM: distanceFromNumber(depth.farMm / 1000),
            totalM: distanceFromNumber(depth.totalMm / 1000),
          },
    stopUsed: used.used,
    source: "calculated",
    hyperfocalM: { min: hyperfocalAt(deepest), max: hyperfocalAt(used.fNumber) },
  };
}
