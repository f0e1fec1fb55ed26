/**
 * Shading: how much darker the lens makes the picture away from the centre. Brightness is 1 at the centre, and over the
 * recorded radius it is 1 - (a1 r^2 + a2 r^4 + a3 r^6) for `loss` and 1 + a1 r^2 + a2 r^4 + a3 r^6 for `gain`.
 */
import type { CoefficientConvention, Coefficients } from "./convention.ts";
import { largestAt, type ThreePoints } from "./frame-points.ts";
import { planeSqueeze, radiusMm, type SensorArea } from "./radius.ts";
import type { Refused } from "./refused.ts";

/** Shading as brightness = 1 + b1 r^2 + b2 r^4 + b3 r^6, r in mm on the recorded sensor from the centre. */
export interface CanonicalShading {
  readonly b1: number;
  readonly b2: number;
  readonly b3: number;
  /** From the middle of the area, right and down positive. */
  readonly centreXMm: number;
  readonly centreYMm: number;
  /** The radius counts x times this: 1, or the squeeze for values of the desqueezed picture. */
  readonly squeeze: number;
}

/** A brightness that cannot be a lens's: black or below, or brighter than the centre. */
export type ShadingProblem = "not above zero" | "brighter than the centre";

export interface ShadingValue {
  /** Brightness against the centre, as a factor. */
  readonly factor: number;
  /** log2 of the factor; negative is darker. `null` when the factor is not above zero. */
  readonly stops: number | null;
  readonly problem: ShadingProblem | null;
}

/**
 * Brings shading values into mm. `focalMm` is needed for the radius unit `focal`, `squeeze` for values of the desqueezed
 * picture. Refused, in words, when the shading radius (or the area it needs) is not said or there are no values.
 */
export function canonicalShading(
  convention: CoefficientConvention,
  coefficients: Coefficients,
  focalMm: number,
  squeeze: number | null = null,
): CanonicalShading | Refused {
  const { a1, a2, a3 } = coefficients;
  if (![a1, a2, a3].some((value) => value !== undefined && Number.isFinite(value)))
    return { refused: "there are no shading values" };
  if (convention.shadingRadius === null) return { refused: "the shading values do not say their radius" };
  const unit = radiusMm(convention.shadingRadius, convention.areaMm, focalMm);
  if (typeof unit !== "number") return unit;
  const plane = planeSqueeze(convention, squeeze);
  if (typeof plane !== "number") return plane;
  const sign = convention.shadingValues === "loss" ? -1 : 1;
  const inMm = (value: number | undefined, power: number) =>
    (sign * (value === undefined || Number.isNaN(value) ? 0 : value)) / unit ** power;
  return Object.freeze({
    b1: inMm(a1, 2),
    b2: inMm(a2, 4),
    b3: inMm(a3, 6),
    centreXMm: coefficients.cx_mm ?? 0,
    centreYMm: coefficients.cy_mm ?? 0,
    squeeze: plane,
  });
}

/** Brightness factor at a recorded point, mm from the middle of the area. May be 0 or less for values that are wrong. */
export function shadingFactor(s: CanonicalShading, xMm: number, yMm: number): number {
  const x = (xMm - s.centreXMm) * s.squeeze;
  const y = yMm - s.centreYMm;
  const u = x * x + y * y;
  return 1 + u * (s.b1 + u * (s.b2 + u * s.b3));
}

/**
 * Factor and stops at corner, middle of the side and middle of the top; where the places of a kind differ (a shifted centre),
 * the one furthest from no shading. A factor that is 0, negative or above 1 carries its problem.
 */
export function shadingAt(s: CanonicalShading, area: SensorArea): Readonly<Record<keyof ThreePoints, ShadingValue>> {
  const at = (kind: keyof ThreePoints): ShadingValue => {
    const factor = largestAt(kind, area, (x, y) => shadingFactor(s, x, y), magnitude) ?? 1;
    return {
      factor,
      stops: factor > 0 ? stopsFromFactor(factor) : null,
      problem: factor <= 0 ? "not above zero" : factor > 1 ? "brighter than the centre" : null,
    };
  };
  return { corner: at("corner"), midSide: at("midSide"), midTop: at("midTop") };
}

/** Stops at the three places, negative is darker; `null` when one of the factors is not above zero. */
export function shadingStopsAt(s: CanonicalShading, area: SensorArea): ThreePoints | null {
  const { corner, midSide, midTop } = shadingAt(s, area);
  return corner.stops === null || midSide.stops === null || midTop.stops === null
    ? null
    : { corner: corner.stops, midSide: midSide.stops, midTop: midTop.stops };
}

/** log2 of a brightness factor; negative is darker. @example stopsFromFactor(0.25) // -2 */
export function stopsFromFactor(factor: number): number {
  return Math.log2(factor);
}

/** Fall-off of a lens whose stop is in front of it: cos^4 of the field angle, tan = r / f. @source D. Jacobson, Photographic Lenses FAQ Q18 */
export function naturalFallOff(radius: number, focal: number): number {
  const tangent = radius / focal;
  return 1 / (1 + tangent * tangent) ** 2;
}

function magnitude(factor: number): number {
  return factor > 0 ? Math.abs(Math.log2(factor)) : Number.POSITIVE_INFINITY;
}
