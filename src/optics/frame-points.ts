/** The three places of the frame at which lens figures are given. */
import type { SensorArea } from "./radius.ts";

/** Values at the corner, the middle of the side and the middle of the top of the active frame. */
export interface ThreePoints {
  readonly corner: number;
  readonly midSide: number;
  readonly midTop: number;
}

/** Signs of the places of each kind: x and y in half widths and half heights. Right and bottom come first and win ties. */
const PLACES: Readonly<Record<keyof ThreePoints, readonly (readonly [number, number])[]>> = {
  corner: [
    [1, 1],
    [-1, 1],
    [1, -1],
    [-1, -1],
  ],
  midSide: [
    [1, 0],
    [-1, 0],
  ],
  midTop: [
    [0, 1],
    [0, -1],
  ],
};

/**
 * The value of largest magnitude among the four corners, the two sides, or top and bottom; `null` when one of them has no value.
 * `valueAt` gets mm on the sensor from the middle of the area, x right, y down. On a centred, symmetric lens all are equal.
 */
export function largestAt<V>(
  kind: keyof ThreePoints,
  area: SensorArea,
  valueAt: (xMm: number, yMm: number) => V | null,
  magnitude: (value: V) => number,
): V | null {
  let best: V | null = null;
  for (const [sx, sy] of PLACES[kind]) {
    const value = valueAt((sx * area.widthMm) / 2, (sy * area.heightMm) / 2);
    if (value === null) return null;
    if (best === null || magnitude(value) > magnitude(best)) best = value;
  }
  return best;
}
