/** Numbers as text: minus is U+2212, the point is decimal, thousands stand apart by a thin space. Never by locale. */
import { MINUS, THIN } from "./space.ts";

/**
 * A number with so many decimals; what rounds to nothing has no sign.
 *
 * @example fixed(-2.604, 2) // "−2.60"
 */
export function fixed(value: number, digits: number): string {
  const text = Math.abs(value).toFixed(digits);
  return value < 0 && Number(text) !== 0 ? `${MINUS}${text}` : text;
}

/** The same with a sign in front of what is not zero: `+0.03`, `−0.07`, `0.00`. */
export function signed(value: number, digits: number): string {
  const text = fixed(value, digits);
  return value > 0 && Number(text) !== 0 ? `+${text}` : text;
}

/**
 * A number with so many significant digits, zeros kept, without exponent.
 *
 * @example significant(0.02204, 3) // "0.0220"
 */
export function significant(value: number, digits: number): string {
  if (value === 0) return fixed(0, digits - 1);
  // The exponent of the rounded number: 9.996 to three digits is 10.0, not 10.00.
  const exponent = Number(
    Math.abs(value)
      .toExponential(digits - 1)
      .split("e")[1],
  );
  const decimals = digits - 1 - exponent;
  if (decimals >= 0) return fixed(value, decimals);
  const step = 10 ** -decimals;
  return fixed(Math.round(value / step) * step, 0);
}

/** At most so many decimals, trailing zeros left out: `172.8`, `180`. */
export function trimmed(value: number, digits: number): string {
  const text = fixed(value, digits);
  return text.includes(".") ? text.replace(/\.?0+$/, "") : text;
}

/**
 * A whole number in groups of three: `18 412`. Numbers below 1000 have no group.
 *
 * @example thousands(18412) // "18 412"
 */
export function thousands(value: number): string {
  return fixed(value, 0).replace(/\B(?=(\d{3})+$)/g, THIN);
}
