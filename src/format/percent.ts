/** Percentages as text: the sign stands after a no-break space. */
import { fixed, signed } from "./number.ts";
import { withUnit } from "./space.ts";

/** A number that is already in percent: `−2.60 %`. */
export function percent(value: number, digits = 2): string {
  return withUnit(fixed(value, digits), "%");
}

/** The same with its sign: `+0.30 %`. */
export function signedPercent(value: number, digits = 2): string {
  return withUnit(signed(value, digits), "%");
}

/**
 * A part of a whole: `97.7 %`. What is not all is never rounded up to 100, what is not nothing never down to 0.
 *
 * @example share(737, 754) // "97.7 %"
 */
export function share(part: number, whole: number, digits = 1): string {
  if (whole <= 0) return percent(0, 0);
  if (part >= whole) return percent(100, 0);
  if (part <= 0) return percent(0, 0);
  const step = 10 ** -digits;
  return percent(Math.min(100 - step, Math.max(step, (100 * part) / whole)), digits);
}
