/** Angles as text. The degree sign stands at the figure without a space. */
import { fixed, trimmed } from "./number.ts";
import { NBSP, withUnit } from "./space.ts";

/** An angle with one decimal: `44.7°`. */
export function degrees(value: number, digits = 1): string {
  return `${fixed(value, digits)}\u00b0`;
}

/** Tilt in words: `3.5° down`, `12.0° up`, `level`. Negative looks down. */
export function tilt(value: number): string {
  return leaning(value, "up", "down");
}

/** Roll in words: `1.0° clockwise`, `1.0° anticlockwise`, `level`. */
export function roll(value: number): string {
  return leaning(value, "clockwise", "anticlockwise");
}

function leaning(value: number, positive: string, negative: string): string {
  const text = fixed(Math.abs(value), 1);
  if (Number(text) === 0) return "level";
  return `${text}\u00b0${NBSP}${value > 0 ? positive : negative}`;
}

/** Shutter angle without needless decimals, `172.8°`, and the exposure time when the capture rate is known: `172.8°, 1/50 s`. */
export function shutter(angleDeg: number, captureFps: number | null): string {
  const angle = `${trimmed(angleDeg, 1)}\u00b0`;
  if (captureFps === null || !(captureFps > 0) || !(angleDeg > 0)) return angle;
  return `${angle}, ${withUnit(`1/${trimmed((360 * captureFps) / angleDeg, 1)}`, "s")}`;
}
