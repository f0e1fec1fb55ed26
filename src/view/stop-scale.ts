/** One scale for the stops of all rows of a day, in whole stops. */
import { exactStop, FULL_STOPS } from "../optics/stop-series.ts";
import type { TakeSummary } from "../summary/types.ts";

/** Ends as stop labels. */
export interface StopScale {
  readonly widest: number;
  readonly deepest: number;
}

/** T1.4 to T8, wider where the day needs it, but not beyond T22: what is left over is marked and named by the rows. */
export function stopScale(takes: readonly TakeSummary[]): StopScale {
  const stops = takes.flatMap((t) => (t.tStop === null ? [] : [t.tStop.widest, t.tStop.deepest]));
  const widest = Math.min(exactStop(1.4), ...stops);
  const deepest = Math.max(exactStop(8), ...stops);
  const labels = FULL_STOPS.filter((label) => label <= 22);
  return {
    widest: labels.filter((label) => exactStop(label) <= widest * 1.03).at(-1) ?? 1,
    deepest: labels.find((label) => exactStop(label) >= deepest * 0.97) ?? 22,
  };
}
