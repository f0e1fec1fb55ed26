/** Regions of focal length, focus and stop: what a table holds, what was shot, and how far that lies beyond. */
import type { CalibrationTable } from "../ingest/records.ts";
import { coefficientsAt } from "../optics/calibration.ts";
import { stopValue } from "../optics/exposure.ts";
import { isRefused } from "../optics/refused.ts";
import { type CoverageAxis, coordinate } from "./coverage-reach.ts";
import { type CountedState, FOCAL_STEP_MM, FOCUS_STEP_DIOPTRES, STOP_STEP_STOPS } from "./state-histogram.ts";

export interface Region {
  readonly focalMm: { readonly min: number; readonly max: number };
  /** 0 is infinity: `min` is the farthest, `max` the nearest. */
  readonly focusDioptres: { readonly min: number; readonly max: number };
  /** `null`: no stop is known, or (in a table) every row serves every stop. */
  readonly tStop: { readonly widest: number; readonly deepest: number } | null;
}

/** How far frames lay beyond the table on one side of one axis. `below` is shorter, farther or wider open. */
export interface BeyondAxis {
  readonly axis: CoverageAxis;
  readonly side: "below" | "above";
  readonly frames: number;
  /** The farthest frame and the table's end: mm, dioptres or T-stop. */
  readonly asked: number;
  readonly used: number;
  /** The difference in mm, dioptres or stops. */
  readonly by: number;
}

export interface ShotRegion extends Region {
  /** Frames with a known focal length and focus, and those without. */
  readonly frames: number;
  readonly framesUnknown: number;
  /** Against the table; 0 without one that can be read. */
  readonly framesInside: number;
  readonly framesBeyond: number;
  /** Inside over frames; `null` without a table that can be read. */
  readonly fractionInside: number | null;
  readonly beyond: readonly BeyondAxis[];
}

/** Half a step of the histogram, in each axis's own unit: mm, dioptres, stops. */
const HALF_STEP: Readonly<Record<CoverageAxis, number>> = {
  focal: FOCAL_STEP_MM / 2,
  focus: FOCUS_STEP_DIOPTRES / 2,
  stop: STOP_STEP_STOPS / 2,
};

/** Where a state lies beyond the table, beyond the histogram's rounding; `null` when the table cannot be read there. */
export function beyondAxes(state: CountedState, table: CalibrationTable): Omit<BeyondAxis, "frames">[] | null {
  const { focalMm, focusDioptres, stops } = state;
  const found = coefficientsAt(table, { focalMm, focusDioptres, tStop: stops === null ? null : stopValue(stops) });
  if (isRefused(found)) return null;
  if (found.state.kind === "inside") return [];
  return found.state.axes.flatMap(({ axis, asked, used }) => {
    const by = axis === "stop" ? 2 * Math.log2(asked / used) : asked - used;
    if (Math.abs(by) <= HALF_STEP[axis] + 1e-9) return [];
    return [{ axis, side: by < 0 ? ("below" as const) : ("above" as const), asked, used, by: Math.abs(by) }];
  });
}

/** Distance between the table's neighbours of a state on an axis, at the nearest focal length; 0 at a point or beyond the ends. */
export function gapAround(state: CountedState, table: CalibrationTable, axis: CoverageAxis): number {
  const asked = coordinate(state, axis);
  if (asked === null) return 0;
  const focals = table.points.map((point) => point.focalMm);
  const nearest = focals.reduce((best, one) => (Math.abs(one - state.focalMm) < Math.abs(best - state.focalMm) ? one : best));
  const rows = axis === "focal" ? table.points : table.points.filter((point) => point.focalMm === nearest);
  const half = axis === "focal" ? HALF_STEP.focal / state.focalMm : HALF_STEP[axis];
  let low = Number.NEGATIVE_INFINITY;
  let high = Number.POSITIVE_INFINITY;
  for (const point of rows) {
    const stops = point.tStop === null ? null : 2 * Math.log2(point.tStop);
    const at = coordinate({ focalMm: point.focalMm, focusDioptres: point.focusDioptres, stops }, axis);
    if (at === null) return 0;
    if (Math.abs(at - asked) <= half + 1e-9) return 0;
    if (at < asked) low = Math.max(low, at);
    else high = Math.min(high, at);
  }
  return Number.isFinite(high - low) ? high - low : 0;
}

/** What a table holds. */
export function tableRegion(table: CalibrationTable): Region {
  const stops = table.points.flatMap((point) => (point.tStop === null ? [] : [point.tStop]));
  return {
    focalMm: range(table.points.map((point) => point.focalMm)),
    focusDioptres: range(table.points.map((point) => point.focusDioptres)),
    tStop: stops.length === 0 ? null : { widest: Math.min(...stops), deepest: Math.max(...stops) },
  };
}

/** What was shot, against a table that can be read (else `null`); `null` when no state is known. */
export function shotRegion(
  states: readonly CountedState[],
  table: CalibrationTable | null,
  framesUnknown: number,
): ShotRegion | null {
  if (states.length === 0) return null;
  const frames = sum(states.map((state) => state.frames));
  const stops = states.flatMap((state) => (state.stops === null ? [] : [state.stops]));
  const sides = new Map<string, BeyondAxis>();
  let framesInside = 0;
  let framesBeyond = 0;
  for (const state of table === null ? [] : states) {
    const axes = table === null ? null : beyondAxes(state, table);
    if (axes === null) continue;
    if (axes.length === 0) framesInside += state.frames;
    else framesBeyond += state.frames;
    for (const axis of axes) {
      const key = `${axis.axis} ${axis.side}`;
      const known = sides.get(key);
      const farthest = known === undefined || axis.by > known.by ? axis : known;
      sides.set(key, { ...farthest, frames: (known?.frames ?? 0) + state.frames });
    }
  }
  return {
    focalMm: range(states.map((state) => state.focalMm)),
    focusDioptres: range(states.map((state) => state.focusDioptres)),
    tStop: stops.length === 0 ? null : { widest: stopValue(Math.min(...stops)), deepest: stopValue(Math.max(...stops)) },
    frames,
    framesUnknown,
    framesInside,
    framesBeyond,
    fractionInside: table === null ? null : framesInside / frames,
    beyond: [...sides.values()],
  };
}

function range(values: readonly number[]): { readonly min: number; readonly max: number } {
  return { min: values.reduce((a, b) => Math.min(a, b)), max: values.reduce((a, b) => Math.max(a, b)) };
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
