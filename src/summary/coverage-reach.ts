/**
 * How far apart the points of a calibration table may be. Each measured point between two others is left out, read from its
 * neighbours, and compared with what was measured: that gives the curvature of this lens, and from it the widest gap at which
 * a reading between points stays within the tolerance. Towards the outside the last slope says how far the nearest point serves.
 */
import type { CalibrationTable } from "../ingest/records.ts";
import { coefficientsAt } from "../optics/calibration.ts";
import type { CalibrationPointValues } from "../optics/convention.ts";
import { canonicalDistortion } from "../optics/distortion/canonical.ts";
import { idealFromRecorded } from "../optics/distortion/map.ts";
import { isRefused } from "../optics/refused.ts";
import { canonicalShading, shadingStopsAt } from "../optics/shading.ts";
import type { LensState } from "./state-histogram.ts";

export type CoverageAxis = "focal" | "focus" | "stop";
export const AXES: readonly CoverageAxis[] = ["focal", "focus", "stop"];

/** Error that a reading between points, or from the nearest point, may have at the frame's corner. */
export const CORNER_TOLERANCE_PX = 0.5;
export const SHADING_TOLERANCE_STOPS = 0.1;

/** Steps where a table cannot tell: 10 % of focal length, half a dioptre, a whole stop. */
export const FOCAL_RATIO_STEP = 1.1;
export const FOCUS_STEP = 0.5;
export const STOP_STEP = 1;

/** On one axis, in its coordinate: the logarithm of the focal length, dioptres, stops. `Infinity`: any distance will do. */
export interface AxisReach {
  /** Widest gap between neighbouring points. */
  readonly between: number;
  /** How far past a last point, at smaller and at larger values, that point still serves. */
  readonly below: number;
  readonly above: number;
  /** False where the table has too few points on the axis to tell, and the plain step is used. */
  readonly tested: boolean;
}

export type Reach = Readonly<Record<CoverageAxis, AxisReach>>;

/** The picture whose corner counts. */
export interface CoveragePicture {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly squeeze: number;
}

/** Coordinate of a state on an axis; `null` for a stop that is not known. */
export function coordinate(state: LensState, axis: CoverageAxis): number | null {
  return axis === "focal" ? Math.log(state.focalMm) : axis === "focus" ? state.focusDioptres : state.stops;
}

/** Plain steps on every axis, for a lens without a table that can be read. */
export function plainReach(): Reach {
  return { focal: plain("focal"), focus: plain("focus"), stop: plain("stop") };
}

function plain(axis: CoverageAxis): AxisReach {
  const step = axis === "focal" ? Math.log(FOCAL_RATIO_STEP) : axis === "focus" ? FOCUS_STEP : STOP_STEP;
  return { between: step, below: step / 2, above: step / 2, tested: false };
}

/** The reach of a table's points on a picture. */
export function tableReach(table: CalibrationTable, picture: CoveragePicture): Reach {
  return {
    focal: axisReach(table, picture, "focal"),
    focus: axisReach(table, picture, "focus"),
    stop: table.points.every((point) => point.tStop === null)
      ? { between: Number.POSITIVE_INFINITY, below: Number.POSITIVE_INFINITY, above: Number.POSITIVE_INFINITY, tested: true }
      : axisReach(table, picture, "stop"),
  };
}

function axisReach(table: CalibrationTable, picture: CoveragePicture, axis: CoverageAxis): AxisReach {
  const differ = (a: CalibrationPointValues[], b: CalibrationPointValues[], at: CalibrationPointValues): number =>
    difference(lookAt(table, a, at, picture), lookAt(table, b, at, picture));
  let curvature = 0;
  let tested = 0;
  let slopeBelow = -1;
  let slopeAbove = -1;
  for (const line of linesAlong(table.points, axis)) {
    const x = line.map((point) => pointCoordinate(point, axis));
    for (let i = 1; i + 1 < line.length; i++) {
      const [low, middle, high] = line.slice(i - 1, i + 2) as [
        CalibrationPointValues,
        CalibrationPointValues,
        CalibrationPointValues,
      ];
      const [a, b, c] = x.slice(i - 1, i + 2) as [number, number, number];
      const error = differ([low, high], [middle], middle);
      if (Number.isNaN(error)) continue;
      curvature = Math.max(curvature, error / ((b - a) * (c - b)));
      tested = Math.max(tested, c - a);
    }
    const slope = (i: number): number => {
      const [a, b] = [line[i], line[i + 1]];
      if (a === undefined || b === undefined) return -1;
      const change = difference(lookAt(table, [a], a, picture), lookAt(table, [b], b, picture));
      return Number.isNaN(change) ? -1 : change / ((x[i + 1] as number) - (x[i] as number));
    };
    slopeBelow = Math.max(slopeBelow, slope(0));
    slopeAbove = Math.max(slopeAbove, slope(line.length - 2));
  }
  const step = plain(axis).between;
  // the error of a straight line over a gap g is at most curvature x (g / 2)^2; not more than twice what was tested is believed
  const between = tested > 0 ? Math.min(2 / Math.sqrt(curvature), 2 * tested) : step;
  const past = (slope: number): number => (slope < 0 ? step / 2 : Math.min(1 / slope, between / 2));
  return { between, below: past(slopeBelow), above: past(slopeAbove), tested: tested > 0 };
}

/** Rows that differ on one axis alone, in its order. */
function linesAlong(points: readonly CalibrationPointValues[], axis: CoverageAxis): CalibrationPointValues[][] {
  const lines = new Map<string, CalibrationPointValues[]>();
  for (const point of points) {
    if (axis === "stop" && point.tStop === null) continue;
    const key = AXES.filter((other) => other !== axis)
      .map((other) => pointCoordinate(point, other))
      .join(" ");
    const line = lines.get(key) ?? [];
    lines.set(key, line);
    if (!line.some((known) => pointCoordinate(known, axis) === pointCoordinate(point, axis))) line.push(point);
  }
  return [...lines.values()].map((line) => line.sort((a, b) => pointCoordinate(a, axis) - pointCoordinate(b, axis)));
}

function pointCoordinate(point: CalibrationPointValues, axis: CoverageAxis): number {
  if (axis === "focal") return Math.log(point.focalMm);
  if (axis === "focus") return point.focusDioptres;
  return point.tStop === null ? Number.NaN : 2 * Math.log2(point.tStop);
}

/** Where the ideal picture's corners lie in pixels, and the corner's shading. */
interface CornerLook {
  readonly corners: readonly (readonly [number, number])[] | null;
  readonly shadingStops: number | null;
}

const CORNERS = [
  [1, 1],
  [-1, 1],
  [1, -1],
  [-1, -1],
] as const;

/** What some rows of the table give at a row's place. */
function lookAt(
  table: CalibrationTable,
  points: readonly CalibrationPointValues[],
  at: CalibrationPointValues,
  picture: CoveragePicture,
): CornerLook {
  const found = coefficientsAt({ convention: table.convention, points }, at);
  if (isRefused(found)) return { corners: null, shadingStops: null };
  const distortion = canonicalDistortion(table.convention, found.coefficients, found.focalMm, picture.squeeze);
  const shading = canonicalShading(table.convention, found.coefficients, found.focalMm, picture.squeeze);
  const corners: (readonly [number, number])[] = [];
  if (!isRefused(distortion)) {
    for (const [sx, sy] of CORNERS) {
      const ideal = idealFromRecorded(distortion, (sx * picture.widthMm) / 2, (sy * picture.heightMm) / 2);
      if (ideal === null) break;
      corners.push([(ideal.xMm * picture.widthPx) / picture.widthMm, (ideal.yMm * picture.heightPx) / picture.heightMm]);
    }
  }
  return {
    corners: corners.length === CORNERS.length ? corners : null,
    shadingStops: isRefused(shading) ? null : (shadingStopsAt(shading, picture)?.corner ?? null),
  };
}

/** How far two looks differ, 1 being the tolerance; NaN when they have nothing to compare. */
function difference(a: CornerLook, b: CornerLook): number {
  let largest = Number.NaN;
  if (a.corners !== null && b.corners !== null) {
    const other = b.corners;
    const pixels = a.corners.map(([x, y], i) => Math.hypot(x - (other[i]?.[0] ?? x), y - (other[i]?.[1] ?? y)));
    largest = Math.max(...pixels) / CORNER_TOLERANCE_PX;
  }
  if (a.shadingStops !== null && b.shadingStops !== null) {
    const stops = Math.abs(a.shadingStops - b.shadingStops) / SHADING_TOLERANCE_STOPS;
    largest = Number.isNaN(largest) ? stops : Math.max(largest, stops);
  }
  return largest;
}
