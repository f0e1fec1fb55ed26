/** How far two clocks part: rates that were mixed up, and crystals that are not alike. */
import { type FrameRate, framesPerSecond, nominalRate } from "./frame-rate.ts";
import { framesPerDay } from "./timecode.ts";

/**
 * Seconds of real time that a day of labels takes beyond 86,400: -0.0864 at 29.97 drop frame, +86.4 at 29.97 non-drop.
 *
 * @source Derived from the count of labels; the drop-frame value as printed on the drop-frame page of crnt.co.jp.
 */
export function labelDayErrorSeconds(rate: FrameRate, dropFrame: boolean): number {
  return (framesPerDay(rate, dropFrame) * rate.denom) / rate.num - 86_400;
}

/**
 * Seconds by which the labels of two rates part after a real time: 24 against 23.976 for an hour is 3.6 s less one part in 1001.
 *
 * @source Derived: each clock's labels advance by its rate over its base in a second.
 */
export function rateDriftSeconds(a: FrameRate, b: FrameRate, realSeconds: number): number {
  return realSeconds * (framesPerSecond(a) / nominalRate(a) - framesPerSecond(b) / nominalRate(b));
}

/** Seconds that a clock of so many parts per million is out after a real time: 1 ppm is 3.6 ms an hour. */
export function crystalDriftSeconds(partsPerMillion: number, realSeconds: number): number {
  return partsPerMillion * 1e-6 * realSeconds;
}

/** Hours until a clock of so many parts per million is out by so many seconds; Infinity for a perfect clock. */
export function hoursUntilDrift(partsPerMillion: number, seconds: number): number {
  return Math.abs(seconds) / (Math.abs(partsPerMillion) * 1e-6 * 3600);
}

/** A moment of one clock at which its offset to another is known. */
export interface SyncPoint {
  /** Real seconds from any start, the same for both points. */
  readonly atSeconds: number;
  /** What has to be added to the one clock to get the other's, in seconds. */
  readonly offsetSeconds: number;
}

/**
 * Offset and drift of a clock from two sync points: offset at time 0, and how much it grows in parts per million. Refuses (NaN)
 * two points at one time.
 *
 * @source Derived: the straight line through two points; 1 ppm is 3.6 ms an hour.
 * @example clockFromSyncPoints({ atSeconds: 0, offsetSeconds: 0.5 }, { atSeconds: 3600, offsetSeconds: 0.536 }) // { offsetSeconds: 0.5, ppm: 10.0 }
 */
export function clockFromSyncPoints(a: SyncPoint, b: SyncPoint): { readonly offsetSeconds: number; readonly ppm: number } {
  const seconds = b.atSeconds - a.atSeconds;
  const slope = seconds === 0 ? Number.NaN : (b.offsetSeconds - a.offsetSeconds) / seconds;
  return { offsetSeconds: a.offsetSeconds - slope * a.atSeconds, ppm: slope * 1e6 };
}

/** Parts per million between a rate and its 1000/1001: 3.6 s an hour less one part in 1001. */
const RATE_SLOPE_PPM = 1e6 / 1001;

/**
 * Whether a slope is the one between a rate and its 1000/1001 (24 and 23.976), within 5 % and the error that rounding to whole
 * frames leaves. Crystals are out by 100 ppm at most, so that the two are never taken for one another.
 */
export function isRateSlope(ppm: number, roundingPpm: number): boolean {
  return Math.abs(Math.abs(ppm) - RATE_SLOPE_PPM) <= Math.max(0.05 * RATE_SLOPE_PPM, Math.min(roundingPpm, 0.5 * RATE_SLOPE_PPM));
}
