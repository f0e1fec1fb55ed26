/** Builds a show: a day is the unit of work, and the last good report stays readable throughout. */
import { countFindings, type Finding, type FindingCounts, sortFindings } from "../core/finding.ts";
import { findingOf } from "../core/findings/kind.ts";
import { OUT } from "../core/findings/out.ts";
import { nearestNames } from "../core/nearest-name.ts";
import type { RowCounts } from "../model/types.ts";
import type { DayDigest } from "../summary/digest-types.ts";
import { buildOneDay, type DayOutcome, removeDay, revisionOf } from "./build-one-day.ts";
import { buildShowPages } from "./build-show-pages.ts";
import type { BuildEffects, DayReport, OutFolder } from "./effects.ts";
import { outProblem } from "./file-problem.ts";
import { linkFindings } from "./link-findings.ts";
import type { BusyLock, HeldLock } from "./lock.ts";
import { RECORDS, readDayRecord, recordedDates, type StoredDay } from "./manifest.ts";
import type { Pipeline } from "./pipeline.ts";
import type { DayId } from "./plan.ts";
import { addRows, NO_ROWS } from "./row-sums.ts";
import type { BuildOptions, Fault, Session } from "./session.ts";

export interface BuildResult {
  /** `refused`: nothing could be built at all, `problem` or a finding says why. */
  readonly status: "done" | "refused";
  /** What stands in the way, when it is the use of the command and no mistake in a file. */
  readonly problem: string | null;
  /** All findings in order of file and line, those of unchanged days among them. */
  readonly findings: readonly Finding[];
  readonly counts: FindingCounts;
  readonly days: readonly DayReport[];
  readonly takes: number;
  /** Data rows of the lens logs of all days in the report: read = used + unmatched + rejected. */
  readonly rows: RowCounts;
  readonly faults: readonly Fault[];
  readonly milliseconds: number;
}

/**
 * Builds what has to be built of a show and says again what was found on the days that are unchanged. Never throws for bad
 * input or for a disk that refuses: those are findings. A fault of the program on one day is in `faults`; the other days are built.
 */
export async function buildShow(options: BuildOptions, effects: BuildEffects, pipeline: Pipeline): Promise<BuildResult> {
  const start = effects.now();
  const { input: show, findings: showFindings } = pipeline.readShow(effects.show);
  const result = (parts: Partial<BuildResult>, findings: readonly Finding[]): BuildResult => ({
    status: "done",
    problem: null,
    days: [],
    takes: 0,
    rows: NO_ROWS,
    faults: [],
    ...parts,
    findings: sortFindings(findings),
    counts: countFindings(findings),
    milliseconds: effects.now() - start,
  });

  if (show === null) return result({ status: "refused" }, showFindings);
  const problem = unknownDate(options.dates, show.dates) ?? strangeFolder(options, effects);
  if (problem !== null) return result({ status: "refused", problem }, showFindings);

  const session: Session = { options, effects, pipeline, show, showFindings };
  const findings = [...showFindings];
  const outcomes: DayOutcome[] = [];
  let lock: HeldLock | BusyLock = NOBODY_ELSE;
  try {
    lock = effects.lock?.() ?? NOBODY_ELSE;
    if ("by" in lock) return result({ status: "refused" }, [...findings, inUse(effects.out.path, lock)]);
    sweep(effects.out);
    effects.out.write(`${RECORDS}/README.txt`, RECORDS_TEXT);
    outcomes.push(...(await buildDays(session)));
    findings.push(...outcomes.flatMap((o) => o.findings));
    findings.push(...linkFindings(effects.linksLeftOut(), findings));
    const digests = outcomes.flatMap((o) => (o.digest === null ? [] : [o.digest]));
    const across = pipeline.checkDays(show, digests);
    findings.push(...across.filter((found) => options.dates.length === 0 || isOfDays(found, options.dates)));
    const revisions = outcomes.flatMap((o) => (o.digest === null || o.revision === null ? [] : [o.revision]));
    const fault = await buildShowPages(session, digests, revisions, [...showFindings, ...across]);
    return result(
      {
        days: outcomes.map((o) => o.report).filter((report) => isSelected(options, report)),
        takes: takesOf(digests),
        rows: digests.reduce((sum, digest) => addRows(sum, digest.rows), NO_ROWS),
        faults: [...outcomes.flatMap((o) => o.faults), ...(fault === null ? [] : [fault])],
      },
      findings,
    );
  } catch (error) {
    const problem = outProblem(effects.out.path, error);
    if (problem === null) throw error;
    sweepQuietly(effects.out);
    return result({ status: "refused", days: outcomes.map((o) => o.report) }, [...findings, notWritten(problem)]);
  } finally {
    if ("release" in lock) lock.release();
  }
}

async function buildDays(session: Session): Promise<readonly DayOutcome[]> {
  const { options, effects, pipeline, show } = session;
  const ids = show.dates.map((date): DayId => ({ date, day: pipeline.dayNumber(effects.show, date) }));
  const outcomes: DayOutcome[] = [];
  for (const [index, id] of ids.entries()) {
    const neighbours = { previous: ids[index - 1] ?? null, id, next: ids[index + 1] ?? null };
    if (options.dates.length > 0 && !options.dates.includes(id.date)) {
      const kept = readDayRecord(effects.out, id.date);
      // a day that another program made is made anew, asked for or not: a report holds the pages of one program
      if (kept === null || kept.facts.programHash === options.programHash) {
        if (kept !== null) outcomes.push(keptDay(id, kept));
        continue;
      }
    }
    const progress = (stage: string) => effects.log.progress(id.date, index, ids.length, stage);
    const outcome = await buildOneDay(session, neighbours, progress);
    effects.log.day(outcome.report);
    outcomes.push(outcome);
  }
  for (const date of recordedDates(effects.out)) {
    if (show.dates.includes(date)) continue;
    const outcome = removeDay(session, date);
    effects.log.day(outcome.report);
    outcomes.push(outcome);
  }
  return outcomes;
}

/** A day that was not asked for: its pages stay, and the show-wide pages go on naming it. */
function keptDay(id: DayId, stored: StoredDay): DayOutcome {
  const { digest } = stored;
  const report = { date: id.date, day: id.day, state: "unchanged", reason: "not asked for", takes: digest.takes.length } as const;
  return { report: { ...report, milliseconds: 0, stages: [] }, digest, findings: [], faults: [], revision: revisionOf(id, stored) };
}

function isSelected(options: BuildOptions, report: DayReport): boolean {
  return options.dates.length === 0 || options.dates.includes(report.date);
}

/** Whether a finding stands in a file of these days. */
function isOfDays(found: Finding, dates: readonly string[]): boolean {
  return dates.some((date) => found.file?.startsWith(`days/${date}/`) === true);
}

function takesOf(digests: readonly DayDigest[]): number {
  return digests.reduce((sum, digest) => sum + digest.takes.length, 0);
}

function unknownDate(asked: readonly string[], known: readonly string[]): string | null {
  const date = asked.find((d) => !known.includes(d));
  if (date === undefined) return null;
  const near = nearestNames(date, known);
  const says = near.length > 0 ? `Did you mean ${near.join(" or ")}?` : `The show has ${known.join(", ") || "no day"}.`;
  return `no day "${date}" in the show. ${says}`;
}

/** The output folder must be empty, absent, or a report of ours; anything else may be somebody's work. */
function strangeFolder(options: BuildOptions, effects: BuildEffects): string | null {
  const all = effects.out.topNames() ?? [];
  const names = all.filter((name) => !name.startsWith("."));
  if (names.length === 0 || all.includes(RECORDS) || options.force) return null;
  return (
    `${effects.out.path} holds other files (${names.slice(0, 3).join(", ")}${names.length > 3 ? ", ..." : ""}) and no report. ` +
    "Name another folder with --out, or use --force to write the report beside them."
  );
}

/** Removes what an interrupted build left half done. */
function sweep(out: OutFolder): void {
  for (const name of out.topNames() ?? []) if (/^\.tmp-(\d{4}-\d{2}-\d{2}|show)$/.test(name)) out.removeFolder(name);
}

/** After a disk refused: what was made in vain takes no room. A disk that refuses this too is swept by the next build. */
function sweepQuietly(out: OutFolder): void {
  try {
    sweep(out);
  } catch {}
}

function notWritten(message: string): Finding {
  return findingOf(OUT.notWritten, {
    message,
    hint: "Mend the cause and run the command again, or write somewhere else with --out.",
  });
}

const NOBODY_ELSE: HeldLock = { release: () => {} };

function inUse(path: string, { by, file }: BusyLock): Finding {
  return findingOf(OUT.inUse, {
    message: `${path} is in use by ${by}`,
    hint: `Wait until that build has ended and run the command again. If it is certain that none runs, delete ${file}.`,
  });
}

const RECORDS_TEXT =
  "What the last build left for the next one: which files it wrote, from what, and what it found.\n" +
  "Nobody needs this folder to read the report. Without it the next build makes every day again.\n";
