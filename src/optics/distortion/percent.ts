/** Distortion as a percentage at three places of the frame. */
import { largestAt, type ThreePoints } from "../frame-points.ts";
import type { SensorArea } from "../radius.ts";
import type { CanonicalDistortion } from "./canonical.ts";
import { idealFromRecorded } from "./map.ts";

/** As {@link ThreePoints}, with `null` where the coefficients do not define the place. */
export interface PercentByPlace {
  readonly corner: number | null;
  readonly midSide: number | null;
  readonly midTop: number | null;
}

/**
 * 100 (r recorded - r ideal) / r ideal with the recorded point at the corner, the middle of the side and the middle of the top
 * of the active area; negative is barrel. Radii are taken from the distortion centre, so tangential terms count; where the four
 * corners (or two sides) differ, the one of largest magnitude. `null` when one of the places is outside the range in which the
 * coefficients define a picture.
 *
 * @source G. Hollows, N. James, Imaging Resource Guide 3.3; ISO 17850:2015 6.1
 */
export function distortionPercentAt(d: CanonicalDistortion, area: SensorArea): ThreePoints | null {
  const { corner, midSide, midTop } = distortionPercentByPlace(d, area);
  return corner === null || midSide === null || midTop === null ? null : { corner, midSide, midTop };
}

/** As {@link distortionPercentAt}, place by place: a corner that is not defined leaves side and top standing. */
export function distortionPercentByPlace(d: CanonicalDistortion, area: SensorArea): PercentByPlace {
  const percent = (xMm: number, yMm: number) => distortionPercent(d, xMm, yMm);
  return {
    corner: largestAt("corner", area, percent, Math.abs),
    midSide: largestAt("midSide", area, percent, Math.abs),
    midTop: largestAt("midTop", area, percent, Math.abs),
  };
}

/** Percent at one recorded point (mm from the middle of the area); 0 at the distortion centre, `null` where it is not defined. */
export function distortionPercent(d: CanonicalDistortion, xMm: number, yMm: number): number | null {
  const ideal = idealFromRecorded(d, xMm, yMm);
  if (ideal === null) return null;
  const recorded = Math.hypot((xMm - d.centreXMm) * d.squeeze, yMm - d.centreYMm);
  const radius = Math.hypot((ideal.xMm - d.centreXMm) * d.squeeze, ideal.yMm - d.centreYMm);
  if (radius === 0) return recorded === 0 ? 0 : null;
  return (100 * (recorded - radius)) / radius;
}
