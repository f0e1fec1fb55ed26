/** Distortion, shading and entrance pupil of a take: logged coefficients before the calibration table, and why when there is neither. */

import type { Finding } from "../core/finding.ts";
import { CHECK } from "../core/findings/check.ts";
import { findingOf } from "../core/findings/kind.ts";
import type { Source } from "../core/quantity.ts";
import type { Take } from "../model/types.ts";
import { minMax } from "../stats/summary.ts";
import { frameLook, tableCoefficients } from "./frame-look.ts";
import type { CalibrationState, FrameFigures, ThreePoints } from "./types.ts";

export interface LensLook {
  readonly distortionPercent: ThreePoints | null;
  readonly shadingStops: ThreePoints | null;
  readonly state: CalibrationState;
  readonly entrancePupilMm: { readonly min: number; readonly max: number; readonly source: Source } | null;
  readonly findings: readonly Finding[];
}

/** The lens look at the take's middle logged frame, and the entrance pupil over all its frames. */
export function lensLook(take: Take, frames: FrameFigures | null, middle: number | null): LensLook {
  const entrancePupilMm = entrancePupil(take, frames);
  if (frames === null || middle === null) {
    const state = { kind: "none", reason: "the take has no log" } as const;
    return { distortionPercent: null, shadingStops: null, state, entrancePupilMm, findings: [] };
  }
  const { distortionPercent, shadingStops, state } = frameLook(take, frames, middle);
  const findings = state.kind === "nearest" && state.axes.length > 0 ? [beyondTable(take, state)] : [];
  return { distortionPercent, shadingStops, state, entrancePupilMm, findings };
}

/** Smallest and largest over the take: log, else calibration table, else kit. Never estimated. */
function entrancePupil(take: Take, frames: FrameFigures | null): LensLook["entrancePupilMm"] {
  const logged = minMax(take.track?.columns.entrance_pupil_mm ?? []);
  if (logged !== null) return { ...logged, source: "logged" };
  if (frames !== null && (take.calibration?.points.some((point) => point.coefficients.entrance_pupil_mm !== undefined) ?? false)) {
    const values: number[] = [];
    const seen = new Set<string>();
    for (let i = 0; i < frames.frames; i++) {
      if (frames.logged[i] !== 1) continue;
      const state = `${frames.focalMm[i]} ${frames.focusDioptres[i]} ${frames.tStop[i]}`;
      if (seen.has(state)) continue; // a held lens has one state for many frames
      seen.add(state);
      const pupil = tableCoefficients(take, frames, i).coefficients?.entrance_pupil_mm;
      if (pupil !== undefined) values.push(pupil);
    }
    const tabled = minMax(values);
    if (tabled !== null) return { ...tabled, source: "kit" };
  }
  const marked = take.lens?.entrancePupilMm ?? null;
  return marked === null ? null : { min: marked, max: marked, source: "kit" };
}

function beyondTable(take: Take, state: Extract<CalibrationState, { kind: "nearest" }>): Finding {
  const words = state.axes.map(({ axis, asked, used }) =>
    axis === "focus"
      ? `focus at ${metres(asked)}, table to ${metres(used)}`
      : axis === "focal"
        ? `${round(asked)} mm, table to ${round(used)} mm`
        : `T${round(asked)}, table to T${round(used)}`,
  );
  return findingOf(CHECK.beyondCalibration, {
    place: { file: take.calibration?.file ?? "", line: null, column: null },
    message: `Slate ${take.slate}, take ${take.take}, camera ${take.camera} was shot beyond the calibration of lens ${take.lens?.id ?? ""} (${words.join("; ")}); the nearest point of the table is used.`,
    hint: "Measure the lens at this setting before it goes back, if the plate matters.",
    take: take.address,
  });
}

function metres(dioptres: number): string {
  return dioptres <= 0 ? "infinity" : `${round(1 / dioptres)} m`;
}

function round(value: number): string {
  return String(Math.round(value * 100) / 100);
}
