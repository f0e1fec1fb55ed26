/** One time scale for all rows of a day: the seconds it holds and how wide a second is drawn. */
import { ROW_GUTTER } from "../chart/ribbon/row-ribbon.ts";

/** Width of the ribbon column, and what its scale and its off-scale labels need on the right. */
export const RIBBON_COLUMN = 420;
const RIGHT_ROOM = 62;
/** Lengths that a scale may end at, in seconds; past the last one in whole hours. */
const ENDS = [10, 15, 20, 30, 45, 60, 90, 120, 180, 240, 300, 420, 600, 900, 1200, 1800, 2700, 3600];

export interface TimeScale {
  readonly seconds: number;
  readonly pixelsPerSecond: number;
}

/** The shortest scale that holds the longest take of the day. */
export function timeScale(longestSeconds: number): TimeScale {
  const seconds = ENDS.find((end) => end >= longestSeconds) ?? Math.ceil(longestSeconds / 3600) * 3600;
  return { seconds, pixelsPerSecond: (RIBBON_COLUMN - ROW_GUTTER - RIGHT_ROOM) / seconds };
}
