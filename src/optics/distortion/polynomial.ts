/** Polynomials with real coefficients, lowest power first. */

/** Nothing of a lens lies further out; a root beyond it counts as none. In the caller's unit (mm, or mm squared). */
const REACH = 1e8;

export function evaluatePolynomial(c: readonly number[], x: number): number {
  let sum = 0;
  for (let i = c.length - 1; i >= 0; i--) sum = sum * x + (c[i] ?? 0);
  return sum;
}

export function multiplyPolynomials(a: readonly number[], b: readonly number[]): number[] {
  const product = new Array<number>(Math.max(0, a.length + b.length - 1)).fill(0);
  for (let i = 0; i < a.length; i++) {
    for (let j = 0; j < b.length; j++) product[i + j] = (product[i + j] ?? 0) + (a[i] ?? 0) * (b[j] ?? 0);
  }
  return product;
}

/** Sum of `a` and `factor` x `b`. */
export function addPolynomials(a: readonly number[], b: readonly number[], factor = 1): number[] {
  const sum: number[] = [];
  for (let i = 0; i < Math.max(a.length, b.length); i++) sum.push((a[i] ?? 0) + factor * (b[i] ?? 0));
  return sum;
}

export function differentiate(c: readonly number[]): number[] {
  return c.slice(1).map((value, i) => value * (i + 1));
}

/**
 * The smallest x > 0 at which a polynomial that starts positive (c0 > 0) is no longer positive; `Infinity` when it never is.
 * Exact in the sense that no root is stepped over: between two turning points a polynomial has at most one root.
 *
 * @example firstNonPositive([1, 0, -4]) // 0.5
 */
export function firstNonPositive(c: readonly number[]): number {
  const points = signChanges(c, true);
  return points[0] ?? Number.POSITIVE_INFINITY;
}

/** Places x > 0 where the polynomial changes sign or touches zero, in order. With `firstOnly`, at most one. */
function signChanges(c: readonly number[], firstOnly: boolean): number[] {
  const degree = trueDegree(c);
  if (degree <= 0) return [];
  const limit = Math.min(REACH, rootBound(c, degree));
  const turning = degree === 1 ? [] : signChanges(differentiate(c.slice(0, degree + 1)), false).filter((x) => x < limit);
  const found: number[] = [];
  let left = 0;
  let atLeft = evaluatePolynomial(c, 0);
  for (const right of [...turning, limit]) {
    const atRight = evaluatePolynomial(c, right);
    if (atRight === 0) found.push(right);
    else if (atLeft !== 0 && atLeft < 0 !== atRight < 0) found.push(bisect(c, left, right, atLeft < 0));
    if (firstOnly && found.length > 0) break;
    left = right;
    atLeft = atRight;
  }
  return found;
}

function trueDegree(c: readonly number[]): number {
  let degree = c.length - 1;
  while (degree > 0 && (c[degree] ?? 0) === 0) degree--;
  return degree;
}

/** Fujiwara's bound: no root is larger in magnitude. It scales with the unit of x, which a bound of 1 + max does not. */
function rootBound(c: readonly number[], degree: number): number {
  const lead = Math.abs(c[degree] ?? 0);
  let bound = 0;
  for (let i = 1; i <= degree; i++) bound = Math.max(bound, (Math.abs(c[degree - i] ?? 0) / lead) ** (1 / i));
  return 2 * bound * (1 + 1e-9);
}

function bisect(c: readonly number[], from: number, to: number, negativeAtFrom: boolean): number {
  let low = from;
  let high = to;
  for (let i = 0; i < 200 && high - low > 1e-15 * high; i++) {
    const middle = (low + high) / 2;
    if (middle <= low || middle >= high) break;
    if (evaluatePolynomial(c, middle) < 0 === negativeAtFrom) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
