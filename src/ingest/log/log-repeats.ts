import type { Place } from "../../core/finding.ts";
import type { FindingCollector } from "../../core/findings/collect.ts";
import { LOG } from "../../core/findings/log.ts";
import type { FrameRate } from "../../time/frame-rate.ts";
import { framesPerDay } from "../../time/timecode.ts";
import type { LogTiming } from "./log-record.ts";

/** What is looked at to tell repeated rows. */
export interface RepeatInput {
  readonly file: string;
  readonly rows: number;
  readonly timing: LogTiming;
  readonly rate: FrameRate;
  readonly dropFrame: boolean;
  readonly rejected: Uint8Array;
  readonly columns: readonly Float64Array[];
  /** Camera and clip of a row, where the log has them as columns: rows of two cameras do not repeat each other. */
  readonly identity: ((row: number) => string) | null;
  lineOf(row: number): number;
  placeOf(row: number): Place;
  textOf(row: number): string;
}

/**
 * Rejects rows whose time came before: an error when their readings differ, else a remark. Tells once when time runs backwards;
 * the step from the end of a day to its beginning is midnight, not disorder.
 */
export function rejectRepeats(input: RepeatInput, found: FindingCollector): void {
  const times = timesOf(input.timing);
  const increasing = tellOfOrder(input, times, found);
  if (increasing && input.identity === null) return;
  const first = new Map<string | number, number>();
  for (let row = 0; row < input.rows; row++) {
    if (input.rejected[row] === 1) continue;
    const time = times[row] as number;
    const key = input.identity === null ? time : `${input.identity(row)}\n${time}`;
    const before = first.get(key);
    if (before === undefined) {
      first.set(key, row);
      continue;
    }
    input.rejected[row] = 1;
    const differs = input.columns.some((values) => !sameReading(values[before] as number, values[row] as number));
    found.addIn(input.file, differs ? LOG.repeatedDiffers : LOG.repeatedSame, () => ({
      place: input.placeOf(row),
      field: fieldOf(input.timing),
      message: `${input.textOf(row)} came in line ${input.lineOf(before)} already${differs ? ", with other values" : ""}`,
      hint: differs
        ? `Line ${input.lineOf(before)} is used. Delete the row that is wrong.`
        : `Line ${input.lineOf(before)} is used; nothing is lost.`,
    }));
  }
}

/** True when time only ever increases. */
function tellOfOrder(input: RepeatInput, times: ArrayLike<number>, found: FindingCollector): boolean {
  const halfDay = framesPerDay(input.rate, input.dropFrame) / 2;
  let last = Number.NEGATIVE_INFINITY;
  let increasing = true;
  let backwards = 0;
  let firstRow = -1;
  for (let row = 0; row < input.rows; row++) {
    if (input.rejected[row] === 1) continue;
    const time = times[row] as number;
    if (time <= last) increasing = false;
    const midnight = input.timing.kind === "timecode" && last - time > halfDay;
    if (time < last && !midnight && input.identity === null) {
      backwards++;
      if (firstRow < 0) firstRow = row;
    }
    last = time;
  }
  if (firstRow >= 0) {
    found.add(LOG.outOfOrder, {
      place: input.placeOf(firstRow),
      field: fieldOf(input.timing),
      message: `time runs backwards at ${input.textOf(firstRow)}${backwards > 1 ? ` and ${backwards - 1} more times` : ""}`,
      hint: "Nothing to do: rows are placed by their own time.",
    });
  }
  return increasing;
}

function timesOf(timing: LogTiming): ArrayLike<number> {
  return timing.kind === "time" ? timing.seconds : timing.frames;
}

function fieldOf(timing: LogTiming): string {
  return timing.kind === "time" ? "time_s" : timing.kind;
}

function sameReading(a: number, b: number): boolean {
  return a === b || (Number.isNaN(a) && Number.isNaN(b));
}
