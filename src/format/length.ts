/** Distances and lengths as text. Metric to a centimetre below ten metres, imperial there to a quarter of an inch; coarser beyond. */
import type { DistanceM } from "../core/quantity.ts";
import { fixed, trimmed } from "./number.ts";
import { INFINITY, MINUS, NBSP, withUnit } from "./space.ts";
import { inUnits, type PageDistances } from "./units.ts";

export type { DistanceSystem } from "./units.ts";

const MM_PER_INCH = 25.4;
/** Quarters of an inch in what a distance is rounded to. */
const QUARTERS = { quarter: 1, inch: 4, foot: 48 } as const;

/**
 * A distance with its unit.
 *
 * @example distance(2.4, "metric") // "2.40 m"
 * @example distance(2.4, "imperial") // `7' 10 1/2"`
 * @example distance("inf", "both") // "∞"
 */
export function distance(m: DistanceM, distances: PageDistances): string {
  if (isInfinite(m)) return INFINITY;
  return inUnits(distances, (system) => (system === "imperial" ? feetAndInches(m) : withUnit(metres(m), "m")));
}

/**
 * From one distance to another, in the order given; one distance when both print alike.
 *
 * @example distanceRange(1.76, "inf", "metric") // "1.76 m to ∞"
 */
export function distanceRange(from: DistanceM, to: DistanceM, distances: PageDistances): string {
  return inUnits(distances, (system) => {
    const first = distance(from, system);
    const last = distance(to, system);
    return first === last ? first : `${first} to ${last}`;
  });
}

/** The figure alone, for a column whose head has the unit: `2.40`, `∞`; feet and inches keep their marks. */
export function distanceNumber(m: DistanceM, distances: PageDistances = "metric"): string {
  if (isInfinite(m)) return INFINITY;
  return inUnits(distances, (system) => (system === "imperial" ? feetAndInches(m) : metres(m)));
}

/** The unit for the head of such a column: `m` or `ft in`. */
export function distanceUnit(distances: PageDistances): string {
  return inUnits(distances, (system) => (system === "imperial" ? `ft${NBSP}in` : "m"));
}

/**
 * Feet and inches: rounded first, then carried into feet. Steps as fine as those of metres: a quarter of an inch below ten
 * metres, an inch below a hundred, a foot beyond.
 *
 * @example feetAndInches(1.8923) // `6' 2 1/2"`
 * @example feetAndInches(34.1) // `111' 11"`
 */
export function feetAndInches(m: number): string {
  const step = [QUARTERS.quarter, QUARTERS.inch, QUARTERS.foot][digitsFewer(m)] ?? QUARTERS.foot;
  const quarters = step * Math.round((Math.abs(m) * 4000) / MM_PER_INCH / step);
  const feet = Math.floor(quarters / QUARTERS.foot);
  if (step === QUARTERS.foot) return `${m < 0 ? MINUS : ""}${feet}'`;
  const whole = Math.floor((quarters % 48) / 4);
  const inches = `${inchText(whole, quarters % 4)}"`;
  const text = feet === 0 ? inches : `${feet}'${NBSP}${inches}`;
  return m < 0 && quarters > 0 ? `${MINUS}${text}` : text;
}

function inchText(whole: number, quarters: number): string {
  const fraction = ["", "1/4", "1/2", "3/4"][quarters] as string;
  if (fraction === "") return String(whole);
  return whole === 0 ? fraction : `${whole}${NBSP}${fraction}`;
}

/** Two decimals below ten, one below a hundred, none above: about three digits, and never finer than a centimetre. */
function metres(m: number): string {
  return fixed(m, 2 - digitsFewer(m));
}

function digitsFewer(m: number): 0 | 1 | 2 {
  return Math.abs(m) < 9.995 ? 0 : Math.abs(m) < 99.95 ? 1 : 2;
}

function isInfinite(m: DistanceM): m is "inf" {
  return m === "inf" || m === Number.POSITIVE_INFINITY;
}

/** Millimetres with at most two decimals, zeros left out: `35 mm`, `24.89 mm`. */
export function millimetres(mm: number): string {
  return withUnit(trimmed(mm, 2), "mm");
}

/** A range of focal lengths in the order given: `50 mm to 35 mm`; one length when both print alike. */
export function millimetresRange(from: number, to: number): string {
  const first = millimetres(from);
  const last = millimetres(to);
  return first === last ? first : `${first} to ${last}`;
}

/** Frame or sensor size: `28.80 × 16.20 mm`. */
export function areaMm(widthMm: number, heightMm: number): string {
  return withUnit(`${fixed(widthMm, 2)}${NBSP}\u00d7${NBSP}${fixed(heightMm, 2)}`, "mm");
}
