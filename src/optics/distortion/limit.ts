/**
 * How far out a distortion equation may be trusted: the largest circle about the centre in which it never turns back, so that
 * each point has one counterpart. In the circle the symmetric part of the Jacobian is positive definite, which makes the
 * equation one-to-one there (a strictly monotone map on a convex set).
 *
 * @source OpenCV calib3d.hpp: "Radial distortion is always monotonic for real lenses"; the circle for tangential and even terms is derived
 */
import type { AnamorphicEvenTerms, BrownConradyTerms, DivisionTerms } from "./canonical.ts";
import { addPolynomials, differentiate, firstNonPositive, multiplyPolynomials } from "./polynomial.ts";

const ANGLES = 32;

/**
 * First radius (mm) where d/dr of r R(r^2) is no longer positive or the denominator is 0. Without denominators and tangential
 * terms that is the smallest root of 1 + 3 k1 r^2 + 5 k2 r^4 + 7 k3 r^6. Tangential terms take at most 6 |p| r off the slope,
 * |p| = hypot(p1, p2): their part is the gradient of (p2 x + p1 y) r^2, whose second derivatives reach from -6 |p| r to 6 |p| r.
 */
export function brownConradyLimitMm(t: BrownConradyTerms): number {
  const above = [1, t.k1, t.k2, t.k3];
  const below = [1, t.k4, t.k5, t.k6];
  const pole = Math.sqrt(firstNonPositive(below));
  const cross = addPolynomials(
    multiplyPolynomials(differentiate(above), below),
    multiplyPolynomials(above, differentiate(below)),
    -1,
  );
  // Numerator of the slope: N D + 2 u (N' D - N D'), u = r^2, over D^2.
  const slope = addPolynomials(multiplyPolynomials(above, below), [0, ...cross], 2);
  const tangential = 6 * Math.hypot(t.p1, t.p2);
  if (tangential === 0) return Math.min(pole, Math.sqrt(firstNonPositive(slope)));
  const squared = inRadius(multiplyPolynomials(below, below));
  const along = addPolynomials(inRadius(slope), [0, ...squared], -tangential);
  const across = addPolynomials(inRadius(above), [0, ...inRadius(below)], -tangential);
  return Math.min(pole, firstNonPositive(along), firstNonPositive(across));
}

/** r / (1 + lambda r^2) turns at 1/sqrt(lambda), and runs away there when lambda is negative. */
export function divisionLimitMm(t: DivisionTerms): number {
  return t.lambda === 0 ? Number.POSITIVE_INFINITY : 1 / Math.sqrt(Math.abs(t.lambda));
}

/** The smallest of the rays' limits; the equation is even in x and y, so a quarter turn is enough. */
export function anamorphicLimitMm(t: AnamorphicEvenTerms): number {
  let smallest = Number.POSITIVE_INFINITY;
  for (let i = 0; i <= ANGLES; i++) {
    const cos2 = Math.cos((i / ANGLES) * (Math.PI / 2)) ** 2;
    const sin2 = 1 - cos2;
    const xx = [1, 3 * t.ax2 * cos2 + t.ay2 * sin2, 5 * t.ax4 * cos2 ** 2 + t.ay4 * sin2 ** 2];
    const yy = [1, t.bx2 * cos2 + 3 * t.by2 * sin2, t.bx4 * cos2 ** 2 + 5 * t.by4 * sin2 ** 2];
    const xy = [0, t.ay2 + t.bx2, 2 * (t.ay4 * sin2 + t.bx4 * cos2)];
    const determinant = addPolynomials(multiplyPolynomials(xx, yy), multiplyPolynomials(xy, xy), -cos2 * sin2);
    smallest = Math.min(smallest, firstNonPositive(determinant));
  }
  return Math.sqrt(smallest);
}

/** From powers of r^2 to powers of r. */
function inRadius(c: readonly number[]): number[] {
  return c.flatMap((value, i) => (i === 0 ? [value] : [0, value]));
}
