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
  const earlier = earlierRows(input, times);
  for (let row = 0; row < input.rows; row++) {
    if (input.rejected[row] === 1) continue;
    const before = earlier(row);
    if (before < 0) continue;
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

/** More than any day has; a map holds no more than 2^24. */
const MOST_IN_A_MAP = 16_000_000;

/** The first row with the time, and the identity, of a row that is asked for; -1 for the first itself. Rows are asked for in order. */
function earlierRows(input: RepeatInput, times: ArrayLike<number>): (row: number) => number {
  const { identity, timing } = input;
  if (identity === null && timing.kind !== "time") {
    const highest = timing.frames.reduce((high, frame) => Math.max(high, frame), -1);
    if (highest < 4 * MOST_IN_A_MAP) {
      // Row + 1 by frame: a map of a whole day's rows takes ten times the memory.
      const first = new Int32Array(highest + 1);
      return (row) => {
        const frame = times[row] as number;
        const before = (first[frame] as number) - 1;
        if (before < 0) first[frame] = row + 1;
        return before;
      };
    }
  }
  const maps = new Map<string, Map<number, number>>();
  return (row) => {
    const name = identity?.(row) ?? "";
    const first = maps.get(name) ?? new Map<number, number>();
    if (first.size === 0) maps.set(name, first);
    const before = first.get(times[row] as number);
    if (before === undefined && first.size < MOST_IN_A_MAP) first.set(times[row] as number, row);
    return before ?? -1;
  };
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
