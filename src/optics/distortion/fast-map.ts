/**
 * Maps of a whole picture. Distortion is smooth, so it is worked out exactly at every 32nd sample and by cubics between; each
 * cell of 32 x 32 samples is tried against the exact answer first and worked out sample by sample where the cubics miss, or
 * where the picture ends inside it.
 *
 * @source derived from first principles: interpolation by cubics of the exact map, its miss measured cell by cell
 */
import type { CanonicalDistortion } from "./canonical.ts";
import { equationRoom } from "./equation.ts";
import type { Side } from "./map.ts";
import { exactBlock, type MapGrid, type MapJob, type MapReport, type MapUnits, sampleAt } from "./map-grid.ts";

/** Samples from one knot to the next, in both directions. */
const STEP = 32;
const SPARE = 4;

/**
 * The map of {@link exactMap} to `tolerance` (in the unit of what is written; 0.01 for a hundredth of a pixel). A cell is
 * interpolated only when it is right to a quarter of the tolerance in its middle and on two of its sides, where cubics are
 * furthest off, and when all the knots around it are defined.
 */
export function fastMap(
  d: CanonicalDistortion,
  side: Side,
  grid: MapGrid,
  units: MapUnits,
  outX: Float32Array | Float64Array,
  outY: Float32Array | Float64Array,
  tolerance = 0.01,
): MapReport {
  const job = { d, side, grid, units };
  const cellColumns = Math.ceil(grid.columns / STEP);
  const cellRows = Math.ceil(grid.rows / STEP);
  const knots = knotsOf(job, Math.max(4, cellColumns + 1), Math.max(4, cellRows + 1));
  const rowX = new Float64Array(knots.columns);
  const rowY = new Float64Array(knots.columns);
  const weights = new Float64Array(4);
  const miss = new Float64Array(cellColumns);
  let undefinedPoints = 0;
  let exactCells = 0;
  let largestMiss = 0;

  for (let cellRow = 0; cellRow < cellRows; cellRow++) {
    const top = cellRow * STEP;
    const bottom = Math.min(grid.rows, top + STEP);
    for (let cell = 0; cell < cellColumns; cell++) {
      const left = cell * STEP;
      const off = missOf(job, knots, cell, cellRow, tolerance / SPARE);
      miss[cell] = off;
      if (off <= tolerance / SPARE) {
        largestMiss = Math.max(largestMiss, off);
        continue;
      }
      exactCells++;
      undefinedPoints += exactBlock(job, left, Math.min(grid.columns, left + STEP), top, bottom, outX, outY);
    }
    const from = firstKnot(cellRow, knots.rows);
    for (let row = top; row < bottom; row++) {
      cubicWeights(row / STEP - from, weights);
      blendRows(knots, from, weights, rowX, rowY);
      for (let cell = 0; cell < cellColumns; cell++) {
        if (!((miss[cell] ?? Number.NaN) <= tolerance / SPARE)) continue;
        const left = cell * STEP;
        const end = Math.min(grid.columns, left + STEP);
        const start = firstKnot(cell, knots.columns);
        const at = row * grid.columns;
        writeCubic(rowX, start, left, end, outX, at);
        writeCubic(rowY, start, left, end, outY, at);
      }
    }
  }
  return { undefinedPoints, cells: cellColumns * cellRows, exactCells, largestMiss };
}

/** Exact values at the corners of the cells, in the unit of what is written; NaN where they are not defined. */
interface Knots {
  readonly columns: number;
  readonly rows: number;
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly room: Float64Array;
  readonly across: Float64Array;
  readonly down: Float64Array;
}

function knotsOf(job: MapJob, columns: number, rows: number): Knots {
  const x = new Float64Array(columns * rows).fill(Number.NaN);
  const y = new Float64Array(columns * rows).fill(Number.NaN);
  const room = equationRoom();
  for (let i = 0; i < x.length; i++) {
    if (!sampleAt(job, (i % columns) * STEP, Math.floor(i / columns) * STEP, room)) continue;
    x[i] = room[0] ?? Number.NaN;
    y[i] = room[1] ?? Number.NaN;
  }
  return { columns, rows, x, y, room, across: new Float64Array(4), down: new Float64Array(4) };
}

/** Largest miss of the cubics at three places of a cell; `NaN` or `Infinity` where a knot or the place is not defined. */
function missOf(job: MapJob, knots: Knots, cell: number, cellRow: number, enough: number): number {
  let largest = 0;
  for (const [u, v] of TRIED) {
    const off = missAt(job, knots, cell, cellRow, u, v);
    if (!(off <= enough)) return off;
    largest = Math.max(largest, off);
  }
  return largest;
}

/** Where a cell is tried: its middle, and the middles of two sides, where one direction's miss cannot hide the other's. */
const TRIED = [
  [0.5, 0.5],
  [0.5, 0],
  [0, 0.5],
] as const;

function missAt(job: MapJob, knots: Knots, cell: number, cellRow: number, u: number, v: number): number {
  const { across, down, room } = knots;
  const column = firstKnot(cell, knots.columns);
  const row = firstKnot(cellRow, knots.rows);
  cubicWeights(cell + u - column, across);
  cubicWeights(cellRow + v - row, down);
  let x = 0;
  let y = 0;
  for (let j = 0; j < 4; j++) {
    for (let i = 0; i < 4; i++) {
      const weight = (across[i] ?? 0) * (down[j] ?? 0);
      const at = (row + j) * knots.columns + column + i;
      x += weight * (knots.x[at] ?? Number.NaN);
      y += weight * (knots.y[at] ?? Number.NaN);
    }
  }
  if (!sampleAt(job, (cell + u) * STEP, (cellRow + v) * STEP, room)) return Number.POSITIVE_INFINITY;
  return Math.max(Math.abs(x - (room[0] ?? 0)), Math.abs(y - (room[1] ?? 0)));
}

/** First of the four knots that a cell uses: one on each side of the cell and one further, moved in at the picture's edge. */
function firstKnot(cell: number, count: number): number {
  return Math.max(0, Math.min(cell - 1, count - 4));
}

/** Weights of four values at 0, 1, 2, 3 for the cubic through them at `s`. */
function cubicWeights(s: number, weights: Float64Array): void {
  weights[0] = (-(s - 1) * (s - 2) * (s - 3)) / 6;
  weights[1] = (s * (s - 2) * (s - 3)) / 2;
  weights[2] = (-s * (s - 1) * (s - 3)) / 2;
  weights[3] = (s * (s - 1) * (s - 2)) / 6;
}

/** Four rows of knots to the values at one row of samples. */
function blendRows(knots: Knots, from: number, weights: Float64Array, rowX: Float64Array, rowY: Float64Array): void {
  const { x, y, columns } = knots;
  for (let i = 0; i < columns; i++) {
    let sumX = 0;
    let sumY = 0;
    for (let j = 0; j < 4; j++) {
      const weight = weights[j] ?? 0;
      const at = (from + j) * columns + i;
      sumX += weight * (x[at] ?? Number.NaN);
      sumY += weight * (y[at] ?? Number.NaN);
    }
    rowX[i] = sumX;
    rowY[i] = sumY;
  }
}

/** Writes one cell of one row: the cubic through four knots, as a polynomial in the distance from the first. */
function writeCubic(
  values: Float64Array,
  start: number,
  left: number,
  end: number,
  out: Float32Array | Float64Array,
  at: number,
): void {
  const a = values[start] ?? 0;
  const b = values[start + 1] ?? 0;
  const c = values[start + 2] ?? 0;
  const e = values[start + 3] ?? 0;
  const c1 = (-11 * a + 18 * b - 9 * c + 2 * e) / 6;
  const c2 = (2 * a - 5 * b + 4 * c - e) / 2;
  const c3 = (-a + 3 * b - 3 * c + e) / 6;
  for (let column = left; column < end; column++) {
    const s = column / STEP - start;
    out[at + column] = a + s * (c1 + s * (c2 + s * c3));
  }
}
