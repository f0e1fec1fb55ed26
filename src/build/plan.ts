/** Which days are built, and why. Pure: what is on disk comes in as facts. */

import { sha256 } from "../core/hash.ts";
import { canonicalJson } from "../core/stable-json.ts";
import type { VfxOptions } from "../export/vfx/options.ts";
import type { Reader } from "../pdf/readers.ts";

/** An input file with the hash of its bytes; `file` is relative to the show folder. */
export interface InputFile {
  readonly file: string;
  readonly sha256: string;
}

/** A shooting day as its neighbours' pages name it. */
export interface DayId {
  readonly date: string;
  readonly day: number | null;
}

/** Everything the outputs of a day depend on, and nothing else. */
export interface DayFacts {
  readonly toolVersion: string;
  /** One hash over the program's own files: templates, client assets and code. */
  readonly programHash: string;
  readonly showFiles: readonly InputFile[];
  readonly dayFiles: readonly InputFile[];
  readonly previous: DayId | null;
  readonly next: DayId | null;
  /** What the pack holds for VFX. */
  readonly vfx?: VfxOptions;
  /** Readers that get a PDF of their own, in the order of `READERS`; absent for none. */
  readonly pdf?: readonly Reader[];
}

/** Key of a day: equal facts in any order of the files give an equal key. */
export function dayKey(facts: DayFacts): string {
  return sha256(canonicalJson({ ...facts, showFiles: inOrder(facts.showFiles), dayFiles: inOrder(facts.dayFiles) }));
}

/** Id of what a report was made from: the tool's version and the input, not the program's own files. Twelve hexadecimal digits. */
export function buildId(facts: Omit<DayFacts, "programHash">): string {
  const { toolVersion, showFiles, dayFiles, previous, next } = facts;
  const text = canonicalJson({ toolVersion, showFiles: inOrder(showFiles), dayFiles: inOrder(dayFiles), previous, next });
  return sha256(text).slice(0, 12);
}

export interface StoredFacts {
  readonly key: string;
  readonly facts: DayFacts;
}

export interface OutputState {
  /** A build was stopped while it put this day's files in place. */
  readonly interrupted: boolean;
  /** An output that the last build wrote and that is gone or has another size; `null` when all are there. */
  readonly missing: string | null;
}

export interface DayPlan {
  readonly run: boolean;
  /** Why it runs, such as "notes.csv changed"; "unchanged" when it does not. */
  readonly reason: string;
}

/**
 * Decides about one day.
 * @param stored what the last build left; `null` when this day was never built here
 */
export function planDay(facts: DayFacts, stored: StoredFacts | null, state: OutputState, force: boolean): DayPlan {
  const { interrupted, missing } = state;
  if (interrupted) return { run: true, reason: "the last build did not end" };
  if (stored === null) return { run: true, reason: "new" };
  if (stored.key !== dayKey(facts)) return { run: true, reason: whatChanged(stored.facts, facts) };
  if (missing !== null) return { run: true, reason: `output missing: ${missing}` };
  if (force) return { run: true, reason: "forced" };
  return { run: false, reason: "unchanged" };
}

/** The first thing that differs between two builds of a day, in words. */
export function whatChanged(before: DayFacts, now: DayFacts): string {
  const files = [...changedFiles(before.dayFiles, now.dayFiles), ...changedFiles(before.showFiles, now.showFiles)];
  const [first] = files;
  if (first !== undefined) return files.length === 1 ? first : `${first} and ${files.length - 1} more`;
  if (before.toolVersion !== now.toolVersion) return `made by version ${before.toolVersion}, this is ${now.toolVersion}`;
  if (before.programHash !== now.programHash) return "the program changed";
  if (canonicalJson(before.vfx ?? null) !== canonicalJson(now.vfx ?? null)) return "other files for VFX are asked for";
  if (canonicalJson(before.pdf ?? null) !== canonicalJson(now.pdf ?? null)) return "PDFs for other readers are asked for";
  if (!sameDay(before.previous, now.previous)) return "the day before changed its number or date";
  if (!sameDay(before.next, now.next)) return "the day after changed its number or date";
  return "the last build did not end";
}

function changedFiles(before: readonly InputFile[], now: readonly InputFile[]): string[] {
  const old = new Map(before.map((f) => [f.file, f.sha256]));
  const current = new Map(now.map((f) => [f.file, f.sha256]));
  const changed = [...current].flatMap(([file, hash]) => {
    const was = old.get(file);
    return was === hash ? [] : [`${shortName(file)} ${was === undefined ? "is new" : "changed"}`];
  });
  const gone = [...old.keys()].filter((file) => !current.has(file)).map((file) => `${shortName(file)} is gone`);
  return [...changed, ...gone];
}

/** Name inside the day's folder: the line already says the day. */
function shortName(file: string): string {
  return file.replace(/^days\/[^/]+\//, "");
}

function sameDay(a: DayId | null, b: DayId | null): boolean {
  return a?.date === b?.date && a?.day === b?.day;
}

export function inOrder(files: readonly InputFile[]): readonly InputFile[] {
  return [...files].sort((a, b) => (a.file < b.file ? -1 : a.file > b.file ? 1 : 0));
}
