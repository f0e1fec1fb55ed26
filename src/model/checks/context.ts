/** What the rules about one take look at, and where they say what they found. */
import type { FindingDetails, FindingKind } from "../../core/findings/kind.ts";
import type { LensLog } from "../../ingest/log/log-record.ts";
import type { DayInput, Kit } from "../../ingest/records.ts";
import type { CheckLimits } from "../../ingest/show/check-limits.ts";
import type { LensTrack, Take } from "../types.ts";

/** Adds a finding. */
export type Tell = (kind: FindingKind, details: FindingDetails) => void;

export interface TakeContext {
  readonly take: Take;
  readonly limits: CheckLimits;
  readonly input: DayInput;
  readonly kit: Kit;
  readonly logFile: string | null;
  /** Adds a finding about the take. */
  readonly tell: Tell;
}

/** A take's frames together with the log that they come from; `null` for a take without a log. */
export function loggedTrack({
  take,
  input,
  logFile,
}: Pick<TakeContext, "take" | "input" | "logFile">): { readonly track: LensTrack; readonly log: LensLog } | null {
  const log = input.logs.find((l) => l.file === logFile);
  return take.track === null || log === undefined ? null : { track: take.track, log };
}

/** Physical line of the first row that serves a take, for hints that name the other place: `logs/a.csv, line 8`. */
export function logPlaceWords(context: Pick<TakeContext, "take">): string {
  const [lines] = context.take.logLines;
  return lines === undefined ? "the log" : `${lines.file}, line ${lines.first}`;
}
