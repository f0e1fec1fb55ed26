/** The lens on every frame of a take, in the units of `lens.csv`. */

import { guardedText } from "../../core/sheet-text.ts";
import { lensLookFrames } from "../../summary/lens-look-frames.ts";
import type { TakeSummary } from "../../summary/types.ts";
import { formatTimecode } from "../../time/timecode.ts";
import type { CsvCell } from "../csv-text.ts";
import { lossOf, plainBrownConrady } from "./coefficients.ts";
import { metresOfFocus, tidy } from "./units.ts";

export const LENS_COLUMNS = [
  "frame",
  "timecode",
  "focus_m",
  "t",
  "f",
  "focal_mm",
  "near_m",
  "far_m",
  "hyperfocal_m",
  "aov_h_deg",
  "aov_v_deg",
  "k1",
  "k2",
  "k3",
  "p1",
  "p2",
  "cx_mm",
  "cy_mm",
  "distortion_corner_percent",
  "a1",
  "a2",
  "a3",
  "shading_corner_stops",
  "entrance_pupil_mm",
  "calibration",
] as const;
export type LensColumn = (typeof LENS_COLUMNS)[number];
export type LensRow = Readonly<Record<LensColumn, CsvCell>>;

/** Label of a frame of the take; `null` when the take has no timecode. */
export function frameTimecode({ take }: Pick<TakeSummary, "take">, frame: number): string | null {
  return take.inFrame === null ? null : formatTimecode(take.inFrame + frame, take.rate, take.dropFrame);
}

/** The row of a frame; of a frame that was not logged only `frame` and `timecode`. */
export function lensRow(summary: TakeSummary, frame: number): LensRow {
  const { perFrame: f } = summary;
  const timecode = frameTimecode(summary, frame);
  const look = lensLookFrames(summary);
  if (f === null || look === null || f.logged[frame] !== 1) return { ...EMPTY, frame, timecode };
  const { distortion, shading } = look.look(frame) ?? NOTHING;
  const terms = distortion === null ? null : plainBrownConrady(distortion);
  const loss = shading === null ? null : lossOf(shading);
  const centre = terms !== null ? distortion : loss !== null ? shading : null;
  return {
    frame,
    timecode,
    focus_m: metres(f.focusDioptres[frame]),
    t: number(f.tStop[frame]),
    f: number(f.fStop[frame]),
    focal_mm: number(f.focalMm[frame]),
    near_m: metres(f.nearDioptres[frame]),
    far_m: metres(f.farDioptres[frame]),
    hyperfocal_m: number(f.hyperfocalM[frame]),
    aov_h_deg: number(f.angleHorizontalDeg[frame]),
    aov_v_deg: number(f.angleVerticalDeg[frame]),
    k1: number(terms?.k1),
    k2: number(terms?.k2),
    k3: number(terms?.k3),
    p1: number(terms?.p1),
    p2: number(terms?.p2),
    cx_mm: number(centre?.centreXMm),
    cy_mm: number(centre?.centreYMm),
    distortion_corner_percent: number(look.distortionPercent.corner[frame]),
    a1: number(loss?.a1),
    a2: number(loss?.a2),
    a3: number(loss?.a3),
    shading_corner_stops: number(look.shadingStops.corner[frame]),
    entrance_pupil_mm: number(look.entrancePupilMm[frame]),
    calibration: look.calibration[frame] ?? null,
  };
}

const EMPTY = Object.freeze(Object.fromEntries(LENS_COLUMNS.map((name) => [name, null]))) as Readonly<Record<LensColumn, null>>;
const NOTHING = { distortion: null, shading: null } as const;

/** Name of each column that nobody knows, as it stands in the file: never that of another column. */
export function unknownNames(summary: TakeSummary): readonly string[] {
  const taken = new Set<string>(LENS_COLUMNS);
  return (summary.take.track?.unknown ?? []).map(({ name }) => {
    let free = guardedText(name);
    while (taken.has(free)) free += "_log";
    taken.add(free);
    return free;
  });
}

function number(value: number | undefined): number | null {
  return value === undefined || Number.isNaN(value) ? null : tidy(value) + 0;
}

function metres(dioptres: number | undefined): CsvCell {
  if (dioptres === undefined || Number.isNaN(dioptres)) return null;
  const m = metresOfFocus(dioptres);
  return m === Number.POSITIVE_INFINITY ? "inf" : tidy(m);
}
