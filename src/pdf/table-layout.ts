/** Measuring a table: columns, wrapped cells, heights. Nothing is drawn here. */
import { type Ink, lineHeight, type TextStyle } from "./ink.ts";
import { type Report, TYPE } from "./report.ts";

export interface Column {
  /** May hold line ends. */
  readonly head: string;
  /** Points. */
  readonly width: number;
  readonly align?: "start" | "end";
}

export interface Cell {
  readonly text: string;
  readonly style?: TextStyle;
  /** A named place that the cell links to, and what the link says. */
  readonly link?: { readonly target: string; readonly label: string };
  /** Decoration beside or around the text, such as a bar whose value stands in another cell. */
  readonly art?: (ink: Ink, area: CellArea) => void;
}

export interface CellArea {
  readonly x: number;
  readonly baseline: number;
  readonly width: number;
}

export interface TableRow {
  /** One cell a column; the first is the row's head. */
  readonly cells: readonly (Cell | string)[];
  /** Lines of their own below the cells, from the table's `belowColumn` to the end. */
  readonly below?: Cell | string | null;
  /** A row that stands for a group: its one cell spans all columns. */
  readonly group?: boolean;
  /** Firm rule above and bold text, for a row of totals. */
  readonly total?: boolean;
  /** Told where the row begins, on the page that is then current. */
  readonly drawn?: (top: number) => void;
}

export interface TableOptions {
  readonly columns: readonly Column[];
  readonly rows: readonly TableRow[];
  readonly x?: number;
  /** Space between columns. */
  readonly gap?: number;
  /** Space above and below the text of a row. */
  readonly pad?: number;
  /** What the table is of, above its head on later pages. */
  readonly continued?: string;
  /** Column (0-based) under which the line below a row begins; the second if not given. */
  readonly belowColumn?: number;
}

export interface PlacedColumn extends Column {
  readonly x: number;
}

export interface Laid {
  readonly row: TableRow;
  readonly cells: readonly Cell[];
  readonly lines: readonly (readonly string[])[];
  readonly below: readonly string[];
  readonly count: number;
}

export interface Frame {
  readonly report: Report;
  readonly columns: readonly PlacedColumn[];
  readonly right: number;
  readonly pad: number;
  readonly belowColumn: number;
  readonly headHeight: number;
  readonly continued: string;
}

/** Points that a column of figures gives up before one of text. */
const BEFORE_TEXT = 4;
/** Points of a large table that stand together with its head. */
const BEGINNING = 40;

export const STEP = lineHeight(TYPE.table);

export function frameOf(report: Report, options: TableOptions): Frame {
  const gap = options.gap ?? 7;
  let x = options.x ?? report.flow.sheet.left;
  const columns = options.columns.map((column, i) => {
    const next = options.columns[i + 1];
    // figures that end at the right need more room before a text that begins at the left
    const meets = column.align === "end" && next !== undefined && next.align !== "end";
    const placed = { ...column, x, width: column.width - (meets ? BEFORE_TEXT : 0) };
    x += column.width + gap;
    return placed;
  });
  const lines = Math.max(...columns.map((column) => column.head.split("\n").length));
  return {
    report,
    columns,
    right: x - gap,
    pad: options.pad ?? 2.6,
    belowColumn: options.belowColumn ?? 1,
    headHeight: lines * STEP + 4,
    continued: options.continued ?? "",
  };
}

export function layRow(frame: Frame, row: TableRow): Laid {
  const { ink } = frame.report;
  const fallback = row.total === true ? TYPE.strong : TYPE.table;
  const cells = row.cells.map((cell, i): Cell => {
    const given = typeof cell === "string" ? { text: cell } : cell;
    return given.style === undefined ? { ...given, style: i === 0 ? TYPE.strong : fallback } : given;
  });
  const lines = cells.map((cell, i) =>
    ink.lines(cell.text, cell.style ?? TYPE.table, row.group === true ? widthFrom(frame, 0) : (frame.columns[i]?.width ?? 0)),
  );
  const below =
    row.below === undefined || row.below === null ? null : typeof row.below === "string" ? { text: row.below } : row.below;
  const belowLines =
    below === null || below.text === ""
      ? []
      : ink.lines(below.text, below.style ?? TYPE.label, widthFrom(frame, frame.belowColumn));
  return { row, cells, lines, below: belowLines, count: Math.max(1, ...lines.map((l) => l.length)) };
}

function widthFrom(frame: Frame, column: number): number {
  return frame.right - (frame.columns[column]?.x ?? 0);
}

export function stepOf(laid: Laid): number {
  return Math.max(STEP, ...laid.cells.map((cell) => lineHeight(cell.style ?? TYPE.table)));
}

export function heightOf(frame: Frame, laid: Laid | undefined): number {
  if (laid === undefined) return 0;
  return laid.count * stepOf(laid) + laid.below.length * STEP + 2 * frame.pad;
}

/** What must stand on one page: a small table whole, of a large one, or one that may be continued, its beginning. */
export function heightTogether(frame: Frame, laid: readonly Laid[]): number {
  const whole = laid.reduce((sum, row) => sum + heightOf(frame, row), frame.headHeight);
  const { sheet } = frame.report.flow;
  if (frame.continued === "" && whole < (sheet.bottom - sheet.top) / 4) return whole;
  let beginning = frame.headHeight;
  for (const row of laid) {
    const height = heightOf(frame, row);
    // a row that goes on on the next page needs room for its beginning alone
    beginning += height < (sheet.bottom - sheet.top) / 2 ? height : BEGINNING;
    if (beginning >= frame.headHeight + BEGINNING && row.row.group !== true) break;
  }
  return beginning;
}
