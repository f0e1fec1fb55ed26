/** Runs of equal values in a column of flags. */

/** Both ends included, 0-based. */
export interface Run {
  readonly first: number;
  readonly last: number;
}

/**
 * The unbroken runs in which `flags` equals `value`, in order.
 *
 * @example runsOf([1, 0, 0, 1, 0], 0) // [{ first: 1, last: 2 }, { first: 4, last: 4 }]
 */
export function runsOf(flags: ArrayLike<number>, value: number): Run[] {
  const runs: Run[] = [];
  let first = -1;
  for (let i = 0; i < flags.length; i++) {
    if (flags[i] === value) {
      if (first < 0) first = i;
    } else if (first >= 0) {
      runs.push({ first, last: i - 1 });
      first = -1;
    }
  }
  if (first >= 0) runs.push({ first, last: flags.length - 1 });
  return runs;
}

/** The unbroken runs of numbers, with the NaN between them left out. */
export function runsOfNumbers(values: ArrayLike<number>): Run[] {
  const flags = new Uint8Array(values.length);
  for (let i = 0; i < values.length; i++) flags[i] = Number.isNaN(values[i]) ? 0 : 1;
  return runsOf(flags, 1);
}
