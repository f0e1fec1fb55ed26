/** Order statistics over columns in which NaN means "not logged". */

/** The value at index floor((n - 1) / 2) of the sorted values, NaN left out; `null` when there is none. Always a value that occurs. */
export function lowerMiddle(values: ArrayLike<number>): number | null {
  const sorted = Float64Array.from(values)
    .filter((value) => !Number.isNaN(value))
    .sort();
  return sorted[Math.floor((sorted.length - 1) / 2)] ?? null;
}

/** Smallest and largest value, NaN left out; `null` when there is none. */
export function minMax(values: ArrayLike<number>): { readonly min: number; readonly max: number } | null {
  let min = Number.POSITIVE_INFINITY;
  let max = Number.NEGATIVE_INFINITY;
  let found = false;
  for (let i = 0; i < values.length; i++) {
    const value = values[i] as number;
    if (Number.isNaN(value)) continue;
    found = true;
    if (value < min) min = value;
    if (value > max) max = value;
  }
  return found ? { min, max } : null;
}
