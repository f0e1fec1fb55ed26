/** Lines over frames: cut at what was not logged, thinned to what the eye can see, extremes kept. */
import { decimate } from "../stats/decimate.ts";
import { type Run, runsOf } from "../stats/runs.ts";

/** Points of a line, in pixels. */
export interface Points {
  readonly xs: number[];
  readonly ys: number[];
}

/** How far a thinned line may leave the full one, in pixels. */
export const TOLERANCE = 0.4;
/** The same in a row, where a picture an inch high stands beside the figures and a day has hundreds of them. */
const ROW_TOLERANCE = 0.5;
/** The same for the edge of a flat fill without a line of its own. */
export const ROW_BAND_TOLERANCE = 0.75;
/** A line with more points than this (a long take with a noisy log) may be thinned further, up to `COARSEST` pixels. */
const MOST_POINTS = 240;
const COARSEST = 1.4;

/** The unbroken runs of frames that have no value. */
export function emptyRuns(values: Float64Array): Run[] {
  const empty = new Uint8Array(values.length);
  for (let i = 0; i < empty.length; i++) if (Number.isNaN(at(values, i))) empty[i] = 1;
  return runsOf(empty, 1);
}

/**
 * The line of one run, at most four points a pixel before it is thinned. A frame's value is drawn at the frame's left edge
 * and held to the right edge of the run's last frame, so that a line meets the edge of a gap and a single logged frame
 * still shows.
 */
export function trace(
  values: Float64Array,
  run: Run,
  x: (frame: number) => number,
  y: (value: number) => number,
  tolerated = TOLERANCE,
): Points {
  const { first, last } = run;
  const columns = decimate(values, first, last + 1, Math.ceil(x(last + 1) - x(first)));
  const points: Points = { xs: [], ys: [] };
  const add = (frame: number, value: number) => {
    points.xs.push(x(frame));
    points.ys.push(y(value));
  };
  for (let c = 0; c < columns.columns; c++) {
    const start = at(columns.start, c);
    const span = at(columns.start, c + 1) - start - 1;
    const from = at(columns.first, c);
    const to = at(columns.last, c);
    add(start, from);
    // Extremes that are the column's own ends say nothing more: a line through them would be a stair.
    if (span > 1 && (at(columns.min, c) < Math.min(from, to) || at(columns.max, c) > Math.max(from, to))) {
      // Where in the column the extremes fell is finer than a pixel; they are drawn in the line's own direction.
      const rises = to >= from;
      add(start + span / 3, rises ? at(columns.min, c) : at(columns.max, c));
      add(start + (2 * span) / 3, rises ? at(columns.max, c) : at(columns.min, c));
    }
    if (span > 0) add(start + span, to);
  }
  add(last + 1, at(values, last));
  let tolerance = tolerated;
  let line = thin(points, tolerance);
  while (line.xs.length > MOST_POINTS && tolerance < COARSEST) {
    tolerance = Math.min(COARSEST, 1.5 * tolerance);
    line = thin(points, tolerance);
  }
  return line;
}

/**
 * Drops points that a straight line between kept ones passes within `tolerance` pixels of, measured along y. The ends
 * and the highest and lowest point are always kept.
 *
 * @source Douglas and Peucker 1973, with the vertical distance
 */
export function thin(points: Points, tolerance: number): Points {
  const { xs, ys } = points;
  const n = xs.length;
  if (n < 3) return points;
  const keep = new Uint8Array(n);
  let highest = 0;
  let lowest = 0;
  for (let i = 1; i < n; i++) {
    if (at(ys, i) < at(ys, highest)) highest = i;
    if (at(ys, i) > at(ys, lowest)) lowest = i;
  }
  const fixed = [...new Set([0, highest, lowest, n - 1])].sort((a, b) => a - b);
  const work: [number, number][] = [];
  for (let i = 0; i < fixed.length; i++) {
    keep[at(fixed, i)] = 1;
    if (i > 0) work.push([at(fixed, i - 1), at(fixed, i)]);
  }
  for (let span = work.pop(); span !== undefined; span = work.pop()) {
    const [from, to] = span;
    const left = at(xs, from);
    const level = at(ys, from);
    const width = at(xs, to) - left;
    const slope = width === 0 ? 0 : (at(ys, to) - level) / width;
    let worst = tolerance;
    let split = -1;
    for (let i = from + 1; i < to; i++) {
      const off = Math.abs(at(ys, i) - level - slope * (at(xs, i) - left));
      if (off > worst) {
        worst = off;
        split = i;
      }
    }
    if (split < 0) continue;
    keep[split] = 1;
    work.push([from, split], [split, to]);
  }
  const kept: Points = { xs: [], ys: [] };
  for (let i = 0; i < n; i++) {
    if (keep[i] !== 1) continue;
    kept.xs.push(at(xs, i));
    kept.ys.push(at(ys, i));
  }
  return kept;
}

/**
 * As `trace`, for a row: coarser, and but for its ends on a grid of half a pixel, which takes a third less room on the page.
 * The grid moves a point by a quarter of a pixel at most, beside what `tolerated` allows.
 */
export function traceRow(
  values: Float64Array,
  run: Run,
  x: (frame: number) => number,
  y: (value: number) => number,
  tolerated = ROW_TOLERANCE,
): Points {
  const half = (value: number) => Math.round(2 * value) / 2;
  const { xs, ys } = trace(values, run, x, y, tolerated);
  const inside = (value: number, i: number) => (i === 0 || i === xs.length - 1 ? value : half(value));
  return { xs: xs.map(inside), ys: ys.map(half) };
}

function at(values: ArrayLike<number>, i: number): number {
  return values[i] ?? 0;
}
