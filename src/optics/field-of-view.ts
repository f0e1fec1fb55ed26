/**
 * Angle of view, field size and breathing of a rectilinear lens on the active area of the sensor mode in use.
 * X is a side of that area, f the focal length, m = f / (s - f) the magnification, D the focus distance from the image plane.
 */
import { magnification, objectDistanceMm } from "./depth-of-field.ts";

export interface ViewInput {
  /** Side of the active area of the recorded mode, not of the chip. */
  readonly sideMm: number;
  readonly focalMm: number;
  /** Focus distance; Infinity when left out. */
  readonly imagePlaneMm?: number;
  /** Anamorphic squeeze, for the horizontal side only; 1 when left out. */
  readonly squeeze?: number;
}

/**
 * Angle of view in degrees: 2 atan(X squeeze / (2 f (1 + m))). NaN when D < 4 f (the focus does not exist) or a number is missing.
 * Give `squeeze` for the width only.
 *
 * @source D. Jacobson, "Photographic Lenses FAQ" v1.18, Q6; Wikipedia "Angle of view", f' = f (1 + m). Pupil magnification 1.
 * @example angleOfViewDeg({ sideMm: 36, focalMm: 50 }) // 39.598
 */
export function angleOfViewDeg({ sideMm, focalMm, imagePlaneMm = Number.POSITIVE_INFINITY, squeeze = 1 }: ViewInput): number {
  const s = objectDistanceMm(imagePlaneMm, focalMm);
  if (s === null) return Number.NaN;
  return angleAtMagnificationDeg({ sideMm: sideMm * squeeze, focalMm, magnification: magnification(s, focalMm) });
}

/**
 * Angle of view in degrees at a magnification, seen from the entrance pupil: 2 atan(X / (2 f (1 + m / P))).
 * P, exit over entrance pupil, is 1 when left out.
 *
 * @source Jacobson, Q6, for P = 1; with P derived from first principles.
 */
export function angleAtMagnificationDeg(input: {
  readonly sideMm: number;
  readonly focalMm: number;
  readonly magnification: number;
  readonly pupilMagnification?: number;
}): number {
  const { sideMm, focalMm, pupilMagnification = 1 } = input;
  return (360 / Math.PI) * Math.atan(sideMm / (2 * focalMm * (1 + input.magnification / pupilMagnification)));
}

/**
 * The three angles of a sensor mode in degrees: across (desqueezed), up, and over the diagonal of the desqueezed frame.
 * `null` when D < 4 f or a number is missing.
 */
export function anglesOfView(input: {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly focalMm: number;
  readonly imagePlaneMm?: number;
  readonly squeeze?: number;
}): { readonly horizontal: number; readonly vertical: number; readonly diagonal: number } | null {
  const { focalMm, imagePlaneMm = Number.POSITIVE_INFINITY, squeeze = 1 } = input;
  const width = input.widthMm * squeeze;
  const horizontal = angleOfViewDeg({ sideMm: width, focalMm, imagePlaneMm });
  const vertical = angleOfViewDeg({ sideMm: input.heightMm, focalMm, imagePlaneMm });
  const diagonal = angleOfViewDeg({ sideMm: Math.hypot(width, input.heightMm), focalMm, imagePlaneMm });
  return Number.isNaN(horizontal + vertical + diagonal) ? null : { horizontal, vertical, diagonal };
}

/**
 * Size in mm of the field in the focused plane: X / m = X (s - f) / f. Infinity when focused there, NaN when D < 4 f.
 *
 * @source Derived from first principles; X D / f overstates it near.
 */
export function fieldSizeMm({ sideMm, focalMm, imagePlaneMm = Number.POSITIVE_INFINITY, squeeze = 1 }: ViewInput): number {
  const s = objectDistanceMm(imagePlaneMm, focalMm);
  return s === null ? Number.NaN : (sideMm * squeeze) / magnification(s, focalMm);
}

/**
 * Breathing in percent of the angle at the reference focus (infinity when left out): 100 (a / a_ref - 1); negative is narrower.
 * What a lens does that focuses by moving as a whole; inner focusing may have the other sign, so print it as an estimate.
 *
 * @source Definition: Wikipedia "Breathing (lens)"; the percent form is this project's.
 */
export function breathingPercent(input: ViewInput & { readonly referenceMm?: number }): number {
  const { referenceMm = Number.POSITIVE_INFINITY, ...view } = input;
  return 100 * (angleOfViewDeg(view) / angleOfViewDeg({ ...view, imagePlaneMm: referenceMm }) - 1);
}

/** Delivered aspect ratio: squeeze times width over height. */
export function deliveredAspect(widthMm: number, heightMm: number, squeeze = 1): number {
  return (squeeze * widthMm) / heightMm;
}
