/** From the canonical form back to coefficients in a radius unit, and to and from OpenCV's camera model. */
import type { CoefficientConvention, CoefficientName, Coefficients, RadiusUnit } from "../convention.ts";
import { radiusMm, type SensorArea } from "../radius.ts";
import type { Refused } from "../refused.ts";
import { type CanonicalDistortion, completeCanonical, RADIUS_POWERS } from "./canonical.ts";

/**
 * The coefficients of the same equation, in the same direction, with r = 1 at another radius: terms of r^n are multiplied by
 * R^n. The other direction has no equation of this form; map points instead.
 *
 * @example k1 -0.12 by focal length 35 mm is -0.02369896 by the half diagonal of 24.89 x 18.66 mm
 */
export function coefficientsIn(
  d: CanonicalDistortion,
  to: { readonly radius: RadiusUnit; readonly focalMm: number; readonly areaMm: CoefficientConvention["areaMm"] },
): Coefficients | Refused {
  const unit = radiusMm(to.radius, to.areaMm, to.focalMm);
  if (typeof unit !== "number") return unit;
  const terms: Partial<Record<CoefficientName, number>> = { cx_mm: d.centreXMm, cy_mm: d.centreYMm };
  const inMm: Readonly<Partial<Record<CoefficientName, unknown>>> = d;
  for (const [name, power] of Object.entries(RADIUS_POWERS[d.model]) as [CoefficientName, number][]) {
    terms[name] = Number(inMm[name]) * unit ** power;
  }
  return terms;
}

/** Lengths in pixels; whole numbers are the middles of pixels, as OpenCV counts them. */
export interface OpenCvCamera {
  readonly fx: number;
  readonly fy: number;
  readonly cx: number;
  readonly cy: number;
  readonly widthPx: number;
  readonly heightPx: number;
  /** k1, k2, p1, p2, then k3, then k4, k5, k6. */
  readonly coefficients: readonly number[];
}

export interface CameraInMm {
  readonly distortion: CanonicalDistortion;
  readonly focalMm: number;
  /** The height follows from fy: pixels need not be square. */
  readonly area: SensorArea;
}

const OPENCV_ORDER = ["k1", "k2", "p1", "p2", "k3", "k4", "k5", "k6"] as const;

/**
 * OpenCV's camera in mm on a sensor of the given width. It distorts (ideal to recorded) and its radius is the focal length.
 * Refused when there are thin-prism or tilt terms, which the canonical form does not have.
 *
 * @source OpenCV calib3d.hpp, detailed description
 */
export function canonicalFromOpenCv(camera: OpenCvCamera, sensorWidthMm: number): CameraInMm | Refused {
  if (camera.coefficients.slice(OPENCV_ORDER.length).some((value) => value !== 0)) {
    return { refused: "thin-prism and tilt terms are not part of the model" };
  }
  const focalMm = (camera.fx * sensorWidthMm) / camera.widthPx;
  const pitchX = focalMm / camera.fx;
  const pitchY = focalMm / camera.fy;
  const inMm: Partial<Record<CoefficientName, number>> = {};
  OPENCV_ORDER.forEach((name, i) => {
    inMm[name] = (camera.coefficients[i] ?? 0) / focalMm ** (RADIUS_POWERS["brown-conrady"][name] ?? 0);
  });
  return {
    focalMm,
    area: { widthMm: sensorWidthMm, heightMm: camera.heightPx * pitchY },
    distortion: completeCanonical("brown-conrady", inMm, {
      direction: "distort",
      centreXMm: (camera.cx + 0.5 - camera.widthPx / 2) * pitchX,
      centreYMm: (camera.cy + 0.5 - camera.heightPx / 2) * pitchY,
    }),
  };
}

/**
 * OpenCV's camera of a canonical distortion. Refused when OpenCV has no such camera: another model than brown-conrady, the
 * direction `undistort`, or coefficients of the desqueezed picture.
 */
export function openCvFromCanonical(
  { distortion: d, focalMm, area }: CameraInMm,
  size: { readonly widthPx: number; readonly heightPx: number },
): OpenCvCamera | Refused {
  if (d.model !== "brown-conrady") return { refused: `OpenCV has no ${d.model} model` };
  if (d.direction !== "distort") return { refused: "the coefficients undistort, and OpenCV's distort" };
  if (d.squeeze !== 1) return { refused: "the coefficients are for the desqueezed picture" };
  const pixelsX = size.widthPx / area.widthMm;
  const pixelsY = size.heightPx / area.heightMm;
  return {
    ...size,
    fx: focalMm * pixelsX,
    fy: focalMm * pixelsY,
    cx: d.centreXMm * pixelsX + size.widthPx / 2 - 0.5,
    cy: d.centreYMm * pixelsY + size.heightPx / 2 - 0.5,
    coefficients: OPENCV_ORDER.map((name) => d[name] * focalMm ** (RADIUS_POWERS["brown-conrady"][name] ?? 0)),
  };
}
