/** Stops as people on set write them. */
import { THIRD_STOPS } from "../optics/stop-series.ts";
import { fixed, signed, trimmed } from "./number.ts";
import { withUnit } from "./space.ts";

/** How far a number may lie from a label of the third series and still be printed as that label. */
const LABEL_TOLERANCE_STOPS = 0.06;

/**
 * A T-stop: the nearest label of the third series if it is within 0.06 stop, else one decimal.
 *
 * @example tStop(2.8284) // "T2.8"
 * @example tStop(2.1) // "T2.1"
 */
export function tStop(t: number): string {
  return `T${stopNumber(t)}`;
}

/** An f-stop in the same manner: `f/2.8`. */
export function fStop(f: number): string {
  return `f/${stopNumber(f)}`;
}

/** The number alone. A logged 11 is the label 11 although the label's exact value is 11.31. */
export function stopNumber(stop: number): string {
  const written = THIRD_STOPS.find(({ label }) => Math.abs(stop - label) < 0.005);
  if (written) return String(written.label);
  const near = THIRD_STOPS.find(({ exact }) => Math.abs(2 * Math.log2(stop / exact)) <= LABEL_TOLERANCE_STOPS);
  return near ? String(near.label) : trimmed(stop, 1);
}

/** From the widest to the deepest stop, `T4 to T5.6`; one stop when both print alike. */
export function stopRange(widest: number, deepest: number): string {
  const first = tStop(widest);
  const last = tStop(deepest);
  return first === last ? first : `${first} to ${last}`;
}

/**
 * A difference in stops, to a hundredth; whole numbers without decimals.
 *
 * @example stops(0.9313) // "0.93 stop"
 * @example stops(2) // "2 stops"
 */
export function stops(n: number): string {
  return withUnit(stopsFigure(n, fixed), stopWord(n));
}

/** The same with its sign: `+0.87 stop`. */
export function signedStops(n: number): string {
  return withUnit(stopsFigure(n, signed), stopWord(n));
}

function stopsFigure(n: number, write: (value: number, digits: number) => string): string {
  const text = write(n, 2);
  return text.endsWith(".00") ? text.slice(0, -3) : text;
}

function stopWord(n: number): string {
  return Math.abs(n) < 1.005 ? "stop" : "stops";
}

/** Light ratio: `1.91 to 1`. */
export function lightRatioText(ratio: number): string {
  return `${fixed(ratio, 2)} to 1`;
}

/** Transmittance to three decimals: `0.867`. */
export function transmittanceText(tau: number): string {
  return fixed(tau, 3);
}
