/** An exact fraction of two safe integers, denominator positive, in lowest terms. */
export interface Rational {
  readonly num: number;
  readonly denom: number;
}

/** Makes a fraction in lowest terms. Throws RangeError for a zero denominator or parts that are no safe integers (a fault of the caller). */
export function rational(num: number, denom = 1): Rational {
  if (!Number.isSafeInteger(num) || !Number.isSafeInteger(denom) || denom === 0) {
    throw new RangeError(`no fraction: ${num}/${denom}`);
  }
  const sign = denom < 0 ? -1 : 1;
  const divisor = greatestCommonDivisor(Math.abs(num), Math.abs(denom)) || 1;
  return Object.freeze({ num: (sign * num) / divisor, denom: (sign * denom) / divisor });
}

export function rationalToNumber(r: Rational): number {
  return r.num / r.denom;
}

export function sameRational(a: Rational, b: Rational): boolean {
  return a.num * b.denom === b.num * a.denom;
}

function greatestCommonDivisor(a: number, b: number): number {
  while (b !== 0) [a, b] = [b, a % b];
  return a;
}
