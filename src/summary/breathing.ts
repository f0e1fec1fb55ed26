/** Breathing: how much the angle of view changes when focus is pulled. */
import type { Take } from "../model/types.ts";
import { breathingPercent } from "../optics/field-of-view.ts";
import type { FrameFigures } from "./types.ts";

/**
 * `logged`: from the pinhole focal lengths in the log. `unit-focus estimate`: what a lens would do that focuses by moving as a
 * whole; inner focusing can do less, or the opposite.
 */
export type BreathingFrom = "logged" | "unit-focus estimate";

export interface Breathing {
  /** 100 (angle at the end / angle at the start - 1), horizontal angle of the desqueezed frame; negative is narrower. */
  readonly breathingPercent: number | null;
  readonly breathingFrom: BreathingFrom | null;
}

/** The ends of a pull. */
export interface PullEnds {
  readonly startFrame: number;
  readonly endFrame: number;
  readonly fromDioptres: number;
  readonly toDioptres: number;
}

/** Less than this part of a focal length is rounding, not a change. */
const SAME = 1e-6;

/**
 * Change of the angle of view over a pull. The estimate holds the focal length of the pull's start, so that a zoom move during
 * the pull does not count as breathing. Both are `null` when the sensor mode or the focal length is not known or an end is
 * nearer than four focal lengths.
 *
 * @source Definition: Wikipedia "Breathing (lens)"; angle with (1 + m): D. Jacobson, Photographic Lenses FAQ, Q6
 */
export function pullBreathing(take: Take, figures: FrameFigures, ends: PullEnds): Breathing {
  const none: Breathing = { breathingPercent: null, breathingFrom: null };
  const mode = take.sensorMode;
  if (mode === null) return none;
  const sideMm = mode.activeWidthMm * take.squeeze;
  const pinhole = pinholeFocals(take, ends);
  const percent =
    pinhole === null
      ? breathingPercent({
          sideMm,
          focalMm: figures.focalMm[ends.startFrame] ?? Number.NaN,
          imagePlaneMm: millimetres(ends.toDioptres),
          referenceMm: millimetres(ends.fromDioptres),
        })
      : 100 * (Math.atan(sideMm / (2 * pinhole.end)) / Math.atan(sideMm / (2 * pinhole.start)) - 1);
  if (!Number.isFinite(percent)) return none;
  return { breathingPercent: percent, breathingFrom: pinhole === null ? "unit-focus estimate" : "logged" };
}

/**
 * Logged focal lengths at the ends when they are pinhole focal lengths and move: those of OpenTrackIO samples always are, and a
 * prime's can be nothing else, since its own focal length does not move. A zoom's in a plain log is its setting.
 */
function pinholeFocals(take: Take, ends: PullEnds): { readonly start: number; readonly end: number } | null {
  const start = take.track?.columns.focal_mm?.[ends.startFrame] ?? Number.NaN;
  const end = take.track?.columns.focal_mm?.[ends.endFrame] ?? Number.NaN;
  const samples = take.logFiles.some((file) => file.toLowerCase().endsWith(".jsonl"));
  if (!samples && take.lens?.kind !== "prime") return null;
  return start > 0 && end > 0 && Math.abs(end / start - 1) > SAME ? { start, end } : null;
}

function millimetres(dioptres: number): number {
  return dioptres <= 0 ? Number.POSITIVE_INFINITY : 1000 / dioptres;
}
