/** The blending behind `coefficientsAt`: a grid of (1/distance, log2 T) at each focal length, and a line of focal lengths. */
import { type CalibrationPointValues, COEFFICIENTS, type CoefficientName, type Coefficients } from "./convention.ts";

export interface BlendRequest {
  readonly focalMm: number;
  readonly focusDioptres: number;
  readonly log2T: number;
}

/** A cell of the grid, by its place on the three axes; `tStop` is `null` for a row that serves every stop. */
export interface BlendedCell {
  readonly focalMm: number;
  readonly focusDioptres: number;
  readonly tStop: number | null;
}

export interface Blend {
  readonly coefficients: Coefficients;
  /** Where the table was read: the request, or the nearest place on an axis that does not reach it. */
  readonly used: { readonly focalMm: number; readonly focusDioptres: number; readonly log2T: number | null };
  readonly missing: readonly BlendedCell[];
}

/** Plain over focal length: lengths, shading and the pupil. All others are distortion terms, blended as term x focal length. */
const PLAIN: ReadonlySet<CoefficientName> = new Set(["cx_mm", "cy_mm", "a1", "a2", "a3", "entrance_pupil_mm"]);

/** Place `at` on an axis and how far the request is from it to the next, 0..1. `used` is the request, clamped. */
interface Bracket {
  readonly at: number;
  readonly part: number;
  readonly used: number;
}

/** One focal length's cells: for each coefficient, distance and stop, the stops next to each other. */
interface Grid {
  readonly focalMm: number;
  readonly distances: readonly number[];
  /** log2 T; empty when every row serves every stop. */
  readonly stops: readonly number[];
  /** NaN where no row of this focal length has the coefficient. */
  readonly values: Float64Array;
  /** 1 where the table lacks the cell and the nearest row's value stands in for it. */
  readonly stoodIn: Uint8Array;
}

interface Prepared {
  /** Coefficients that any row gives. */
  readonly names: readonly CoefficientName[];
  readonly plain: readonly boolean[];
  readonly focals: readonly number[];
  readonly grids: readonly Grid[];
}

/** A table is asked once a frame; what does not depend on the frame is worked out once a table. */
const PREPARED = new WeakMap<readonly CalibrationPointValues[], Prepared>();

function prepare(points: readonly CalibrationPointValues[]): Prepared {
  const known = PREPARED.get(points);
  if (known !== undefined) return known;
  const focals = distinct(points.map((p) => p.focalMm));
  const names = COEFFICIENTS.filter((name) => points.some((p) => p.coefficients[name] !== undefined));
  const grids = focals.map((focal) =>
    gridOf(
      points.filter((p) => p.focalMm === focal),
      focal,
      names,
    ),
  );
  const prepared = { names, plain: names.map((name) => PLAIN.has(name)), focals, grids };
  PREPARED.set(points, prepared);
  return prepared;
}

function gridOf(rows: readonly CalibrationPointValues[], focalMm: number, names: readonly CoefficientName[]): Grid {
  const distances = distinct(rows.map((p) => p.focusDioptres));
  const stops = distinct(rows.flatMap((p) => (p.tStop === null ? [] : [Math.log2(p.tStop)])));
  const columns = Math.max(1, stops.length);
  const values = new Float64Array(names.length * distances.length * columns);
  const stoodIn = new Uint8Array(values.length);
  for (let i = 0; i < values.length; i++) {
    const name = names[Math.floor(i / columns / distances.length)] ?? "k1";
    const cell = nearestValue(rows, name, { distances, stops }, Math.floor(i / columns) % distances.length, i % columns);
    values[i] = cell.value;
    stoodIn[i] = cell.away > 1e-11 ? 1 : 0;
  }
  return { focalMm, distances, stops, values, stoodIn };
}

/** Blends a table that has at least one row. */
export function blendTable(points: readonly CalibrationPointValues[], request: BlendRequest): Blend {
  const { names, plain, focals, grids } = prepare(points);
  const focal = bracket(focals, request.focalMm);
  const missing: BlendedCell[] = [];
  const low = placeIn(grids[focal.at], request);
  const high = focal.part === 0 ? low : placeIn(grids[focal.at + 1], request);
  const coefficients: Partial<Record<CoefficientName, number>> = {};
  for (let i = 0; i < names.length; i++) {
    const name = names[i];
    if (name === undefined) continue;
    const inLow = blendCell(low, i, missing);
    if (focal.part === 0) {
      if (!Number.isNaN(inLow)) coefficients[name] = inLow;
      continue;
    }
    const inHigh = blendCell(high, i, missing);
    if (Number.isNaN(inLow) && Number.isNaN(inHigh)) continue;
    if (Number.isNaN(inLow)) noteMissing(missing, { ...used(low), tStop: null });
    if (Number.isNaN(inHigh)) noteMissing(missing, { ...used(high), tStop: null });
    const a = Number.isNaN(inLow) ? inHigh : inLow;
    const b = Number.isNaN(inHigh) ? inLow : inHigh;
    coefficients[name] = plain[i]
      ? mix(a, b, focal.part)
      : mix(a * low.grid.focalMm, b * high.grid.focalMm, focal.part) / focal.used;
  }
  return {
    coefficients,
    used: {
      focalMm: focal.used,
      focusDioptres: further(request.focusDioptres, low.distance.used, high.distance.used),
      log2T: furtherStop(request.log2T, low.stop?.used ?? null, high.stop?.used ?? null),
    },
    missing,
  };
}

/** A grid and where in it the request lies. */
interface Place {
  readonly grid: Grid;
  readonly distance: Bracket;
  readonly stop: Bracket | null;
}

const NO_GRID: Grid = { focalMm: Number.NaN, distances: [], stops: [], values: new Float64Array(), stoodIn: new Uint8Array() };

function placeIn(grid: Grid = NO_GRID, request: BlendRequest): Place {
  return {
    grid,
    distance: bracket(grid.distances, request.focusDioptres),
    stop: grid.stops.length === 0 ? null : bracket(grid.stops, request.log2T),
  };
}

function used({ grid, distance }: Place): { readonly focalMm: number; readonly focusDioptres: number } {
  return { focalMm: grid.focalMm, focusDioptres: distance.used };
}

/** One coefficient between the four cells around the request; NaN where the focal length does not have it. */
function blendCell({ grid, distance, stop }: Place, name: number, missing: BlendedCell[]): number {
  const columns = Math.max(1, grid.stops.length);
  const first = (name * grid.distances.length + distance.at) * columns + (stop === null ? 0 : stop.at);
  const a = along(grid, first, columns, distance, missing);
  return stop === null || stop.part === 0 ? a : mix(a, along(grid, first + 1, columns, distance, missing), stop.part);
}

function along(grid: Grid, at: number, columns: number, { part }: Bracket, missing: BlendedCell[]): number {
  if (grid.stoodIn[at] === 1) noteCell(grid, at, columns, missing);
  const a = grid.values[at] ?? Number.NaN;
  if (part === 0) return a;
  if (grid.stoodIn[at + columns] === 1) noteCell(grid, at + columns, columns, missing);
  return mix(a, grid.values[at + columns] ?? Number.NaN, part);
}

function noteCell({ focalMm, distances, stops }: Grid, at: number, columns: number, missing: BlendedCell[]): void {
  const focusDioptres = distances[Math.floor(at / columns) % distances.length] ?? Number.NaN;
  noteMissing(missing, { focalMm, focusDioptres, tStop: stops.length === 0 ? null : 2 ** (stops[at % columns] ?? 0) });
}

/** A coefficient at a cell: where the row or its value is missing, that of the nearest row that has it, and how far away it is. */
function nearestValue(
  rows: readonly CalibrationPointValues[],
  name: CoefficientName,
  { distances, stops }: Pick<Grid, "distances" | "stops">,
  distance: number,
  stop: number,
): { readonly value: number; readonly away: number } {
  let value = Number.NaN;
  let least = Number.POSITIVE_INFINITY;
  const dioptres = distances[distance] ?? 0;
  const log2T = stops[stop] ?? null;
  for (const row of rows) {
    const given = row.coefficients[name];
    if (given === undefined || Number.isNaN(given)) continue;
    // A row for every stop serves any stop; one with the stop itself comes before it.
    const stopAway = row.tStop === null || log2T === null ? 0 : Math.abs(Math.log2(row.tStop) - log2T) / span(stops);
    const distanceAway = Math.abs(row.focusDioptres - dioptres) / span(distances);
    const away = stopAway ** 2 + distanceAway ** 2 + (row.tStop === null && log2T !== null ? 1e-12 : 0);
    if (away < least) {
      value = given;
      least = away;
    }
  }
  return { value, away: Number.isNaN(value) ? 0 : least };
}

function noteMissing(missing: BlendedCell[], { focalMm, focusDioptres, tStop }: BlendedCell): void {
  const known = missing.some((m) => m.focalMm === focalMm && m.focusDioptres === focusDioptres && m.tStop === tStop);
  if (!known) missing.push({ focalMm, focusDioptres, tStop });
}

/** Length of an axis, 1 for an axis of one value: distances on different axes are compared as parts of these. */
function span(sorted: readonly number[]): number {
  return (sorted.at(-1) ?? 0) - (sorted[0] ?? 0) || 1;
}

function bracket(sorted: readonly number[], asked: number): Bracket {
  const last = sorted.length - 1;
  const used = Math.min(sorted[last] ?? asked, Math.max(sorted[0] ?? asked, asked));
  let at = 0;
  while (at < last && (sorted[at + 1] ?? 0) <= used) at++;
  const low = sorted[at] ?? asked;
  const high = sorted[at + 1] ?? low;
  return { at, part: high > low ? (used - low) / (high - low) : 0, used };
}

function distinct(values: readonly number[]): number[] {
  return [...new Set(values)].sort((a, b) => a - b);
}

function mix(a: number, b: number, part: number): number {
  return part === 0 ? a : part === 1 ? b : a + (b - a) * part;
}

/** Of two places the one further from the request: what is said must not look better than it was. */
function further(asked: number, a: number, b: number): number {
  return Math.abs(b - asked) > Math.abs(a - asked) ? b : a;
}

function furtherStop(asked: number, a: number | null, b: number | null): number | null {
  return a === null ? b : b === null ? a : further(asked, a, b);
}
