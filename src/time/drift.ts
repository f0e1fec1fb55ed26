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
