/**
 * Depth of field of a thin lens, exact, in mm and in dioptres. Distances of focus scales and tapes are measured from the
 * image plane; the formulas need the distance s from the front principal plane, which is where the conversion comes in.
 *
 * Symbols: f focal length, N f-number, c circle of confusion (diameter, on the sensor), D distance from the image plane,
 * s distance from the front principal plane, v = f s / (s - f) the image distance, H0 = f^2 / (N c), H = H0 + f.
 */

/** Which number served as N: the f-number itself, T sqrt(tau), or T for want of tau (limits then a little too wide). */
export type StopUsed = "f" | "t-times-root-tau" | "t";

export interface LensState {
  readonly focalMm: number;
  readonly fNumber: number;
  readonly cocMm: number;
}

/**
 * Distance s from the front principal plane in mm, for a focus distance D from the image plane of a thin lens:
 * s = (D + sqrt(D^2 - 4 f D)) / 2. Infinity passes. `null` when D < 4 f (closer than 1:1, no such focus) or not a number.
 *
 * @source Derived from D = s + v and 1/f = 1/s + 1/v; check D = f (2 + M + 1/M), large-format forum thread t-81060.
 * @example objectDistanceMm(3000, 50) // 2949.138...
 */
export function objectDistanceMm(imagePlaneMm: number, focalMm: number): number | null {
  if (!(focalMm > 0) || !(imagePlaneMm >= 4 * focalMm)) return null;
  if (imagePlaneMm === Number.POSITIVE_INFINITY) return imagePlaneMm;
  return (imagePlaneMm + Math.sqrt(imagePlaneMm * (imagePlaneMm - 4 * focalMm))) / 2;
}

/** Image distance v in mm behind the rear principal plane, for an object at s in mm; f at infinity. Needs s > f. */
export function imageDistanceMm(objectMm: number, focalMm: number): number {
  return objectMm === Number.POSITIVE_INFINITY ? focalMm : (focalMm * objectMm) / (objectMm - focalMm);
}

/** Magnification m = f / (s - f), positive; 0 at infinity. */
export function magnification(objectMm: number, focalMm: number): number {
  return focalMm / (objectMm - focalMm);
}

/**
 * Hyperfocal distance H = f^2 / (N c) + f in mm from the front principal plane: the nearest focus whose far limit is infinity.
 *
 * @source Wikipedia "Hyperfocal distance", definition 1; N. Porcino, "Practical On-Set and Virtual Production Camera".
 * @example hyperfocalMm({ focalMm: 50, fNumber: 8, cocMm: 0.03 }) // 10466.67
 */
export function hyperfocalMm({ focalMm, fNumber, cocMm }: LensState): number {
  return (focalMm * focalMm) / (fNumber * cocMm) + focalMm;
}

/** The same focus as read on a focus scale: H + v(H) in mm from the image plane. */
export function hyperfocalFromImagePlaneMm(lens: LensState): number {
  const h = hyperfocalMm(lens);
  return h + imageDistanceMm(h, lens.focalMm);
}

/**
 * Near limit, far limit and their difference in mm from the image plane, for a focus in mm from the image plane.
 * `farMm` and `totalMm` are Infinity from the hyperfocal distance on. `null` when D < 4 f or when f, N or c is no positive number.
 *
 * 1/near, 1/far = 1/s +- (1/H0)(1 - f/s); both limits lie v further from the image plane than from the lens.
 *
 * With a pupil magnification P (exit over entrance pupil): m_near = P (f m + c N) / (P f - c N), m_far = P (f m - c N) / (P f + c N),
 * distance = f (1 + 1/m). Without one P is 1, and both forms are equal.
 *
 * @source Derived; follows from the blur formula of R. Grothmann, "Depth of Field of an Ideal Lens". P after P. van Walree,
 *   "Derivation of the DOF equations".
 * @example depthOfField({ focalMm: 50, fNumber: 2.8, cocMm: 0.025, imagePlaneMm: 3000 })?.nearMm // 2778.58
 */
export function depthOfField(
  input: LensState & { readonly imagePlaneMm: number; readonly pupilMagnification?: number },
): { readonly nearMm: number; readonly farMm: number; readonly totalMm: number } | null {
  const { focalMm, imagePlaneMm } = input;
  if (!(input.fNumber > 0) || !(input.cocMm > 0)) return null;
  const s = objectDistanceMm(imagePlaneMm, focalMm);
  if (s === null) return null;
  const v = imageDistanceMm(s, focalMm);
  const [near, far] = limitsFromLens(input, s);
  return { nearMm: near + v, farMm: far + v, totalMm: far - near };
}

/** Near and far limit in mm from the front principal plane, for an object at s. */
function limitsFromLens(input: LensState & { readonly pupilMagnification?: number }, s: number): readonly [number, number] {
  const { focalMm: f, pupilMagnification: p = 1 } = input;
  if (p === 1) {
    const h = hyperfocalMm(input);
    return [nearFromLens(s, h, f), farFromLens(s, h, f)];
  }
  const blur = input.cocMm * input.fNumber;
  const m = magnification(s, f);
  const near = f * (1 + (p * f - blur) / (p * (f * m + blur)));
  const far = f * m <= blur ? Number.POSITIVE_INFINITY : f * (1 + (p * f + blur) / (p * (f * m - blur)));
  return [near, far];
}

/** near = s (H - f) / (H + s - 2 f), from the front principal plane. */
export function nearFromLens(s: number, h: number, f: number): number {
  return s === Number.POSITIVE_INFINITY ? h - f : (s * (h - f)) / (h + s - 2 * f);
}

/** far = s (H - f) / (H - s), from the front principal plane; Infinity from s = H on. */
export function farFromLens(s: number, h: number, f: number): number {
  return s >= h ? Number.POSITIVE_INFINITY : (s * (h - f)) / (h - s);
}

/** One number for every frame, or one number a frame. */
export type PerFrame = Float64Array | number;

/**
 * The limits of many frames at once, in dioptres (1/m) from the image plane: near is the larger number, far is 0 at infinity.
 * NaN where the focus, the stop or the focal length is NaN, and where D < 4 f. Nothing is allocated per frame.
 */
export function depthOfFieldDioptres(input: {
  readonly focusDioptres: Float64Array;
  readonly fNumber: PerFrame;
  readonly focalMm: PerFrame;
  readonly cocMm: number;
  /** Of all frames; 1 where it is not given. See `depthOfField`. */
  readonly pupilMagnification?: number;
}): { readonly near: Float64Array; readonly far: Float64Array } {
  const { focusDioptres, cocMm } = input;
  const frames = focusDioptres.length;
  const near = new Float64Array(frames).fill(Number.NaN);
  const far = new Float64Array(frames).fill(Number.NaN);
  for (let i = 0; i < frames; i++) {
    const focus = focusDioptres[i] as number;
    const f = typeof input.focalMm === "number" ? input.focalMm : (input.focalMm[i] as number);
    const n = typeof input.fNumber === "number" ? input.fNumber : (input.fNumber[i] as number);
    if (!(focus >= 0) || !(f > 0) || !(n > 0) || !(cocMm > 0)) continue;
    const distance = focus === 0 ? Number.POSITIVE_INFINITY : 1000 / focus;
    const s = objectDistanceMm(distance, f);
    if (s === null) continue;
    const v = imageDistanceMm(s, f);
    if (input.pupilMagnification !== undefined && input.pupilMagnification !== 1) {
      const { pupilMagnification } = input;
      const [nearMm, farMm] = limitsFromLens({ focalMm: f, fNumber: n, cocMm, pupilMagnification }, s);
      near[i] = 1000 / (nearMm + v);
      far[i] = 1000 / (farMm + v);
      continue;
    }
    const h = (f * f) / (n * cocMm) + f;
    near[i] = 1000 / (nearFromLens(s, h, f) + v);
    // 1000 / Infinity is 0, the dioptres of infinity.
    far[i] = 1000 / (farFromLens(s, h, f) + v);
  }
  return { near, far };
}

/**
 * Blur diameter in mm on the sensor of a point at x in mm, when focus is at s in mm (both from the front principal plane):
 * b = (f^2 / N) |x - s| / (x (s - f)); at the limits of depth of field it equals the circle of confusion.
 *
 * @source R. Grothmann, "Depth of Field of an Ideal Lens" (Euler Math Toolbox examples). Pupil magnification 1.
 */
export function blurDiameterMm(
  lens: { readonly focalMm: number; readonly fNumber: number },
  focusedMm: number,
  pointMm: number,
): number {
  const { focalMm: f, fNumber } = lens;
  const aperture = f / fNumber;
  if (focusedMm === Number.POSITIVE_INFINITY) return (aperture * f) / pointMm;
  if (pointMm === Number.POSITIVE_INFINITY) return (aperture * f) / (focusedMm - f);
  return (aperture * f * Math.abs(pointMm - focusedMm)) / (pointMm * (focusedMm - f));
}

/**
 * The f-number that depth of field and hyperfocal need: the f-stop if known; else T sqrt(tau) if the transmittance tau is
 * known; else T itself, which makes the depth too long by 1/sqrt(tau). `null` when no stop is known.
 *
 * @source T = N / sqrt(tau): Wikipedia "f-number", section T-stop. Depth is geometric and goes by N: N. Porcino, "A Note on T-Stops".
 */
export function fNumberFor(stop: {
  readonly fStop?: number | null;
  readonly tStop?: number | null;
  readonly transmittance?: number | null;
}): { readonly fNumber: number; readonly used: StopUsed } | null {
  if (isPositive(stop.fStop)) return { fNumber: stop.fStop, used: "f" };
  if (!isPositive(stop.tStop)) return null;
  if (isPositive(stop.transmittance)) return { fNumber: stop.tStop * Math.sqrt(stop.transmittance), used: "t-times-root-tau" };
  return { fNumber: stop.tStop, used: "t" };
}

function isPositive(value: number | null | undefined): value is number {
  return value !== null && value !== undefined && value > 0 && value < Number.POSITIVE_INFINITY;
}
