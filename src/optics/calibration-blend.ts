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

/** Two neighbours on an axis and how far the request is from `low` to `high`, 0..1. `used` is the request, clamped. */
interface Bracket {
  readonly low: number;
  readonly high: number;
  readonly part: number;
  readonly used: number;
}

/** One focal length's rows with the places of its two axes. */
interface Grid {
  readonly rows: readonly CalibrationPointValues[];
  readonly distances: readonly number[];
  readonly stops: readonly number[];
}

interface Prepared {
  /** Coefficients that any row gives. */
  readonly names: readonly CoefficientName[];
  readonly focals: readonly number[];
  readonly grids: ReadonlyMap<number, Grid>;
}

/** A table is asked once a frame; what does not depend on the frame is worked out once a table. */
const PREPARED = new WeakMap<readonly CalibrationPointValues[], Prepared>();

function prepare(points: readonly CalibrationPointValues[]): Prepared {
  const known = PREPARED.get(points);
  if (known !== undefined) return known;
  const focals = distinct(points.map((p) => p.focalMm));
  const grids = new Map<number, Grid>();
  for (const focal of focals) {
    const rows = points.filter((p) => p.focalMm === focal);
    grids.set(focal, {
      rows,
      distances: distinct(rows.map((p) => p.focusDioptres)),
      stops: distinct(rows.flatMap((p) => (p.tStop === null ? [] : [Math.log2(p.tStop)]))),
    });
  }
  const names = COEFFICIENTS.filter((name) => points.some((p) => p.coefficients[name] !== undefined));
  const prepared = { names, focals, grids };
  PREPARED.set(points, prepared);
  return prepared;
}

/** Blends a table that has at least one row. */
export function blendTable(points: readonly CalibrationPointValues[], request: BlendRequest): Blend {
  const { names, focals, grids } = prepare(points);
  const focal = bracket(focals, request.focalMm);
  const gridAt = (focalMm: number) => grids.get(focalMm) ?? { rows: [], distances: [], stops: [] };
  const low = blendGrid(gridAt(focal.low), names, request);
  if (focal.part === 0) return { ...low, used: { ...low.used, focalMm: focal.used } };
  const high = blendGrid(gridAt(focal.high), names, request);
  const missing = [...low.missing, ...high.missing];
  const coefficients: Partial<Record<CoefficientName, number>> = {};
  for (const name of names) {
    const a = low.coefficients[name] ?? high.coefficients[name];
    const b = high.coefficients[name] ?? low.coefficients[name];
    if (a === undefined || b === undefined) continue;
    for (const side of [low, high]) {
      if (side.coefficients[name] === undefined) noteMissing(missing, { ...side.used, tStop: null });
    }
    coefficients[name] = PLAIN.has(name) ? mix(a, b, focal.part) : mix(a * focal.low, b * focal.high, focal.part) / focal.used;
  }
  return {
    coefficients,
    used: {
      focalMm: focal.used,
      focusDioptres: further(request.focusDioptres, low.used.focusDioptres, high.used.focusDioptres),
      log2T: furtherStop(request.log2T, low.used.log2T, high.used.log2T),
    },
    missing,
  };
}

/** Blends the rows of one focal length. */
function blendGrid(grid: Grid, names: readonly CoefficientName[], request: BlendRequest): Blend {
  const distance = bracket(grid.distances, request.focusDioptres);
  const stop = grid.stops.length === 0 ? null : bracket(grid.stops, request.log2T);
  const missing: BlendedCell[] = [];
  const coefficients: Partial<Record<CoefficientName, number>> = {};
  for (const name of names) {
    const along = (log2T: number | null): number | undefined => {
      const a = cellValue(grid, name, distance.low, log2T, missing);
      if (a === undefined || distance.part === 0) return a;
      const b = cellValue(grid, name, distance.high, log2T, missing);
      return b === undefined ? undefined : mix(a, b, distance.part);
    };
    const a = along(stop === null ? null : stop.low);
    const b = stop === null || stop.part === 0 ? a : along(stop.high);
    if (a !== undefined && b !== undefined) coefficients[name] = mix(a, b, stop === null ? 0 : stop.part);
  }
  return {
    coefficients,
    used: {
      focalMm: grid.rows[0]?.focalMm ?? request.focalMm,
      focusDioptres: distance.used,
      log2T: stop === null ? null : stop.used,
    },
    missing,
  };
}

/** A coefficient at a cell; where the row or its value is missing, that of the nearest row that has it, and the cell is noted. */
function cellValue(
  grid: Grid,
  name: CoefficientName,
  dioptres: number,
  log2T: number | null,
  missing: BlendedCell[],
): number | undefined {
  let nearest: number | undefined;
  let nearestAway = Number.POSITIVE_INFINITY;
  for (const row of grid.rows) {
    const value = row.coefficients[name];
    if (value === undefined || Number.isNaN(value)) continue;
    // A row for every stop serves any stop; one with the stop itself comes before it.
    const stopAway = row.tStop === null || log2T === null ? 0 : Math.abs(Math.log2(row.tStop) - log2T) / span(grid.stops);
    const distanceAway = Math.abs(row.focusDioptres - dioptres) / span(grid.distances);
    const away = stopAway ** 2 + distanceAway ** 2 + (row.tStop === null && log2T !== null ? 1e-12 : 0);
    if (away < nearestAway) {
      nearest = value;
      nearestAway = away;
    }
  }
  if (nearest === undefined || nearestAway <= 1e-11) return nearest;
  const cell = { focalMm: grid.rows[0]?.focalMm ?? Number.NaN, focusDioptres: dioptres, tStop: log2T === null ? null : 2 ** log2T };
  noteMissing(missing, cell);
  return nearest;
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
  const first = sorted[0] ?? asked;
  const last = sorted.at(-1) ?? asked;
  const used = Math.min(last, Math.max(first, asked));
  let low = first;
  let high = last;
  for (const value of sorted) {
    if (value <= used) low = value;
    else {
      high = value;
      break;
    }
  }
  const part = high > low ? (used - low) / (high - low) : 0;
  return { low, high, part, used };
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
