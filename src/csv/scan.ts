import { codePointCount } from "../core/text-position.ts";
import { CellList } from "./cell-list.ts";
import { type SplitCell, splitLine } from "./delimiter.ts";
import { joinSplitTimecode, type LogPlan, type LogTable, labelBase } from "./log-table.ts";
import type { PagedText } from "./paged-text.ts";
import { NUMBER, scanRows, TEXT, TIMECODE } from "./scan-rows.ts";

/** Where the rows of a log begin. */
export interface RowsStart {
  readonly page: number;
  /** Byte of the page. */
  readonly offset: number;
  /** Physical line. */
  readonly line: number;
}

/**
 * Reads the rows of a log straight from its bytes, a page at a time and without a string per cell. Afterwards only the columns are in
 * memory: the text of a cell is read from the file again. Exact for what it reads; it gives `null`, and the careful reader has to do
 * the file, when a quoted cell holds a line break, or a quote is never closed or stray.
 */
export function scanTable(text: PagedText, start: RowsStart, plan: LogPlan): LogTable | null {
  const capacity = text.survey.lines - start.line + 1;
  const { base, drop } = labelBase(plan);
  const sink = {
    kinds: Uint8Array.from(plan.columns, (kind) => (kind === "number" ? NUMBER : kind === "timecode" ? TIMECODE : TEXT)),
    delimiter: plan.delimiter.charCodeAt(0),
    decimal: plan.decimal,
    base,
    drop,
    numbers: plan.columns.map((kind) => (kind === "number" ? new Float64Array(capacity).fill(Number.NaN) : null)),
    labels: plan.columns.includes("timecode") ? new Int32Array(capacity).fill(-1) : null,
    lines: new Uint32Array(capacity),
    odd: new CellList(),
    widths: new CellList(),
    comments: [],
  };
  let rows = 0;
  for (let page = start.page; page < text.survey.pages.length; page++) {
    const first = page === start.page;
    const line = first ? start.line : (text.survey.pages[page]?.line ?? 1);
    rows = scanRows(text.bytes(page), first ? start.offset : 0, line, rows, sink);
    if (rows < 0) return null;
  }
  return {
    rows,
    numbers: sink.numbers.map((values) => values?.subarray(0, rows) ?? null),
    labels: sink.labels?.subarray(0, rows) ?? null,
    odd: { [Symbol.iterator]: () => sink.odd.each((row, column) => ({ row, column })) },
    widths: { [Symbol.iterator]: () => sink.widths.each((row, cells) => ({ row, cells })) },
    comments: sink.comments,
    line: (row) => sink.lines[row] as number,
    cell: cellReader(text, sink.lines, plan),
  };
}

/** Reads cells from the text again. They are mostly asked for row by row: the last row is kept split. */
function cellReader(text: PagedText, lines: Uint32Array, { file, delimiter, columns }: LogPlan): LogTable["cell"] {
  const timecode = columns.indexOf("timecode");
  let splitRow = -1;
  let record = "";
  let cells: readonly SplitCell[] = [];
  return (row, column) => {
    const line = lines[row] as number;
    if (row !== splitRow) {
      record = text.line(line).replace(/\r$/, "");
      cells = joinSplitTimecode(splitLine(record, delimiter), timecode, delimiter);
      splitRow = row;
    }
    const cell = cells[column];
    const start = cell?.start ?? cells.at(-1)?.end ?? 0;
    const place = { file, line, column: codePointCount(record, 0, start) + 1 };
    if (cell === undefined) return { text: "", place };
    return { text: cell.text, place: { ...place, length: codePointCount(record, cell.start, cell.end) } };
  };
}
