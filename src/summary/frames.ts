/** Figures on every frame of a take: depth of field, hyperfocal distance and angles of view, from what the log has. */

import type { Take } from "../model/types.ts";
import { depthOfFieldDioptres, fNumberFor, hyperfocalFromImagePlaneMm } from "../optics/depth-of-field.ts";
import { anglesOfView } from "../optics/field-of-view.ts";
import type { FrameFigures, StopUsed } from "./types.ts";

export interface FramesAndStop {
  readonly figures: FrameFigures;
  /** Which f-number the depths were calculated with; `null` when no frame has a stop. */
  readonly stopUsed: StopUsed | null;
}

/** Per-frame figures of a take with a log; `null` without one. */
export function frameFigures(take: Take): FramesAndStop | null {
  const track = take.track;
  if (track === null) return null;
  const n = track.frames;
  const nothing = (): Float64Array => new Float64Array(n).fill(Number.NaN);
  const column = (values: Float64Array | undefined): Float64Array => values ?? nothing();

  const tau = take.lens?.transmittance ?? null;
  const fStop = column(track.columns.f);
  const tStop = track.columns.t ?? tFromF(fStop, tau);
  const focalMm = track.columns.focal_mm ?? constant(n, track.logged, servedFocal(take));
  const focus = column(track.columns.focus);
  const fNumber = nothing();
  let stopUsed: StopUsed | null = null;
  for (let i = 0; i < n; i++) {
    const used = fNumberFor({ fStop: known(fStop[i]), tStop: known(track.columns.t?.[i]), transmittance: tau });
    if (used === null) continue;
    fNumber[i] = used.fNumber;
    stopUsed ??= used.used;
  }

  const hyperfocalM = nothing();
  const coc = take.circleOfConfusionMm;
  const depth =
    coc === null
      ? { near: nothing(), far: nothing() }
      : depthOfFieldDioptres({
          focusDioptres: focus,
          fNumber,
          focalMm,
          cocMm: coc,
          pupilMagnification: take.lens?.pupilMagnification ?? 1,
        });
  if (coc !== null) {
    for (let i = 0; i < n; i++) {
      if (!Number.isNaN(focalMm[i]) && !Number.isNaN(fNumber[i])) {
        hyperfocalM[i] =
          hyperfocalFromImagePlaneMm({ focalMm: focalMm[i] as number, fNumber: fNumber[i] as number, cocMm: coc }) / 1000;
      }
    }
  }

  const angleHorizontalDeg = nothing();
  const angleVerticalDeg = nothing();
  const mode = take.sensorMode;
  if (mode !== null) {
    for (let i = 0; i < n; i++) {
      const angles = anglesAt(take, focalMm[i] as number, focus[i] as number);
      if (angles === null) continue;
      angleHorizontalDeg[i] = angles.horizontal;
      angleVerticalDeg[i] = angles.vertical;
    }
  }
  return {
    figures: {
      frames: n,
      logged: track.logged,
      focusDioptres: focus,
      tStop,
      fStop,
      focalMm,
      nearDioptres: depth.near,
      farDioptres: depth.far,
      hyperfocalM,
      angleHorizontalDeg,
      angleVerticalDeg,
    },
    stopUsed,
  };
}

/** Angles of view of the take's sensor mode in degrees; `null` when something is not known or the distance is under four focal lengths. */
export function anglesAt(
  take: Take,
  focalMm: number,
  focusDioptres: number,
): { horizontal: number; vertical: number; diagonal: number } | null {
  const mode = take.sensorMode;
  if (mode === null || Number.isNaN(focalMm) || Number.isNaN(focusDioptres)) return null;
  const imagePlaneMm = focusDioptres <= 0 ? Number.POSITIVE_INFINITY : 1000 / focusDioptres;
  return anglesOfView({ widthMm: mode.activeWidthMm, heightMm: mode.activeHeightMm, focalMm, imagePlaneMm, squeeze: take.squeeze });
}

/** Focal length of a take whose log has none: the note's single value, else the kit's marked one. */
export function servedFocal(take: Take): number | null {
  const noted = take.note?.focalMm?.value ?? null;
  if (noted !== null && noted.from === noted.to) return noted.from;
  return noted === null ? (take.lens?.focalMm ?? null) : null;
}

function tFromF(fStop: Float64Array, tau: number | null): Float64Array {
  const t = new Float64Array(fStop.length).fill(Number.NaN);
  if (tau !== null) for (let i = 0; i < t.length; i++) t[i] = (fStop[i] as number) / Math.sqrt(tau);
  return t;
}

function constant(n: number, logged: Uint8Array, value: number | null): Float64Array {
  const values = new Float64Array(n).fill(Number.NaN);
  if (value !== null) for (let i = 0; i < n; i++) if (logged[i] === 1) values[i] = value;
  return values;
}

function known(value: number | undefined): number | null {
  return value === undefined || Number.isNaN(value) ? null : value;
}
