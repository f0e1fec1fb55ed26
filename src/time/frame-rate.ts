import { type Rational, rational } from "../core/rational.ts";

/** Frames per second as an exact fraction, such as 24000/1001. */
export type FrameRate = Rational;

/** Frames a timecode second counts: 24 for 24 and for 24000/1001. The whole number that labels wrap at. */
export function nominalRate(rate: FrameRate): number {
  return Math.round(rate.num / rate.denom);
}

/** Frames per second as a number, for arithmetic in real time. */
export function framesPerSecond(rate: FrameRate): number {
  return rate.num / rate.denom;
}

/** True for the rates that run 1000/1001 slower than their base: 23.976, 29.97, 47.952, 59.94, 119.88. */
export function isThousandOneRate(rate: FrameRate): boolean {
  return rate.denom !== 1 && rate.num * 1001 === nominalRate(rate) * 1000 * rate.denom;
}

/**
 * The ways people round the 1000/1001 rates. A decimal that is not in this list is refused rather than snapped to a
 * neighbour: 23.9 is a typing error, not a rate.
 */
const DECIMALS: Readonly<Record<string, number>> = {
  "23.976": 24,
  "23.98": 24,
  "29.97": 30,
  "47.952": 48,
  "47.95": 48,
  "59.94": 60,
  "71.928": 72,
  "95.904": 96,
  "119.88": 120,
};

/**
 * A rate as people write it: `24`, `25.0`, `23.976`, `23.98`, `29.97`, `47.952`, `59.94`, `119.88`, `24000/1001`, `24/1.001`.
 * `null` for anything else, also for a fraction that is neither whole nor 1000/1001 of a whole number (timecode cannot count it).
 *
 * @example parseFrameRate("23.976") // { num: 24000, denom: 1001 }
 */
export function parseFrameRate(text: string): FrameRate | null {
  const written = text.trim();
  const whole = /^(\d{1,4})(?:\.0+)?$/.exec(written);
  if (whole) return wholeRate(Number(whole[1]));
  const slow = /^(\d{1,4})\/1\.001$/.exec(written);
  if (slow) return thousandOneRate(Number(slow[1]));
  const fraction = /^(\d{1,7})\/(\d{1,4})$/.exec(written);
  if (fraction) return fractionRate(Number(fraction[1]), Number(fraction[2]));
  // 23.976 and 23.9760 are one rate, and so is the longer rounding 23.97602.
  const decimal = /^(\d{1,4}\.\d+)$/.exec(written);
  return decimal ? decimalRate(decimal[1] as string) : null;
}

function wholeRate(base: number): FrameRate | null {
  return base >= 1 ? rational(base) : null;
}

function thousandOneRate(base: number): FrameRate | null {
  return base >= 1 ? rational(base * 1000, 1001) : null;
}

function fractionRate(num: number, denom: number): FrameRate | null {
  if (num === 0 || denom === 0) return null;
  const rate = rational(num, denom);
  return rate.denom === 1 || isThousandOneRate(rate) ? rate : null;
}

function decimalRate(written: string): FrameRate | null {
  const base = DECIMALS[written.replace(/0+$/, "")];
  if (base !== undefined) return thousandOneRate(base);
  const digits = written.length - written.indexOf(".") - 1;
  if (digits < 3) return null;
  const nearest = Math.round(Number(written));
  return Math.abs((nearest * 1000) / 1001 - Number(written)) <= 0.5001 * 10 ** -digits ? thousandOneRate(nearest) : null;
}

/**
 * A rate as pages print it: `24`, `23.976`, `29.97`, `47.952`, `59.94`, `119.88`.
 *
 * @example rateLabel(rational(30000, 1001)) // "29.97"
 */
export function rateLabel(rate: FrameRate): string {
  if (rate.denom === 1) return String(rate.num);
  const rounded = (rate.num / rate.denom).toFixed(3);
  return rounded.replace(/\.?0+$/, "");
}

/**
 * True for the rates that have drop-frame timecode: 29.97, 59.94 and 119.88 (30000, 60000 and 120000 over 1001).
 *
 * @source 29.97 and 59.94: D. Heidelberger, "Drop-Frame Timecode", which also says that 23.976 has none. 119.88, with eight
 *   labels and three digits: S. Andrews, TimecodeKit, frame rate table (a day has 10,357,632 frames).
 */
export function supportsDropFrame(rate: FrameRate): boolean {
  return droppedPerMinute(rate) > 0;
}

/** Labels left out at the start of each minute not divisible by ten: 2 at 29.97, 4 at 59.94, 8 at 119.88, 0 where there is no drop frame. */
export function droppedPerMinute(rate: FrameRate): 0 | 2 | 4 | 8 {
  if (rate.denom !== 1001) return 0;
  return rate.num === 30_000 ? 2 : rate.num === 60_000 ? 4 : rate.num === 120_000 ? 8 : 0;
}
