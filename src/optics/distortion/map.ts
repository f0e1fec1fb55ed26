/** From recorded to ideal points and back. Points are mm on the recorded sensor from the middle of the area, x right, y down. By definition the one is the inverse of the other: see canonical.ts for the equations. */
import type { CanonicalDistortion } from "./canonical.ts";
import { equationRoom, evaluateEquation, solveEquation } from "./equation.ts";

export interface PointMm {
  readonly xMm: number;
  readonly yMm: number;
}

/** Which side the points are wanted on. */
export type Side = "ideal" | "recorded";

/** Where a recorded point would lie without distortion; `null` where the coefficients do not define it. */
export function idealFromRecorded(d: CanonicalDistortion, xMm: number, yMm: number): PointMm | null {
  return onePoint(d, "ideal", xMm, yMm);
}

/** Where the lens records an ideal point; `null` where the coefficients do not define it. */
export function recordedFromIdeal(d: CanonicalDistortion, xMm: number, yMm: number): PointMm | null {
  return onePoint(d, "recorded", xMm, yMm);
}

function onePoint(d: CanonicalDistortion, side: Side, xMm: number, yMm: number): PointMm | null {
  const room = equationRoom();
  return mapPoint(d, side, xMm, yMm, room) ? { xMm: room[0] ?? Number.NaN, yMm: room[1] ?? Number.NaN } : null;
}

/**
 * Maps a point into `room[0]`, `room[1]` (from `equationRoom()`) without allocating; false where the point is not defined.
 */
export function mapPoint(d: CanonicalDistortion, side: Side, xMm: number, yMm: number, room: Float64Array): boolean {
  const x = (xMm - d.centreXMm) * d.squeeze;
  const y = yMm - d.centreYMm;
  const closed = (d.direction === "undistort") === (side === "ideal");
  if (closed) {
    if (!(x * x + y * y < d.limitMm * d.limitMm)) return false;
    evaluateEquation(d, x, y, room);
  } else if (!solveEquation(d, x, y, room)) return false;
  room[0] = (room[0] ?? 0) / d.squeeze + d.centreXMm;
  room[1] = (room[1] ?? 0) + d.centreYMm;
  return true;
}

/**
 * Maps many points without allocating one of them. `outX` and `outY` get mm, NaN where a point is not defined; they may be
 * the input arrays. Returns how many points are not defined.
 */
export function mapPoints(
  d: CanonicalDistortion,
  side: Side,
  xMm: Float64Array,
  yMm: Float64Array,
  outX: Float64Array,
  outY: Float64Array,
): number {
  const room = equationRoom();
  let undefinedPoints = 0;
  for (let i = 0; i < xMm.length; i++) {
    if (mapPoint(d, side, xMm[i] ?? Number.NaN, yMm[i] ?? Number.NaN, room)) {
      outX[i] = room[0] ?? Number.NaN;
      outY[i] = room[1] ?? Number.NaN;
    } else {
      outX[i] = Number.NaN;
      outY[i] = Number.NaN;
      undefinedPoints++;
    }
  }
  return undefinedPoints;
}
