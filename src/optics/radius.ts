/** What r = 1 is in millimetres on the sensor. */
import type { CoefficientConvention, RadiusUnit } from "./convention.ts";
import type { Refused } from "./refused.ts";

/** The part of the sensor that a mode records. */
export interface SensorArea {
  readonly widthMm: number;
  readonly heightMm: number;
}

/**
 * Millimetres of r = 1. The half radii belong to the area that the coefficients were made with (`areaMm`), whatever
 * sensor mode they are used with. Refused when the area or the focal length that the unit needs is not known.
 *
 * @example radiusMm("half-width", { width: 24.89, height: 18.66 }, 35) // 12.445
 */
export function radiusMm(unit: RadiusUnit, areaMm: CoefficientConvention["areaMm"], focalMm: number): number | Refused {
  if (unit === "mm") return 1;
  if (unit === "focal") {
    return focalMm > 0 && Number.isFinite(focalMm)
      ? focalMm
      : { refused: "the radius is in focal lengths and the focal length is not known" };
  }
  if (areaMm === null || !(areaMm.width > 0) || !(areaMm.height > 0)) {
    return { refused: `the radius is in ${unit} and area_mm is not given` };
  }
  if (unit === "half-width") return areaMm.width / 2;
  if (unit === "half-height") return areaMm.height / 2;
  return Math.hypot(areaMm.width, areaMm.height) / 2;
}

/**
 * Horizontal factor between the recorded sensor and the plane that the coefficients speak of: 1, or the squeeze when they
 * were made on the desqueezed picture. Refused when that squeeze is not known.
 */
export function planeSqueeze(convention: CoefficientConvention, squeeze: number | null): number | Refused {
  if (convention.squeezeState !== "desqueezed") return 1;
  if (squeeze === null || !(squeeze > 0)) {
    return { refused: "the coefficients are for the desqueezed picture and the squeeze is not known" };
  }
  return squeeze;
}
