import type { FindingCollector } from "../../core/findings/collect.ts";
import { LOG } from "../../core/findings/log.ts";
import type { LogTable } from "../../csv/log-table.ts";
import { shorten } from "../../csv/read.ts";
import { NO_VALUE } from "./log-cells.ts";
import type { LogLayout } from "./log-layout.ts";

/** More lines than this are no summary, but rows whose time was lost: each of them is told of. */
const MOST_LINES = 20;
const WORD = /\p{L}{3}/u;
/** A number, or what is left of a timecode. */
const TIME = /^[\d.,]+$|\d[:;.]\d/;

/**
 * Rejects the lines in which a recorder sums up or says that it ends ("Total frames,1440", "End of log"): words where the time stands, below the
 * last row of the file or above a header that comes again. One remark for such lines that follow one another. Lines that no row with a time
 * stands above are left to the errors of their cells. `rejected` has the headers that come again already.
 */
export function rejectClosingLines(
  table: LogTable,
  layout: LogLayout,
  width: number,
  file: string,
  rejected: Uint8Array,
  found: FindingCollector,
): void {
  const column = layout.timing?.column;
  if (column === undefined) return;
  const times: ArrayLike<number> | null = table.labels ?? table.numbers[column] ?? null;
  const text = (row: number, c: number): string => table.cell(row, c).text.trim();
  const hasTime = (row: number): boolean => (times?.[row] ?? -1) >= 0 || TIME.test(text(row, column));
  const isWords = (row: number): boolean => {
    if (rejected[row] === 1 || hasTime(row)) return false;
    const own = text(row, column);
    if (own !== "") return WORD.test(own) && !NO_VALUE.test(own);
    // a row that lost its time has the clip or camera of the row above
    return WORD.test(text(row, 0)) && text(row, 0) !== text(row - 1, 0);
  };
  const closes = (after: number): void => {
    let row = after - 1;
    while (row > 0 && after - row <= MOST_LINES && isWords(row)) row--;
    const first = row + 1;
    if (first === after || !hasTime(row)) return;
    rejected.fill(1, first, after);
    const others = after - first - 1;
    found.addIn(file, LOG.closingLine, () => ({
      place: table.cell(first, 0).place,
      message: `${lineText(table, first, width)}${others === 0 ? "" : ` and ${others} more ${others === 1 ? "line" : "lines"}`} below the rows ${others === 0 ? "is no reading" : "are no readings"}`,
      hint: "Nothing to do if the recorder sums up there. If it was a row, write when it was.",
    }));
  };
  for (let row = 1; row < table.rows; row++) if (rejected[row] === 1) closes(row);
  closes(table.rows);
}

function lineText(table: LogTable, row: number, width: number): string {
  const cells = Array.from({ length: width }, (_, column) => table.cell(row, column).text.trim());
  return shorten(cells.join(" ").trim());
}
