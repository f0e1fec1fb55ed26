/** Durations, hours of the day and dates as text. */
import { type FrameRate, nominalRate } from "../time/frame-rate.ts";
import { fixed } from "./number.ts";
import { withUnit } from "./space.ts";

const MONTHS = "January February March April May June July August September October November December".split(" ");
const WEEKDAYS = "Sunday Monday Tuesday Wednesday Thursday Friday Saturday".split(" ");

/**
 * A length in timecode seconds and frames, with minutes and hours where there are any.
 *
 * @example durationText(754, rational(24)) // "31 s 10 f"
 */
export function durationText(frames: number, rate: FrameRate): string {
  const base = nominalRate(rate);
  const seconds = Math.floor(frames / base);
  const parts = [withUnit(String(seconds % 60), "s"), withUnit(String(frames % base), "f")];
  if (seconds >= 60) parts.unshift(withUnit(String(Math.floor(seconds / 60) % 60), "min"));
  if (seconds >= 3600) parts.unshift(withUnit(String(Math.floor(seconds / 3600)), "h"));
  return parts.join(" ");
}

/** Minutes and seconds to the nearest second; minutes go on past an hour. @example minutesSeconds(78) // "1:18" */
export function minutesSeconds(seconds: number): string {
  const whole = Math.round(seconds);
  return `${Math.floor(whole / 60)}:${two(whole % 60)}`;
}

/** Seconds with one decimal: `2.1 s`. */
export function secondsText(seconds: number): string {
  return withUnit(fixed(seconds, 1), "s");
}

/** A length in hours and minutes, from minutes: `10:50`. */
export function hoursMinutes(minutes: number): string {
  const whole = Math.round(minutes);
  return `${Math.floor(whole / 60)}:${two(whole % 60)}`;
}

/**
 * An hour of the shooting day, from minutes after its midnight; `+1` for the calendar day after.
 *
 * @example dayMinutes(1480) // "00:40+1"
 */
export function dayMinutes(minutes: number): string {
  const day = Math.floor(minutes / 1440);
  const rest = minutes - day * 1440;
  return `${two(Math.floor(rest / 60))}:${two(rest % 60)}${day > 0 ? `+${day}` : ""}`;
}

/**
 * A date in full, from `2026-10-06`; text that is no date comes back as it is.
 *
 * @example dateLong("2026-10-06") // "Tuesday 6 October 2026"
 */
export function dateLong(date: string): string {
  const parts = dateParts(date);
  return parts ? `${WEEKDAYS[parts.weekday]} ${parts.day} ${parts.month} ${parts.year}` : date;
}

/** Day and month: `6 October`. */
export function dateShort(date: string): string {
  const parts = dateParts(date);
  return parts ? `${parts.day} ${parts.month}` : date;
}

/** Day, month and year without the day of the week: `6 October 2026`. */
export function dateMiddle(date: string): string {
  const parts = dateParts(date);
  return parts ? `${parts.day} ${parts.month} ${parts.year}` : date;
}

function dateParts(date: string): { day: number; month: string; year: string; weekday: number } | null {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(date);
  const month = MONTHS[Number(match?.[2]) - 1];
  if (!match || month === undefined) return null;
  // Midnight in Greenwich, so that the builder's own time zone plays no part.
  const weekday = new Date(`${date}T00:00:00Z`).getUTCDay();
  return Number.isNaN(weekday) ? null : { day: Number(match[3]), month, year: match[1] as string, weekday };
}

function two(n: number): string {
  return String(n).padStart(2, "0");
}
