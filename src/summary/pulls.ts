/** Focus pulls of a take with their extents in metres, dioptres and depths. */

import { type DistanceM, metresFromDioptres } from "../core/quantity.ts";
import type { Take } from "../model/types.ts";
import { fNumberFor } from "../optics/depth-of-field.ts";
import { detectPulls } from "../optics/focus-pull.ts";
import { minMax } from "../stats/summary.ts";
import { pullBreathing } from "./breathing.ts";
import type { FramesAndStop } from "./frames.ts";
import type { PullFigures } from "./types.ts";

/** Stop that the detector assumes where neither log, notes nor kit say one. It only sets how small a move counts. */
const ASSUMED_F_NUMBER = 2.8;
const ASSUMED_COC_MM = 0.025;
const ASSUMED_FOCAL_MM = 50;

/** `null` without a log of focus. Speeds are at the capture rate. */
export function takePulls(take: Take, frames: FramesAndStop | null): readonly PullFigures[] | null {
  if (frames === null || take.track === null) return null;
  const figures = frames.figures;
  if (!figures.focusDioptres.some((value) => !Number.isNaN(value))) return null;
  const found = detectPulls({
    dioptres: figures.focusDioptres,
    deltaDioptres: oneSidedDepth(take, frames),
    quantisation: take.track.focusQuantisation,
    fps: take.rate.num / take.rate.denom,
    perSecond: take.captureFps,
  });
  return found.map((pull) => {
    const depth = (figures.nearDioptres[pull.startFrame] as number) - (figures.farDioptres[pull.startFrame] as number);
    const extentDioptres = Math.abs(pull.toDioptres - pull.fromDioptres);
    const fromM = metresFromDioptres(pull.fromDioptres);
    const toM = metresFromDioptres(pull.toDioptres);
    return {
      startFrame: pull.startFrame,
      endFrame: pull.endFrame,
      frames: pull.endFrame - pull.startFrame,
      fromM,
      toM,
      extentM: extent(fromM, toM),
      extentDioptres,
      extentDepths: Number.isNaN(depth) || depth <= 0 ? null : extentDioptres / depth,
      peakDioptresPerSecond: pull.peakDioptresPerSecond,
      meanDioptresPerSecond: pull.meanDioptresPerSecond,
      follow: pull.follow,
      ...pullBreathing(take, figures, pull),
    };
  });
}

function extent(from: DistanceM, to: DistanceM): DistanceM {
  if (from === to) return 0;
  return from === "inf" || to === "inf" ? "inf" : Math.abs(to - from);
}

/** delta = N c / f^2 in dioptres at the take's widest stop and longest focal length. */
function oneSidedDepth(take: Take, frames: FramesAndStop): number {
  const focal = minMax(frames.figures.focalMm)?.max ?? take.lens?.focalMaxMm ?? ASSUMED_FOCAL_MM;
  const widestT = minMax(frames.figures.tStop)?.min ?? widestNoted(take) ?? take.lens?.widestT ?? null;
  const used = fNumberFor({
    fStop: minMax(frames.figures.fStop)?.min ?? null,
    tStop: widestT,
    transmittance: take.lens?.transmittance ?? null,
  });
  const fNumber = used?.fNumber ?? ASSUMED_F_NUMBER;
  return (1000 * fNumber * (take.circleOfConfusionMm ?? ASSUMED_COC_MM)) / (focal * focal);
}

function widestNoted(take: Take): number | null {
  const stop = take.note?.stop?.value ?? null;
  return stop === null ? null : Math.min(stop.from, stop.to);
}
