/** One day: plan, make, publish, record. */
import type { Finding } from "../core/finding.ts";
import { findingOf } from "../core/findings/kind.ts";
import { OUT } from "../core/findings/out.ts";
import { DEFAULT_VFX } from "../export/vfx/options.ts";
import { READERS, type Reader } from "../pdf/readers.ts";
import type { DayDigest } from "../summary/digest-types.ts";
import type { DayReport } from "./effects.ts";
import { outProblem } from "./file-problem.ts";
import { inputHashes } from "./input-hashes.ts";
import {
  isPending,
  missingOutput,
  readDayRecord,
  readPending,
  removeDayRecord,
  removePending,
  type StoredDay,
  writeDayRecord,
  writeOpenLists,
} from "./manifest.ts";
import { settleOpenLists } from "./pack-history.ts";
import { buildId, type DayFacts, type DayId, dayKey, type InputFile, planDay } from "./plan.ts";
import { publish } from "./publish.ts";
import { contentOf, type DayRevision, packIdOf, reasonOf } from "./revisions.ts";
import type { Fault, Session } from "./session.ts";

export interface DayOutcome {
  readonly report: DayReport;
  /** What the show-wide pages say of the day; `null` when the report has no such day. */
  readonly digest: DayDigest | null;
  readonly findings: readonly Finding[];
  readonly faults: readonly Fault[];
  /** `null` when the report has no such day. */
  readonly revision: DayRevision | null;
}

export interface Neighbours {
  readonly previous: DayId | null;
  readonly id: DayId;
  readonly next: DayId | null;
}

/** Looks at a day and makes it anew where it has to be. A fault of the program is an outcome, and the pages in place stay; an output folder that cannot be written throws. */
export async function buildOneDay(session: Session, days: Neighbours, progress: (stage: string) => void): Promise<DayOutcome> {
  const { effects, options } = session;
  const { date, day } = days.id;
  const start = effects.now();
  progress("looking");
  const facts = factsOf(session, days);
  const stored = readDayRecord(effects.out, date);
  const missing = stored === null ? null : missingOutput(effects.out, stored.outputs);
  const plan = planDay(facts, stored, { interrupted: isPending(effects.out, date), missing }, options.force);
  const report = (parts: Partial<DayReport>): DayReport => ({
    date,
    day,
    state: "built",
    reason: plan.reason,
    takes: 0,
    stages: [],
    ...parts,
    milliseconds: effects.now() - start,
  });

  if (!plan.run && stored !== null) {
    const unchanged = report({ state: "unchanged", takes: stored.digest.takes.length });
    return {
      report: unchanged,
      digest: stored.digest,
      findings: stored.findings,
      faults: [],
      revision: revisionOf(days.id, stored),
    };
  }
  try {
    return await make(session, days, facts, stored, progress, report);
  } catch (error) {
    if (outProblem(effects.out.path, error) !== null) throw error;
    effects.out.removeFolder(temporaryFolder(date));
    const failed = report({ state: "failed", takes: stored?.digest.takes.length ?? 0 });
    // what another program left behind may be of another shape
    const kept = stored?.facts.programHash === options.programHash ? stored : null;
    return {
      report: failed,
      digest: kept?.digest ?? null,
      findings: [faultFinding(date, stored)],
      faults: [{ date, error }],
      revision: kept === null ? null : revisionOf(days.id, kept),
    };
  }
}

async function make(
  session: Session,
  days: Neighbours,
  facts: DayFacts,
  stored: StoredDay | null,
  progress: (stage: string) => void,
  report: (parts: Partial<DayReport>) => DayReport,
): Promise<DayOutcome> {
  const { effects, options, pipeline, show } = session;
  const { date } = days.id;
  const into = temporaryFolder(date);
  const watch = stopwatch(effects.now, progress);
  effects.out.removeFolder(into);
  const work = await pipeline.makeDay({
    folder: effects.show,
    show,
    showFindings: session.showFindings,
    date,
    days: [days.previous, days.id, days.next].filter((d) => d !== null),
    tool: options.tool,
    buildId: buildId(facts),
    packId: packIdOf(facts),
    vfx: options.vfx ?? DEFAULT_VFX,
    pdf: readersOf(options.pdf),
    out: effects.out,
    into,
    stage: watch.stage,
    say: (text) => effects.log.say?.(`${date}  ${text}`),
    now: effects.now,
  });
  watch.stage("writing");
  const moved = changedMeanwhile(facts.dayFiles, work.files);
  const findings = moved === null ? work.findings : [...work.findings, movedFinding(moved)];
  const { outputs } = publish(effects.out, into, date, stored?.outputs ?? []);
  const key = moved === null ? dayKey(facts) : "unfinished";
  const reason = reasonOf(facts, stored);
  writeDayRecord(effects.out, { date, key, facts, outputs, findings: work.findings, digest: work.digest, reason });
  settleOpenLists(effects.out, date);
  removePending(effects.out, date);
  const made = report({ takes: work.digest.takes.length, stages: watch.end() });
  return { report: made, digest: work.digest, findings, faults: [], revision: revisionOf(days.id, { facts, reason }) };
}

/** A day as its record has it. */
export function revisionOf({ date, day }: DayId, { facts, reason }: Pick<StoredDay, "facts" | "reason">): DayRevision {
  return { date, day, content: contentOf(facts), packId: packIdOf(facts), reason };
}

/** Takes a day out of the report whose folder is gone. */
export function removeDay(session: Session, date: string): DayOutcome {
  const { out } = session.effects;
  const stored = readDayRecord(out, date);
  for (const file of new Set([...(stored?.outputs ?? []).map((o) => o.file), ...readPending(out, date)])) out.removeFile(file);
  removePending(out, date);
  removeDayRecord(out, date);
  writeOpenLists(out, date, []);
  const report = { date, day: stored?.digest.day ?? null, state: "removed", reason: "no longer in the show", takes: 0 } as const;
  const gone = findingOf(OUT.dayGone, {
    message: `day ${date} is no longer in the show folder and was taken out of the report`,
    hint: `If that is not meant, put days/${date}/ back and build again.`,
  });
  return { report: { ...report, milliseconds: 0, stages: [] }, digest: null, findings: [gone], faults: [], revision: null };
}

function factsOf(session: Session, days: Neighbours): DayFacts {
  const { effects, options, show } = session;
  const readers = readersOf(options.pdf);
  return {
    toolVersion: options.tool.version,
    programHash: options.programHash,
    showFiles: show.files.map(({ file, sha256 }) => ({ file, sha256 })),
    dayFiles: inputHashes(effects.show, `days/${days.id.date}`),
    previous: days.previous,
    next: days.next,
    vfx: options.vfx ?? DEFAULT_VFX,
    ...(readers.length === 0 ? {} : { pdf: readers }),
  };
}

/** In one order, each once, however they were asked for. */
function readersOf(asked: readonly Reader[] = []): readonly Reader[] {
  return READERS.filter((reader) => asked.includes(reader));
}

function temporaryFolder(date: string): string {
  return `.tmp-${date}`;
}

function changedMeanwhile(looked: readonly InputFile[], read: readonly InputFile[]): string | null {
  const before = new Map(looked.map((f) => [f.file, f.sha256]));
  return read.find((f) => before.has(f.file) && before.get(f.file) !== f.sha256)?.file ?? null;
}

function movedFinding(file: string): Finding {
  return findingOf(OUT.inputMoved, {
    place: { file, line: null, column: null },
    message: `${file} changed while the day was built`,
    hint: "Wait until copying has ended and build again.",
  });
}

function faultFinding(date: string, stored: StoredDay | null): Finding {
  return findingOf(OUT.fault, {
    place: { file: `days/${date}`, line: null, column: null },
    message: `day ${date} could not be built because of a fault in the program`,
    hint: stored === null ? "The report has no pages of this day." : "The report keeps the last good pages of this day.",
  });
}

function stopwatch(now: () => number, progress: (stage: string) => void) {
  const stages: { stage: string; milliseconds: number }[] = [];
  let current: { stage: string; since: number } | null = null;
  const close = () => {
    if (current !== null) stages.push({ stage: current.stage, milliseconds: now() - current.since });
  };
  return {
    stage(stage: string) {
      close();
      current = { stage, since: now() };
      progress(stage);
    },
    end() {
      close();
      current = null;
      return stages;
    },
  };
}
