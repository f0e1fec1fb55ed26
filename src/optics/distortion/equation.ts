/** The distortion equation and its derivatives, and its inverse by Newton's method. Points are mm from the distortion centre. */
import type { CanonicalDistortion } from "./canonical.ts";

/** Room that the functions here write into: x', y', dx'/dx, dx'/dy, dy'/dx, dy'/dy. One for any number of points. */
export function equationRoom(): Float64Array {
  return new Float64Array(6);
}

/** Evaluates the equation in its own direction, without looking at the limit. */
export function evaluateEquation(d: CanonicalDistortion, x: number, y: number, out: Float64Array): void {
  const xx = x * x;
  const yy = y * y;
  const xy = x * y;
  if (d.model === "anamorphic-even") {
    out[0] = x * (1 + xx * (d.ax2 + d.ax4 * xx) + yy * (d.ay2 + d.ay4 * yy));
    out[1] = y * (1 + xx * (d.bx2 + d.bx4 * xx) + yy * (d.by2 + d.by4 * yy));
    out[2] = 1 + xx * (3 * d.ax2 + 5 * d.ax4 * xx) + yy * (d.ay2 + d.ay4 * yy);
    out[3] = 2 * xy * (d.ay2 + 2 * d.ay4 * yy);
    out[4] = 2 * xy * (d.bx2 + 2 * d.bx4 * xx);
    out[5] = 1 + xx * (d.bx2 + d.bx4 * xx) + yy * (3 * d.by2 + 5 * d.by4 * yy);
    return;
  }
  const u = xx + yy;
  if (d.model === "division") {
    const factor = 1 / (1 + d.lambda * u);
    const slope = -2 * d.lambda * factor * factor;
    out[0] = x * factor;
    out[1] = y * factor;
    out[2] = factor + slope * xx;
    out[3] = slope * xy;
    out[4] = slope * xy;
    out[5] = factor + slope * yy;
    return;
  }
  const above = 1 + u * (d.k1 + u * (d.k2 + u * d.k3));
  const below = 1 + u * (d.k4 + u * (d.k5 + u * d.k6));
  const factor = above / below;
  const slope = (2 * (d.k1 + u * (2 * d.k2 + 3 * u * d.k3) - factor * (d.k4 + u * (2 * d.k5 + 3 * u * d.k6)))) / below;
  out[0] = x * factor + 2 * d.p1 * xy + d.p2 * (u + 2 * xx);
  out[1] = y * factor + 2 * d.p2 * xy + d.p1 * (u + 2 * yy);
  out[2] = factor + slope * xx + 2 * d.p1 * y + 6 * d.p2 * x;
  out[3] = slope * xy + 2 * (d.p1 * x + d.p2 * y);
  out[4] = out[3];
  out[5] = factor + slope * yy + 6 * d.p1 * y + 2 * d.p2 * x;
}

const STEPS = 60;
const HALVINGS = 40;
/** mm. The last step is quadratic, so what is left after it is far below this. */
const CLOSE = 1e-11;

/**
 * Finds the point inside the limit that the equation takes to (x', y'). Writes it to `out[0]`, `out[1]` and returns true;
 * returns false when there is none inside the limit. Never returns a point from beyond it.
 *
 * Newton's method with the analytic Jacobian; a step that leaves the limit's circle or does not come closer is halved.
 * The division model has an exact inverse, rd = 2 ru / (1 + sqrt(1 - 4 lambda ru^2)).
 */
export function solveEquation(d: CanonicalDistortion, targetX: number, targetY: number, out: Float64Array): boolean {
  if (!Number.isFinite(targetX) || !Number.isFinite(targetY)) return false;
  const targetRadius = Math.hypot(targetX, targetY);
  if (targetRadius === 0) {
    out[0] = 0;
    out[1] = 0;
    return true;
  }
  if (d.model === "division") return solveDivision(d.lambda, targetX, targetY, out);

  // Start on the way to the target, inside the circle; from the centre if that start does not lead there.
  const start = targetRadius < 0.9 * d.limitMm ? 1 : (0.9 * d.limitMm) / targetRadius;
  return newton(d, targetX, targetY, start * targetX, start * targetY, out) || newton(d, targetX, targetY, 0, 0, out);
}

function solveDivision(lambda: number, targetX: number, targetY: number, out: Float64Array): boolean {
  const root = 1 - 4 * lambda * (targetX * targetX + targetY * targetY);
  if (root < 0) return false;
  const factor = 2 / (1 + Math.sqrt(root));
  out[0] = targetX * factor;
  out[1] = targetY * factor;
  return true;
}

function newton(
  d: CanonicalDistortion,
  targetX: number,
  targetY: number,
  startX: number,
  startY: number,
  out: Float64Array,
): boolean {
  const limit2 = d.limitMm * d.limitMm;
  let x = startX;
  let y = startY;
  evaluateEquation(d, x, y, out);
  let missX = targetX - (out[0] ?? 0);
  let missY = targetY - (out[1] ?? 0);
  for (let step = 0; step < STEPS; step++) {
    const a = out[2] ?? 0;
    const b = out[3] ?? 0;
    const c = out[4] ?? 0;
    const e = out[5] ?? 0;
    const determinant = a * e - b * c;
    if (!(determinant > 0)) return false;
    let stepX = (e * missX - b * missY) / determinant;
    let stepY = (a * missY - c * missX) / determinant;
    const size = Math.abs(stepX) + Math.abs(stepY);
    const miss = missX * missX + missY * missY;
    let tries = 0;
    for (; ; tries++) {
      const nextX = x + stepX;
      const nextY = y + stepY;
      if (nextX * nextX + nextY * nextY < limit2) {
        evaluateEquation(d, nextX, nextY, out);
        missX = targetX - (out[0] ?? 0);
        missY = targetY - (out[1] ?? 0);
        if (size < CLOSE || missX * missX + missY * missY < miss) {
          x = nextX;
          y = nextY;
          break;
        }
      }
      if (tries === HALVINGS) return false;
      stepX /= 2;
      stepY /= 2;
    }
    if (size < CLOSE) {
      if (tries > 0) return false;
      out[0] = x;
      out[1] = y;
      return true;
    }
  }
  return false;
}
