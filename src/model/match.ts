/** Joins log rows to takes. Every row ends as used, unmatched or rejected, and the sum is kept. */
import { compareText, type Finding } from "../core/finding.ts";
import { findingOf } from "../core/findings/kind.ts";
import { MATCH } from "../core/findings/match.ts";
import type { LensLog } from "../ingest/log/log-record.ts";
import type { DayRecord } from "../ingest/records.ts";
import { distribute, type LogShare } from "./distribute.ts";
import type { TakeDraft } from "./draft.ts";
import { DraftIndex } from "./draft-index.ts";
import type { RowCounts } from "./types.ts";

export interface Matching {
  /** The log that serves each draft, by its index; absent without a log. */
  readonly served: ReadonlyMap<number, LogShare>;
  readonly rows: RowCounts;
  readonly logs: readonly (RowCounts & { readonly file: string; readonly sha256: string; readonly bytes: number })[];
  readonly findings: readonly Finding[];
}

/** Matches every log of a day; `drafts` are in shooting order. */
export function matchLogs(drafts: readonly TakeDraft[], logs: readonly LensLog[], record: DayRecord): Matching {
  const findings: Finding[] = [];
  const index = new DraftIndex(drafts);
  const shares = new Map<number, LogShare[]>();
  for (const log of logs) {
    const result = distribute(log, index, record);
    findings.push(...result.findings);
    for (const [draft, share] of result.shares) shares.set(draft, [...(shares.get(draft) ?? []), share]);
  }

  const served = new Map<number, LogShare>();
  const usedByFile = new Map<string, number>();
  for (const [draft, candidates] of shares) {
    const [best, ...others] = [...candidates].sort(byPrecedence) as [LogShare, ...LogShare[]];
    served.set(draft, best);
    usedByFile.set(best.log.file, (usedByFile.get(best.log.file) ?? 0) + best.samples);
    for (const other of others) findings.push(twoLogs(drafts[draft] as TakeDraft, best, other));
  }

  const counts = logs.map((log) => {
    const rejected = log.rejected.reduce((sum, flag) => sum + flag, 0);
    const used = usedByFile.get(log.file) ?? 0;
    return {
      file: log.file,
      sha256: log.sha256,
      bytes: log.bytes,
      read: log.rows,
      used,
      rejected,
      unmatched: log.rows - used - rejected,
    };
  });
  return { served, rows: sumRows(counts), logs: counts, findings };
}

function sumRows(counts: readonly RowCounts[]): RowCounts {
  const sum = { read: 0, used: 0, unmatched: 0, rejected: 0 };
  for (const c of counts) {
    sum.read += c.read;
    sum.used += c.used;
    sum.unmatched += c.unmatched;
    sum.rejected += c.rejected;
  }
  return sum;
}

/** A per-take log before a day's log, then the one with more samples, then by file name. */
function byPrecedence(a: LogShare, b: LogShare): number {
  return (
    Number(a.rule === "camera and timecode") - Number(b.rule === "camera and timecode") ||
    b.samples - a.samples ||
    compareText(a.log.file, b.log.file)
  );
}

function twoLogs(draft: TakeDraft, best: LogShare, other: LogShare): Finding {
  const dayLog = other.rule === "camera and timecode" && best.rule !== "camera and timecode";
  const place = { file: other.log.file, line: other.log.lineOf(firstRow(other)), column: 1 };
  if (best.log.sha256 === other.log.sha256) {
    return findingOf(MATCH.twoLogs, {
      place,
      message: `This log and ${best.log.file} are one file twice; that one serves, the ${other.samples} rows here are left unmatched.`,
      hint: "Delete one of the two files.",
      take: draft.address,
    });
  }
  return findingOf(dayLog ? MATCH.dayLogBeside : MATCH.twoLogs, {
    place,
    message: `Two logs cover this take: ${best.log.file} serves (${best.samples} samples), the ${other.samples} rows here are left unmatched.`,
    hint: `Remove the log that is not wanted, or give it other keys. Served: ${best.log.file}.`,
    take: draft.address,
  });
}

function firstRow(share: LogShare): number {
  return share.rowOfFrame.find((row) => row >= 0) ?? 0;
}
