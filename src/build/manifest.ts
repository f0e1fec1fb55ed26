/**
 * What a build leaves for the next one, in `<out>/.daybook/`: one file a day and one for the show-wide pages, so that a
 * day's record is written when the day is done and a broken record costs one day.
 */
import { compareText, type Finding } from "../core/finding.ts";
import { stableJson } from "../core/stable-json.ts";
import type { DayDigest } from "../summary/digest-types.ts";
import type { OutFolder } from "./effects.ts";
import type { DayFacts } from "./plan.ts";
import type { StoredChange } from "./revisions.ts";

export const RECORDS = ".daybook";
const DAY_SCHEMA = "lens-daybook/built-day/1";
const SHOW_SCHEMA = "lens-daybook/built-show/1";

/** A file that a build wrote; `file` is relative to the output folder. */
export interface Output {
  readonly file: string;
  readonly bytes: number;
  readonly sha256: string;
}

export interface StoredDay {
  readonly schema: typeof DAY_SCHEMA;
  readonly date: string;
  readonly key: string;
  readonly facts: DayFacts;
  readonly outputs: readonly Output[];
  readonly findings: readonly Finding[];
  readonly digest: DayDigest;
  /** Why the day's content was not what it was before. */
  readonly reason: string;
}

export interface StoredShow {
  readonly schema: typeof SHOW_SCHEMA;
  readonly key: string;
  readonly outputs: readonly Output[];
  /** `null` in the record of a program that did not compare. */
  readonly change: StoredChange | null;
}

const dayFile = (date: string) => `${RECORDS}/days/${date}.json`;
const SHOW_FILE = `${RECORDS}/show.json`;
const openListsFile = (date: string) => `${RECORDS}/open-lists/${date}.json`;
const pendingFile = (unit: string) => `${RECORDS}/pending/${unit}.json`;

/** Record of a day; `null` when there is none or it cannot be used (then the day is built again). */
export function readDayRecord(out: OutFolder, date: string): StoredDay | null {
  const stored = readJson(out, dayFile(date));
  if (!isRecord(stored) || stored.schema !== DAY_SCHEMA || stored.date !== date || !isRecord(stored.digest)) return null;
  const reason = typeof stored.reason === "string" ? stored.reason : "new";
  return usable({ ...stored, reason } as unknown as StoredDay);
}

export function readShowRecord(out: OutFolder): StoredShow | null {
  const stored = readJson(out, SHOW_FILE);
  if (!isRecord(stored) || stored.schema !== SHOW_SCHEMA) return null;
  return usable({ ...stored, change: isChange(stored.change) ? stored.change : null } as unknown as StoredShow);
}

/** Dates that a build left a record of, finished or not, in order. */
export function recordedDates(out: OutFolder): readonly string[] {
  const names = [...out.files(`${RECORDS}/days`), ...out.files(`${RECORDS}/pending`)].map((file) =>
    file.slice(file.lastIndexOf("/") + 1),
  );
  const dates = names.filter((name) => /^\d{4}-\d{2}-\d{2}\.json$/.test(name)).map((name) => name.slice(0, -".json".length));
  return [...new Set(dates)].sort(compareText);
}

export function writeDayRecord(out: OutFolder, day: Omit<StoredDay, "schema">): void {
  writeInOneStep(out, dayFile(day.date), stableJson({ schema: DAY_SCHEMA, ...day }));
}

export function writeShowRecord(out: OutFolder, show: Omit<StoredShow, "schema">): void {
  writeInOneStep(out, SHOW_FILE, stableJson({ schema: SHOW_SCHEMA, ...show }));
}

export function removeDayRecord(out: OutFolder, date: string): void {
  out.removeFile(dayFile(date));
}

/** Files that a build was about to put in place when it was stopped: they are ours although no record lists them. */
export function readPending(out: OutFolder, unit: string): readonly string[] {
  const stored = readJson(out, pendingFile(unit));
  return Array.isArray(stored) ? stored.filter(isSafeName) : [];
}

/** Whether a build was stopped between placing the files of a unit (a date or `show`) and writing its record. */
export function isPending(out: OutFolder, unit: string): boolean {
  return out.size(pendingFile(unit)) !== null;
}

export function writePending(out: OutFolder, unit: string, files: readonly string[]): void {
  writeInOneStep(out, pendingFile(unit), stableJson(files));
}

export function removePending(out: OutFolder, unit: string): void {
  out.removeFile(pendingFile(unit));
}

/**
 * Hash lists of a day's pack that were not issued, by their c4: the next build may replace them. A list that stands in no
 * record counts as issued, so that a lost record never costs a list that somebody may hold.
 */
export function readOpenLists(out: OutFolder, date: string): ReadonlySet<string> {
  const stored = readJson(out, openListsFile(date));
  return new Set(Array.isArray(stored) ? stored.filter((c4) => typeof c4 === "string") : []);
}

export function writeOpenLists(out: OutFolder, date: string, lists: readonly string[]): void {
  if (lists.length > 0) writeInOneStep(out, openListsFile(date), stableJson(lists));
  else out.removeFile(openListsFile(date));
}

/** First output that is gone or has another size; `null` when all are there. */
export function missingOutput(out: OutFolder, outputs: readonly Output[]): string | null {
  return outputs.find((o) => out.size(o.file) !== o.bytes)?.file ?? null;
}

function writeInOneStep(out: OutFolder, file: string, text: string): void {
  out.write(`${file}.new`, text);
  out.move(`${file}.new`, file);
}

function usable<T extends { readonly key: string; readonly outputs: readonly Output[] }>(stored: T): T | null {
  if (typeof stored.key !== "string" || !Array.isArray(stored.outputs)) return null;
  return stored.outputs.every((o) => isRecord(o) && isSafeName(o.file) && typeof o.bytes === "number") ? stored : null;
}

function isChange(value: unknown): boolean {
  return isRecord(value) && Array.isArray(value.days) && isRecord(value.lastChange) && Array.isArray(value.lastChange.days);
}

/** Records are files like any other and may have been changed: a name must stay inside the output folder. */
function isSafeName(name: unknown): name is string {
  return typeof name === "string" && name !== "" && !/^[/\\]|^[A-Za-z]:|\\/.test(name) && !name.split("/").includes("..");
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return value !== null && typeof value === "object" && !Array.isArray(value);
}

function readJson(out: OutFolder, file: string): unknown {
  const bytes = out.read(file);
  if (bytes === null) return null;
  try {
    return JSON.parse(new TextDecoder().decode(bytes));
  } catch {
    return null;
  }
}
