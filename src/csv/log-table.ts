import type { Place } from "../core/finding.ts";
import { droppedPerMinute, type FrameRate, nominalRate } from "../time/frame-rate.ts";

/** What a column of a log holds, by its position in the header. */
export type PlanKind = "number" | "timecode" | "text";

/** How the rows of a log are to be read. */
export interface LogPlan {
  readonly file: string;
  readonly delimiter: string;
  readonly decimal: "." | ",";
  readonly columns: readonly PlanKind[];
  /** Rate and drop flag of the timecode column. */
  readonly rate: FrameRate;
  readonly dropFrame: boolean;
}

/**
 * Rows of a log as columns. Plain numbers and timecodes are read; what is neither blank nor plain is listed in `odd` and left to
 * the caller, who has the text. Rows whose cells are all blank are skipped.
 */
export interface LogTable {
  readonly rows: number;
  /** By position in the header; NaN for blank and odd cells, `null` for columns that hold no numbers. */
  readonly numbers: readonly (Float64Array | null)[];
  /** Frame of the day by row, -1 for blank and odd cells; `null` without a timecode column. */
  readonly labels: Int32Array | null;
  readonly odd: Iterable<{ readonly row: number; readonly column: number }>;
  /** Rows with fewer or more cells than the header. */
  readonly widths: Iterable<{ readonly row: number; readonly cells: number }>;
  /** Physical lines of comments with as many cells as a row, as far as nobody told of them. */
  readonly comments: readonly number[];
  /** Physical line of a row. */
  line(row: number): number;
  /** Text of a cell (quotes resolved, not trimmed) and its place; empty beyond the end of the row. */
  cell(row: number, column: number): { readonly text: string; readonly place: Place };
}

/** The parts of the timecode formula that depend on the rate only. */
export function labelBase(plan: LogPlan): { readonly base: number; readonly drop: number } {
  return { base: nominalRate(plan.rate), drop: plan.dropFrame ? droppedPerMinute(plan.rate) : 0 };
}

/** A cell of a record with its offsets. */
interface PlacedCell {
  readonly text: string;
  readonly start: number;
  readonly end: number;
}

/**
 * In a table with semicolons a drop-frame label that is not in quotes falls into two cells, `10:33:55` and `00`: joins them again.
 * `timecode` is the position of the timecode column.
 */
export function joinSplitTimecode<C extends PlacedCell>(cells: readonly C[], timecode: number, delimiter: string): readonly C[] {
  if (delimiter !== ";" || timecode < 0) return cells;
  const clock = cells[timecode];
  const frames = cells[timecode + 1];
  if (clock === undefined || frames === undefined) return cells;
  if (!/^\s*\d\d:\d\d:\d\d$/.test(clock.text) || !/^\d\d\d?\s*$/.test(frames.text)) return cells;
  const joined = { ...clock, text: `${clock.text};${frames.text}`, end: frames.end };
  return [...cells.slice(0, timecode), joined, ...cells.slice(timecode + 2)];
}
