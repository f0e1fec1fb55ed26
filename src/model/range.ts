/** The range of a lens value over a take. */
import { minMax } from "../stats/summary.ts";

export interface Range {
  readonly low: number;
  readonly high: number;
}

/** Lowest and highest value of a log column, frames that were not logged left out; `null` without any. */
export function rangeOf(values: Float64Array | undefined): Range | null {
  const ends = values === undefined ? null : minMax(values);
  return ends === null ? null : { low: ends.min, high: ends.max };
}
