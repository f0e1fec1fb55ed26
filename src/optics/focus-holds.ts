/** Where focus stood still: stretches of a series that stay within a fraction of the depth of field. */

/** A stretch of samples in which focus was held. Indices are into the series, both ends held. */
export interface Hold {
  readonly first: number;
  readonly last: number;
  /** Median in dioptres of the held samples: those near where focus came to rest, and those near where it left again. */
  readonly levelIn: number;
  readonly levelOut: number;
}

/** All in dioptres and samples. */
export interface HoldRules {
  /** One-sided depth of field at the widest stop: the yardstick of all other limits. */
  readonly delta: number;
  /** Samples of the shortest hold. */
  readonly shortest: number;
  /** Samples a second. */
  readonly samplesPerSecond: number;
}

/** Range of the shortest hold. */
const HOLD_RANGE = 0.3;
/** A sample further than this from the hold's beginning has left it. */
const LEAVE = 0.5;
/** The last (first) sample this near to the hold's level is its end (start). */
const HELD = 0.15;
/** The level at either end of a long hold is looked for in this many times the shortest hold (2 s). */
const END_WINDOW = 8;
/** Slower than this, in deltas a second, is standing. */
const STANDING_SPEED = 0.25;

/**
 * Finds the holds of a series without gaps, in order. The two limits make a hysteresis: a hold begins where `shortest` samples
 * lie within 0.30 delta, lasts until a sample is more than 0.5 delta away, and its ends are moved back to samples within
 * 0.15 delta of its level.
 *
 * @source Salvucci and Goldberg, ETRA 2000 (dispersion threshold); the limits are this project's choice
 */
export function findHolds(x: Float64Array, rules: HoldRules): Hold[] {
  const { delta, shortest } = rules;
  const holds: Hold[] = [];
  let from = 0;
  let i = 0;
  while (i + shortest <= x.length) {
    if (rangeOf(x, i, i + shortest) > HOLD_RANGE * delta) {
      i++;
      continue;
    }
    const anchor = median(x.subarray(i, i + shortest));
    let first = i;
    while (first > from && Math.abs(at(x, first - 1) - anchor) <= LEAVE * delta) first--;
    let end = i + shortest;
    while (end < x.length && Math.abs(at(x, end) - anchor) <= LEAVE * delta) end++;
    holds.push(trimHold(x, first, end, rules));
    from = end;
    i = end;
  }
  return holds;
}

/**
 * Moves the ends of a stretch [first, end) in to samples that are held. A long hold that drifted a little has two levels, so
 * that a pull is measured from where it left and to where it arrived.
 */
function trimHold(x: Float64Array, first: number, end: number, rules: HoldRules): Hold {
  const near = HELD * rules.delta;
  const window = END_WINDOW * rules.shortest;
  const levelIn = levelNear(x, first, end, median(x.subarray(first, Math.min(end, first + window))), near);
  const levelOut = levelNear(x, first, end, median(x.subarray(Math.max(first, end - window), end)), near);
  const start = forwardTo(x, first, end, levelIn, near);
  const stop = Math.max(start, backTo(x, first, end, levelOut, near));
  return { first: start, last: stop, levelIn, levelOut };
}

/** Median of the samples near a level; twice, so that a level taken among noisy samples settles. */
function levelNear(x: Float64Array, first: number, end: number, level: number, near: number): number {
  let settled = level;
  for (let pass = 0; pass < 2; pass++) {
    const close = x.subarray(first, end).filter((value) => Math.abs(value - settled) <= near);
    if (close.length > 0) settled = median(close);
  }
  return settled;
}

function forwardTo(x: Float64Array, first: number, end: number, level: number, near: number): number {
  let i = first;
  while (i < end - 1 && Math.abs(at(x, i) - level) > near) i++;
  return i;
}

function backTo(x: Float64Array, first: number, end: number, level: number, near: number): number {
  let i = end - 1;
  while (i > first && Math.abs(at(x, i) - level) > near) i--;
  return i;
}

/**
 * Whether focus really stood in a hold, for at least the shortest hold. A slow follow passes through stretches that are as
 * narrow as a hold and never stands in them.
 */
export function stoodStill(x: Float64Array, hold: Hold, rules: HoldRules): boolean {
  const length = Math.min(2 * rules.shortest, hold.last - hold.first + 1);
  if (length < 3) return false;
  const slow = (STANDING_SPEED * rules.delta) / rules.samplesPerSecond;
  for (let i = hold.first; i + length - 1 <= hold.last; i++) {
    if (Math.abs(slopeOf(x, i, i + length)) <= slow) return true;
  }
  return false;
}

/** Least-squares slope a sample of x[from..to). */
function slopeOf(x: Float64Array, from: number, to: number): number {
  const middle = (from + to - 1) / 2;
  let products = 0;
  let squares = 0;
  for (let i = from; i < to; i++) {
    products += (i - middle) * at(x, i);
    squares += (i - middle) ** 2;
  }
  return products / squares;
}

function rangeOf(x: Float64Array, from: number, to: number): number {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let i = from; i < to; i++) {
    const value = at(x, i);
    if (value < low) low = value;
    if (value > high) high = value;
  }
  return high - low;
}

/** Median; the mean of the two middle values of an even number. NaN for none. */
export function median(values: ArrayLike<number>): number {
  const sorted = Float64Array.from(values).sort();
  const half = sorted.length >> 1;
  return sorted.length % 2 === 1 ? at(sorted, half) : (at(sorted, half - 1) + at(sorted, half)) / 2;
}

function at(x: Float64Array, i: number): number {
  return x[i] ?? Number.NaN;
}
