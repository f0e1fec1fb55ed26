/** What a change of the input leads to while a show is watched: a build, or the last good pages stay and say that they are old. */
import { countFindings, type Finding } from "../core/finding.ts";
import { checkShow } from "./check.ts";
import type { OutFolder } from "./effects.ts";
import type { BuildResult } from "./run.ts";
import type { ShowFiles } from "./show-files.ts";
import { markStale } from "./stale.ts";

/** Goes on from one change to the next. */
export interface WatchState {
  /** Errors of the pages in place, by date; under `""` those of show.yaml and the kit. */
  readonly errors: ReadonlyMap<string, number>;
  readonly findings: readonly Finding[];
  /** Files that changed since their pages were made. */
  readonly behind: readonly string[];
}

export type AfterChange =
  /** `findings`: those that were not there before. */
  | { readonly kind: "built"; readonly result: BuildResult; readonly findings: readonly Finding[]; readonly state: WatchState }
  /** `findings`: the errors that were not there before. */
  | { readonly kind: "kept"; readonly findings: readonly Finding[]; readonly state: WatchState };

/** The state after a build; a day that failed, or a show that was refused, keeps the errors of the pages in place. */
export function stateAfter(result: BuildResult, before: WatchState | null): WatchState {
  if (result.status === "refused") return before ?? { errors: new Map(), findings: [], behind: [] };
  const errors = new Map([...errorsByDate(result.findings)]);
  for (const { date } of result.faults) if (date !== null) errors.set(date, before?.errors.get(date) ?? 0);
  return { errors, findings: result.findings, behind: [] };
}

/**
 * Reads what changed. When it has errors that the pages in place do not have, those pages stay, with a strip that says so; else the show is built,
 * which makes the changed days only. Pages of a day that the build could not make stay in the same way.
 * @param files names relative to the show folder
 */
export async function afterChange(
  files: readonly string[],
  state: WatchState,
  show: ShowFiles,
  out: OutFolder,
  build: () => Promise<BuildResult>,
): Promise<AfterChange> {
  const behind = [...new Set([...state.behind, ...files])];
  const dates = datesOf(behind);
  const isWide = dates.includes("");
  const present = new Set((show.list("days") ?? []).map((entry) => entry.name));
  const check = checkShow(show, isWide ? [] : dates.filter((date) => present.has(date)));
  const now = errorsByDate(check.findings);
  const worse = (isWide ? [...now.keys()] : dates).filter(
    (date) => hasPages(out, date) && (now.get(date) ?? 0) > (state.errors.get(date) ?? 0),
  );
  if ((!check.usable && hasPages(out, "")) || worse.length > 0) {
    for (const date of isWide ? ["", ...present] : dates) mark(out, date, behind);
    const errors = check.findings.filter((f) => f.severity === "error" && f.accepted === null);
    return { kind: "kept", findings: notIn(errors, state.findings), state: { ...state, behind } };
  }
  const result = await build();
  const stale = result.status === "refused" ? dates : result.faults.map(({ date }) => date ?? "");
  for (const date of stale) mark(out, date, behind);
  const findings = notIn(result.findings, state.findings);
  return { kind: "built", result, findings, state: { ...stateAfter(result, state), behind: stale.length === 0 ? [] : behind } };
}

function mark(out: OutFolder, date: string, behind: readonly string[]): void {
  const own = behind.filter((file) => dateOf(file) === date || dateOf(file) === "");
  if (hasPages(out, date)) markStale(out, date === "" ? null : date, own.length === 0 ? behind : own);
}

function hasPages(out: OutFolder, date: string): boolean {
  return out.size(date === "" ? "index.html" : `days/${date}/index.html`) !== null;
}

function datesOf(files: readonly string[]): readonly string[] {
  return [...new Set(files.map(dateOf))];
}

/** Date of the day that a file belongs to; empty for show.yaml and the kit. */
function dateOf(file: string): string {
  return /^days\/(\d{4}-\d{2}-\d{2})(?:\/|$)/.exec(file)?.[1] ?? "";
}

function errorsByDate(findings: readonly Finding[]): ReadonlyMap<string, number> {
  const byDate = new Map<string, Finding[]>();
  for (const found of findings) {
    const date = dateOf(found.file ?? "");
    byDate.set(date, [...(byDate.get(date) ?? []), found]);
  }
  return new Map([...byDate].map(([date, own]) => [date, countFindings(own).error]));
}

function notIn(findings: readonly Finding[], before: readonly Finding[]): readonly Finding[] {
  const known = new Set(before.map(keyOf));
  return findings.filter((found) => !known.has(keyOf(found)));
}

function keyOf({ code, file, line, column, message }: Finding): string {
  return [code, file, line, column, message].join("\n");
}
