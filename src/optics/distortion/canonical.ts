/**
 * One form for all distortion coefficients: millimetres on the recorded sensor, x right, y down, the origin in the middle of
 * the active area. A log or a table in any unit is brought into it once; everything else works on it.
 *
 * With (x, y) from the distortion centre, r^2 = x^2 + y^2, and (x', y') on the other side:
 * - brown-conrady: R = (1 + k1 r^2 + k2 r^4 + k3 r^6) / (1 + k4 r^2 + k5 r^4 + k6 r^6);
 *   x' = x R + 2 p1 x y + p2 (r^2 + 2 x^2), y' = y R + 2 p2 x y + p1 (r^2 + 2 y^2)
 * - division: x' = x / (1 + lambda r^2), y' likewise
 * - anamorphic-even: x' = x (1 + ax2 x^2 + ax4 x^4 + ay2 y^2 + ay4 y^4), y' = y (1 + bx2 x^2 + bx4 x^4 + by2 y^2 + by4 y^4)
 *
 * `undistort` takes the recorded point to the ideal one by this equation, `distort` the ideal one to the recorded one.
 *
 * @source OpenCV calib3d.hpp, detailed description (brown-conrady); Fitzgibbon 2001 (division); the even form is this project's
 */
import type { CoefficientConvention, CoefficientName, Coefficients, Direction } from "../convention.ts";
import { planeSqueeze, radiusMm } from "../radius.ts";
import type { Refused } from "../refused.ts";
import { anamorphicLimitMm, brownConradyLimitMm, divisionLimitMm } from "./limit.ts";

export interface BrownConradyTerms {
  /** mm^-2, mm^-4, mm^-6 of the numerator. */
  readonly k1: number;
  readonly k2: number;
  readonly k3: number;
  /** mm^-2, mm^-4, mm^-6 of the denominator. */
  readonly k4: number;
  readonly k5: number;
  readonly k6: number;
  /** mm^-1. */
  readonly p1: number;
  readonly p2: number;
}

export interface DivisionTerms {
  /** mm^-2. */
  readonly lambda: number;
}

export interface AnamorphicEvenTerms {
  /** mm^-2 and mm^-4. */
  readonly ax2: number;
  readonly ax4: number;
  readonly ay2: number;
  readonly ay4: number;
  readonly bx2: number;
  readonly bx4: number;
  readonly by2: number;
  readonly by4: number;
}

interface CanonicalFrame {
  readonly direction: Direction;
  /** Distortion centre from the middle of the area, mm on the recorded sensor: right and down are positive. */
  readonly centreXMm: number;
  readonly centreYMm: number;
  /** The equation's x is the sensor's x times this: 1, or the squeeze for coefficients of the desqueezed picture. */
  readonly squeeze: number;
  /** Radius from the centre, on the side that the equation takes in, inside which it never turns back. May be `Infinity`. */
  readonly limitMm: number;
}

export type CanonicalDistortion =
  | ({ readonly model: "brown-conrady" } & CanonicalFrame & BrownConradyTerms)
  | ({ readonly model: "division" } & CanonicalFrame & DivisionTerms)
  | ({ readonly model: "anamorphic-even" } & CanonicalFrame & AnamorphicEvenTerms);

/** Coefficients of each model with the power of the radius unit that each is divided by to come to mm. */
export const RADIUS_POWERS: Readonly<Record<CanonicalDistortion["model"], Readonly<Partial<Record<CoefficientName, number>>>>> = {
  "brown-conrady": { k1: 2, k2: 4, k3: 6, k4: 2, k5: 4, k6: 6, p1: 1, p2: 1 },
  division: { lambda: 2 },
  "anamorphic-even": { ax2: 2, ax4: 4, ay2: 2, ay4: 4, bx2: 2, bx4: 4, by2: 2, by4: 4 },
};

/**
 * Brings coefficients into mm on the recorded sensor. `focalMm` is the focal length that the coefficients belong to (only the
 * radius unit `focal` needs it); `squeeze` is needed for coefficients of the desqueezed picture alone. A coefficient that is
 * absent is a term that the model does not have here. Refused, in words, when model, direction, radius or a length that the
 * radius needs is not said, or when the row has no coefficient of the model.
 */
export function canonicalDistortion(
  convention: CoefficientConvention,
  coefficients: Coefficients,
  focalMm: number,
  squeeze: number | null = null,
): CanonicalDistortion | Refused {
  const unsaid = unsaidParts(convention);
  if (unsaid !== null) return unsaid;
  const { model, direction, radius } = convention;
  if (model === null || direction === null || radius === null) return { refused: "the convention is not complete" };
  const unit = radiusMm(radius, convention.areaMm, focalMm);
  if (typeof unit !== "number") return unit;
  const plane = planeSqueeze(convention, squeeze);
  if (typeof plane !== "number") return plane;

  const powers = Object.entries(RADIUS_POWERS[model]) as [CoefficientName, number][];
  if (!powers.some(([name]) => Number.isFinite(coefficients[name]))) {
    return { refused: `there is no coefficient of the ${model} model` };
  }
  const inMm: Partial<Record<CoefficientName, number>> = {};
  for (const [name, power] of powers) {
    const value = coefficients[name];
    inMm[name] = value === undefined || Number.isNaN(value) ? 0 : value / unit ** power;
  }
  return completeCanonical(model, inMm, {
    direction,
    centreXMm: finiteOrZero(coefficients.cx_mm),
    centreYMm: finiteOrZero(coefficients.cy_mm),
    squeeze: plane,
  });
}

/** Completes coefficients that are in mm already; terms that are absent are 0. */
export function completeCanonical(
  model: CanonicalDistortion["model"],
  inMm: Coefficients,
  frame: { readonly direction: Direction; readonly centreXMm?: number; readonly centreYMm?: number; readonly squeeze?: number },
): CanonicalDistortion {
  const term = (name: CoefficientName) => inMm[name] ?? 0;
  const place = {
    direction: frame.direction,
    centreXMm: frame.centreXMm ?? 0,
    centreYMm: frame.centreYMm ?? 0,
    squeeze: frame.squeeze ?? 1,
  };
  if (model === "division") {
    const terms = { lambda: term("lambda") };
    return Object.freeze({ model, ...place, ...terms, limitMm: divisionLimitMm(terms) });
  }
  if (model === "anamorphic-even") {
    const terms = {
      ax2: term("ax2"),
      ax4: term("ax4"),
      ay2: term("ay2"),
      ay4: term("ay4"),
      bx2: term("bx2"),
      bx4: term("bx4"),
      by2: term("by2"),
      by4: term("by4"),
    };
    return Object.freeze({ model, ...place, ...terms, limitMm: anamorphicLimitMm(terms) });
  }
  const terms = {
    k1: term("k1"),
    k2: term("k2"),
    k3: term("k3"),
    k4: term("k4"),
    k5: term("k5"),
    k6: term("k6"),
    p1: term("p1"),
    p2: term("p2"),
  };
  return Object.freeze({ model, ...place, ...terms, limitMm: brownConradyLimitMm(terms) });
}

/** Why coefficients with this convention are shown and never evaluated; `null` when all is said. */
export function unsaidParts(convention: CoefficientConvention): Refused | null {
  const missing: string[] = [];
  if (convention.model === null) missing.push("model");
  if (convention.direction === null) missing.push("direction");
  if (convention.radius === null) missing.push("radius");
  if (missing.length > 0) return { refused: `the coefficients do not say their ${listed(missing)}` };
  if (convention.radius?.startsWith("half-") && convention.areaMm === null) {
    return { refused: `the radius is in ${convention.radius} and area_mm is not given` };
  }
  return null;
}

function listed(words: readonly string[]): string {
  return words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} and ${words.at(-1)}`;
}

function finiteOrZero(value: number | undefined): number {
  return value !== undefined && Number.isFinite(value) ? value : 0;
}
