/** Fewer points for a drawing, without losing a peak or a gap. */

/** One entry a column. NaN where nothing of the column was logged. */
export interface Decimated {
  readonly columns: number;
  readonly min: Float64Array;
  readonly max: Float64Array;
  /** First and last logged value of the column, so that a line enters and leaves it where the log does. */
  readonly first: Float64Array;
  readonly last: Float64Array;
  /** 1 where the column holds at least one value that was not logged: no line may be joined across it. */
  readonly gap: Uint8Array;
  /** First frame of each column; one more entry than columns, the last is `to`. */
  readonly start: Int32Array;
}

/**
 * Smallest, largest, first and last value per pixel column, of the values from `from` up to but not including `to`.
 * Frames spread evenly over the columns, each in exactly one; never more columns than frames.
 *
 * @source Min, max, first and last a column draw the same line as all points: U. Jugel et al., "M4: A Visualization-Oriented
 *   Time Series Data Aggregation", Proc. VLDB Endowment 7(10), 2014.
 */
export function decimate(values: ArrayLike<number>, from: number, to: number, columns: number): Decimated {
  const begin = Math.max(0, from);
  const frames = Math.max(0, Math.min(to, values.length) - begin);
  const count = Math.max(0, Math.min(Math.floor(columns), frames));
  const result = {
    columns: count,
    min: new Float64Array(count).fill(Number.NaN),
    max: new Float64Array(count).fill(Number.NaN),
    first: new Float64Array(count).fill(Number.NaN),
    last: new Float64Array(count).fill(Number.NaN),
    gap: new Uint8Array(count),
    start: new Int32Array(count + 1),
  };
  for (let c = 0; c < count; c++) {
    const start = begin + Math.floor((c * frames) / count);
    const end = begin + Math.floor(((c + 1) * frames) / count);
    result.start[c] = start;
    for (let i = start; i < end; i++) {
      const value = values[i] as number;
      if (Number.isNaN(value)) result.gap[c] = 1;
      else takeIn(result, c, value);
    }
  }
  result.start[count] = begin + frames;
  return result;
}

function takeIn(result: Decimated, column: number, value: number): void {
  if (Number.isNaN(result.first[column])) {
    result.first[column] = value;
    result.min[column] = value;
    result.max[column] = value;
  }
  if (value < (result.min[column] as number)) result.min[column] = value;
  if (value > (result.max[column] as number)) result.max[column] = value;
  result.last[column] = value;
}
