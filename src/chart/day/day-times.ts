/** The day's clock times as minutes after the midnight it began at; past midnight they count on. */

import type { DaySummary, TakeSummary } from "../../summary/types.ts";
import { nominalRate } from "../../time/frame-rate.ts";

export interface Roll {
  readonly from: number;
  readonly to: number;
  readonly slate: string;
  readonly lensId: string | null;
  readonly lensWords: string | null;
}

export interface CameraDay {
  readonly camera: string;
  /** In order of time. */
  readonly rolls: readonly Roll[];
}

export interface DayTimes {
  readonly cameras: readonly CameraDay[];
  /** Every roll of the day in order of time. */
  readonly rolls: readonly Roll[];
  readonly from: number;
  readonly to: number;
}

/** Minutes of a timecode label; its frames are below what a day's clock shows. */
function clockMinutes(label: string): number {
  const [h = 0, m = 0, s = 0] = label.split(/[:;.]/).map(Number);
  return h * 60 + m + s / 60;
}

/**
 * Times of every take that has a timecode, by camera. Timecode is read as the time of day; a take before the day's call (or,
 * without one, before the first take in shooting order) was shot after midnight. `null` where neither takes nor hours have a time.
 */
export function dayTimes(day: DaySummary): DayTimes | null {
  const record = day.day.record;
  const timed = day.takes.filter((t) => t.timecodeIn !== null && t.take.durationFrames > 0 && !t.take.duplicate);
  const begin = record.call ?? (timed[0]?.timecodeIn ? clockMinutes(timed[0].timecodeIn) : 0);
  const byCamera = new Map<string, Roll[]>();
  for (const t of timed) {
    const list = byCamera.get(t.take.camera) ?? [];
    list.push(rollOf(t, begin));
    byCamera.set(t.take.camera, list);
  }
  const cameras = [...byCamera]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([camera, rolls]) => ({ camera, rolls: rolls.sort((a, b) => a.from - b.from || a.to - b.to) }));
  const rolls = cameras.flatMap((c) => c.rolls).sort((a, b) => a.from - b.from);
  const hours = [record.call, record.firstShot, record.firstAfterMeal, record.wrap, ...record.meals.flatMap((m) => [m.out, m.in])];
  const all = [...hours.filter((m) => m !== null), ...rolls.flatMap((r) => [r.from, r.to])];
  if (all.length === 0) return null;
  const from = Math.floor(Math.min(...all) / 60) * 60;
  return { cameras, rolls, from, to: Math.max(from + 60, Math.ceil(Math.max(...all) / 60) * 60) };
}

function rollOf(t: TakeSummary, begin: number): Roll {
  const start = clockMinutes(t.timecodeIn ?? "");
  const from = start < Math.floor(begin) ? start + 1440 : start;
  const { lens, lensId } = t.take;
  const seconds = t.take.durationFrames / nominalRate(t.take.rate);
  return { from, to: from + seconds / 60, slate: t.take.slate, lensId, lensWords: lens === null ? lensId : lensWords(lens) };
}

/** "35 mm", "28\u201380 mm", or the lens's id where the kit has no focal length. */
function lensWords(lens: NonNullable<TakeSummary["take"]["lens"]>): string {
  const length =
    lens.kind === "zoom" ? (lens.focalMinMm === null ? null : `${lens.focalMinMm}\u2013${lens.focalMaxMm}`) : lens.focalMm;
  return length === null ? lens.id : `${length} mm`;
}

/** A lens on a camera: from the first roll that used it to the last before another lens served. */
export interface LensOn {
  readonly from: number;
  readonly to: number;
  readonly words: string;
}

/** Lenses in turn. What happened between two rolls is not known, so a lens is drawn only from roll to roll. */
export function lensesOn(rolls: readonly Roll[]): readonly LensOn[] {
  const found: (LensOn & { readonly id: string | null })[] = [];
  for (const roll of rolls) {
    const before = found.at(-1);
    if (before !== undefined && before.id === roll.lensId) {
      found[found.length - 1] = { ...before, to: Math.max(before.to, roll.to) };
    } else found.push({ from: roll.from, to: roll.to, id: roll.lensId, words: roll.lensWords ?? "lens not recorded" });
  }
  return found;
}

/** Slates in the order they came up, each once a run. */
export function slateStarts(rolls: readonly Roll[]): readonly { readonly at: number; readonly slate: string }[] {
  const starts: { at: number; slate: string }[] = [];
  const seen = new Set<string>();
  for (const roll of rolls) {
    if (seen.has(roll.slate)) continue;
    seen.add(roll.slate);
    starts.push({ at: roll.from, slate: roll.slate });
  }
  return starts;
}
