/**
 * What lens coefficients mean. A coefficient without its model, direction and radius is only a number:
 * it is kept and shown, and never evaluated.
 */

/** The form of the distortion equation. */
export type DistortionModel = "brown-conrady" | "division" | "anamorphic-even";

/** `undistort`: recorded to ideal. `distort`: ideal to recorded. */
export type Direction = "undistort" | "distort";

/** What r = 1 is. */
export type RadiusUnit = "mm" | "focal" | "half-width" | "half-height" | "half-diagonal";

/** What a table or a log says about its coefficients. A part that is not said is `null`. */
export interface CoefficientConvention {
  readonly model: DistortionModel | null;
  readonly direction: Direction | null;
  readonly radius: RadiusUnit | null;
  readonly areaMm: { readonly width: number; readonly height: number } | null;
  readonly squeezeState: "squeezed" | "desqueezed" | null;
  readonly shadingRadius: RadiusUnit | null;
  readonly shadingValues: "loss" | "gain";
}

/** Terms of the distortion equations. */
export const DISTORTION_TERMS = [
  "k1",
  "k2",
  "k3",
  "k4",
  "k5",
  "k6",
  "p1",
  "p2",
  "lambda",
  "ax2",
  "ax4",
  "ay2",
  "ay4",
  "bx2",
  "bx4",
  "by2",
  "by4",
] as const;

/** Names of coefficients that a table or a log may hold. */
export const COEFFICIENTS = [...DISTORTION_TERMS, "cx_mm", "cy_mm", "a1", "a2", "a3", "entrance_pupil_mm"] as const;
export type CoefficientName = (typeof COEFFICIENTS)[number];

/** Only the coefficients that a row gives; an absent one is "not measured", never zero. */
export type Coefficients = Readonly<Partial<Record<CoefficientName, number>>>;

/** One row of a calibration table, without its place in the file. */
export interface CalibrationPointValues {
  readonly focalMm: number;
  /** 1/m from the image plane; infinity = 0. */
  readonly focusDioptres: number;
  /** Exact series value; `null` serves every stop. */
  readonly tStop: number | null;
  readonly coefficients: Coefficients;
}
