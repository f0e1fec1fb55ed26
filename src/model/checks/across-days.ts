/** Rules across days: takes and clips that two days have, rolls in sequence over the nights. */
import { compareText, type Finding, type Place, sortFindings } from "../../core/finding.ts";
import { acceptInShow, type ShowAcceptance } from "../../core/findings/accepted.ts";
import { CHECK } from "../../core/findings/check.ts";
import { FINDINGS_PER_CODE_AND_FILE } from "../../core/findings/collect.ts";
import { findingOf } from "../../core/findings/kind.ts";
import { limitFindings } from "../../core/findings/limit.ts";
import { sameName } from "../address.ts";
import type { Tell } from "./context.ts";

/** Cells of a take's note that rules across days point at. */
export const NOTED_CELLS = ["take", "clip", "roll"] as const;

/** Where a take was noted. */
export interface NotedPlace {
  readonly file: string;
  readonly line: number | null;
  /** Column of each cell that the note has. */
  readonly columns: Readonly<Partial<Record<(typeof NOTED_CELLS)[number], number | null>>>;
}

/** What a day leaves behind about a take, as far as these rules need it. */
export interface NotedTake {
  readonly address: string;
  readonly slate: string;
  readonly take: string;
  readonly camera: string;
  readonly roll: string | null;
  readonly clip: string | null;
  /** Absent for a take that only a log knows, and in what an earlier version left behind. */
  readonly noted: NotedPlace | null;
}

export interface NotedDay {
  readonly date: string;
  readonly day: number | null;
  readonly record: { readonly unit: string | null };
  /** In shooting order. */
  readonly takes: readonly NotedTake[];
}

/** One take with its day. */
interface Entry {
  readonly day: NotedDay;
  readonly take: NotedTake;
}

/**
 * All findings that need more than one day to see, in order of file and line, with the reasons of those that show.yaml accepts. They stand at the
 * later day. The result is the same whichever of the days was read last.
 * @param days every day of the show, in any order
 * @param most findings of one code in one file that are listed one by one (0: all)
 */
export function checkAcrossDays(
  days: readonly NotedDay[],
  accepted: readonly ShowAcceptance[],
  most = FINDINGS_PER_CODE_AND_FILE,
): Finding[] {
  const found: Finding[] = [];
  const tell: Tell = (kind, details) => found.push(findingOf(kind, details));
  const inOrder = [...days].sort((a, b) => compareText(a.date, b.date));
  const units = new Map<string, Entry[]>();
  for (const day of inOrder) {
    const unit = sameName(day.record.unit ?? "");
    const entries = units.get(unit) ?? [];
    for (const take of day.takes) entries.push({ day, take });
    units.set(unit, entries);
  }
  for (const entries of units.values()) {
    takesOnTwoDays(entries, tell);
    clipsOnTwoDays(entries, tell);
    rollsOverNight(entries, tell);
  }
  return sortFindings(limitFindings(sortFindings(acceptInShow(found, accepted, "days")), most));
}

/** One finding a slate and day: a slate that was begun again has all its first takes twice. */
function takesOnTwoDays(entries: readonly Entry[], tell: Tell): void {
  const first = new Map<string, Entry>();
  const said = new Set<string>();
  for (const entry of entries) {
    const { day, take } = entry;
    const key = [take.camera, take.slate, take.take].map(sameName).join("\n");
    const other = first.get(key);
    if (other === undefined) first.set(key, entry);
    if (other === undefined || other.day.date === day.date) continue;
    const once = `${day.date}\n${sameName(take.slate)}`;
    if (said.has(once)) continue;
    said.add(once);
    tell(CHECK.slateOnTwoDays, {
      place: placeOf(entry, "take"),
      field: "take",
      message: `Slate ${take.slate}, take ${take.take}, camera ${take.camera} is noted on ${dayWords(other.day)} too.`,
      hint: `Correct the slate or the take number of one of them (the other is ${lineWords(other)}). A slate that is begun again gets a new letter, or goes on with the next take.`,
      take: take.address,
    });
  }
}

function clipsOnTwoDays(entries: readonly Entry[], tell: Tell): void {
  const first = new Map<string, Entry>();
  for (const entry of entries) {
    const { day, take } = entry;
    if (take.clip === null) continue;
    const key = sameName(take.clip);
    const other = first.get(key);
    if (other === undefined) first.set(key, entry);
    if (other === undefined || other.day.date === day.date) continue;
    tell(CHECK.clipOnTwoDays, {
      place: placeOf(entry, "clip"),
      field: "clip",
      message: `Clip ${take.clip} is noted on ${dayWords(other.day)} too, for ${other.take.address}.`,
      hint: `Correct the clip of one of them (the other is ${lineWords(other)}). If the camera's counter was set back, rename the clips before they meet in one project.`,
      take: take.address,
    });
  }
}

interface LastRoll {
  readonly roll: string;
  readonly number: number;
  readonly day: NotedDay;
}

/** A021 of one day is followed by A021 or A022 of the next; within a day the day's own rule looks. */
function rollsOverNight(entries: readonly Entry[], tell: Tell): void {
  const highest = new Map<string, LastRoll>();
  const said = new Set<string>();
  let today: Map<string, LastRoll> = new Map();
  let date: string | null = null;
  for (const entry of entries) {
    const { day, take } = entry;
    if (day.date !== date) {
      for (const [series, roll] of today) highest.set(series, roll);
      today = new Map();
      date = day.date;
    }
    const parts = /^(.*?)(\d{1,9})$/.exec(take.roll?.trim() ?? "");
    if (take.roll === null || parts === null) continue;
    const series = `${sameName(take.camera)} ${sameName(parts[1] as string)}`;
    const number = Number(parts[2]);
    const before = highest.get(series);
    const last = today.get(series);
    if (last === undefined || number > last.number) today.set(series, { roll: take.roll, number, day });
    if (before === undefined || said.has(`${day.date} ${series} ${number}`)) continue;
    said.add(`${day.date} ${series} ${number}`);
    if (number < before.number) {
      tell(CHECK.rollGoesBack, {
        place: placeOf(entry, "roll"),
        field: "roll",
        message: `Roll ${take.roll} on camera ${take.camera} comes after ${before.roll} of ${dayWords(before.day)}.`,
        hint: "Correct the roll. If two cards have one number, give one of them another before they meet in one project.",
        take: take.address,
      });
    } else if (last === undefined && number > before.number + 1) {
      const left = number - before.number - 1;
      tell(CHECK.rollSkippedOverNight, {
        place: placeOf(entry, "roll"),
        field: "roll",
        message: `Roll ${take.roll} on camera ${take.camera} follows ${before.roll} of ${dayWords(before.day)}; ${left === 1 ? "one roll is" : `${left} rolls are`} left out.`,
        hint: "Look whether a roll was not noted. If its number was never used, nothing needs to be done.",
        take: take.address,
      });
    }
  }
}

function placeOf({ take, day }: Entry, cell: (typeof NOTED_CELLS)[number]): Place {
  const noted = take.noted;
  if (noted === null) return { file: `days/${day.date}`, line: null, column: null };
  return { file: noted.file, line: noted.line, column: noted.columns[cell] ?? null };
}

function dayWords({ date, day }: NotedDay): string {
  return day === null ? date : `day ${day} (${date})`;
}

function lineWords({ take, day }: Entry): string {
  const noted = take.noted;
  return noted?.line == null ? `on ${day.date}` : `${noted.file}, line ${noted.line}`;
}
