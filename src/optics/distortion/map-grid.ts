/**
 * The exact map of a whole picture: grid in, grid out.
 *
 * @source the equations of map.ts at every sample; a map by definition
 */
import type { CanonicalDistortion } from "./canonical.ts";
import { equationRoom } from "./equation.ts";
import { mapPoint, type Side } from "./map.ts";

/** Samples of a picture in rows: the place of the first and the way to the next, mm from the middle of the area. */
export interface MapGrid {
  readonly columns: number;
  readonly rows: number;
  readonly firstXMm: number;
  readonly firstYMm: number;
  readonly stepXMm: number;
  readonly stepYMm: number;
}

/** What is written for a mapped point: mm x `perMm` + `atMiddle`. For pixels, `perMm` is pixels per mm. */
export interface MapUnits {
  readonly xPerMm: number;
  readonly xAtMiddle: number;
  readonly yPerMm: number;
  readonly yAtMiddle: number;
}

export interface MapReport {
  /** Samples that are not defined; NaN was written for them. */
  readonly undefinedPoints: number;
  readonly cells: number;
  /** Cells that were worked out sample by sample. */
  readonly exactCells: number;
  /** Largest miss at the places that were tried, among cells that were interpolated; in the unit of what is written. */
  readonly largestMiss: number;
}

/** Grid and units for a picture whose samples are the middles of its pixels, pixel 0 the first; maps are written in pixels. */
export function pixelGrid(
  area: { readonly widthMm: number; readonly heightMm: number },
  size: { readonly widthPx: number; readonly heightPx: number },
): { readonly grid: MapGrid; readonly units: MapUnits } {
  const stepXMm = area.widthMm / size.widthPx;
  const stepYMm = area.heightMm / size.heightPx;
  return {
    grid: {
      columns: size.widthPx,
      rows: size.heightPx,
      firstXMm: (stepXMm - area.widthMm) / 2,
      firstYMm: (stepYMm - area.heightMm) / 2,
      stepXMm,
      stepYMm,
    },
    units: {
      xPerMm: 1 / stepXMm,
      xAtMiddle: (size.widthPx - 1) / 2,
      yPerMm: 1 / stepYMm,
      yAtMiddle: (size.heightPx - 1) / 2,
    },
  };
}

/** The exact map, one full solution a sample. Row by row into `outX` and `outY`; allocates nothing for a sample. */
export function exactMap(
  d: CanonicalDistortion,
  side: Side,
  grid: MapGrid,
  units: MapUnits,
  outX: Float32Array | Float64Array,
  outY: Float32Array | Float64Array,
): MapReport {
  const undefinedPoints = exactBlock({ d, side, grid, units }, 0, grid.columns, 0, grid.rows, outX, outY);
  return { undefinedPoints, cells: 0, exactCells: 0, largestMiss: 0 };
}

/** What is mapped, and where to. */
export interface MapJob {
  readonly d: CanonicalDistortion;
  readonly side: Side;
  readonly grid: MapGrid;
  readonly units: MapUnits;
}

/** Exact value at a place counted in samples, in the unit of what is written, into `room`. */
export function sampleAt({ d, side, grid, units }: MapJob, column: number, row: number, room: Float64Array): boolean {
  const x = grid.firstXMm + column * grid.stepXMm;
  const y = grid.firstYMm + row * grid.stepYMm;
  if (!mapPoint(d, side, x, y, room)) return false;
  room[0] = (room[0] ?? 0) * units.xPerMm + units.xAtMiddle;
  room[1] = (room[1] ?? 0) * units.yPerMm + units.yAtMiddle;
  return true;
}

/** Works out a block of samples one by one; returns how many are not defined. */
export function exactBlock(
  job: MapJob,
  left: number,
  right: number,
  top: number,
  bottom: number,
  outX: Float32Array | Float64Array,
  outY: Float32Array | Float64Array,
): number {
  const room = equationRoom();
  let undefinedPoints = 0;
  for (let row = top; row < bottom; row++) {
    for (let column = left; column < right; column++) {
      const i = row * job.grid.columns + column;
      const defined = sampleAt(job, column, row, room);
      if (!defined) undefinedPoints++;
      outX[i] = defined ? (room[0] ?? Number.NaN) : Number.NaN;
      outY[i] = defined ? (room[1] ?? Number.NaN) : Number.NaN;
    }
  }
  return undefinedPoints;
}
