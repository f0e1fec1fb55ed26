/** A log that fits its takes when its clock is moved by whole or half hours: the recorder was in another time zone, or on summer time. */
import { sameRational } from "../core/rational.ts";
import { nominalRate } from "../time/frame-rate.ts";
import { framesPerDay } from "../time/timecode.ts";
import type { PictureFrame } from "./clock.ts";
import type { TakeDraft } from "./draft.ts";
import { modulo } from "./order.ts";

const HALF_HOURS_A_DAY = 48;
/** A row this near to the first and to the last frame of a take, in seconds. */
const REACH_SECONDS = 1;
/** A log with much more than its takes fits somewhere at any offset: seconds of it that may be besides, for each take. */
const BESIDE_SECONDS = 60;

/** How far a log's clock is from the picture's. */
export interface HoursApart {
  /** To add to the log: a multiple of a half, from -11.5 to 12. */
  readonly hours: number;
  /** The same in frames of the picture. */
  readonly frames: number;
}

/**
 * The one offset of whole or half hours at which a log none of whose rows lies in a take covers the first and the last frame of every
 * take; `null` where there is none, or more than one.
 * @param rows rows of the log, at least one
 * @param takes takes that the log names, or all of its camera
 */
export function hoursApart(rows: Iterable<number>, takes: readonly TakeDraft[], clock: PictureFrame): HoursApart | null {
  const timed = takes.filter((take) => take.inFrame !== null && take.durationFrames > 0);
  const [first] = timed;
  if (first === undefined || timed.some((take) => !sameRational(take.rate, first.rate) || take.dropFrame !== first.dropFrame))
    return null;
  const { rate, dropFrame } = first;
  const perDay = framesPerDay(rate, dropFrame);
  const base = nominalRate(rate);
  const slots = Math.ceil(perDay / base);
  const logged = new Uint8Array(slots);
  for (const row of rows) {
    const frame = clock(row, rate, dropFrame);
    if (frame === null) return null;
    logged[Math.floor(modulo(frame, perDay) / base)] = 1;
  }
  const lengths = timed.reduce((sum, take) => sum + take.durationFrames / base, 0);
  if (logged.reduce((sum, one) => sum + one, 0) > 2 * lengths + BESIDE_SECONDS * timed.length) return null;
  const isLogged = (frame: number): boolean => {
    const slot = Math.floor(modulo(frame, perDay) / base);
    for (let away = -REACH_SECONDS; away <= REACH_SECONDS; away++) if (logged[modulo(slot + away, slots)] === 1) return true;
    return false;
  };
  const fitting: number[] = [];
  for (let half = 1 - HALF_HOURS_A_DAY / 2; half <= HALF_HOURS_A_DAY / 2; half++) {
    const offset = (half * perDay) / HALF_HOURS_A_DAY;
    const fits = timed.every(({ inFrame, durationFrames }) => {
      const start = (inFrame as number) - offset;
      return isLogged(start) && isLogged(start + durationFrames - 1);
    });
    if (fits && half !== 0) fitting.push(half);
  }
  const [half, other] = fitting;
  if (half === undefined || other !== undefined) return null;
  return { hours: half / 2, frames: Math.round((half * perDay) / HALF_HOURS_A_DAY) };
}

/** `1 hour`, `5.5 hours`; without its sign. */
export function hoursWords({ hours }: HoursApart): string {
  const amount = Math.abs(hours);
  return `${amount} ${amount === 1 ? "hour" : "hours"}`;
}
