/**
 * Tables with measured, wrapped cells. The header row is repeated on later pages as an artifact: a reader who hears the
 * page is told each header once. A row stays on one page unless it is taller than half a sheet.
 */
import type { Element } from "./document.ts";
import type { TextStyle } from "./ink.ts";
import { PRINT } from "./palette.ts";
import { type Report, TYPE } from "./report.ts";
import {
  type Cell,
  type Frame,
  frameOf,
  heightOf,
  heightTogether,
  type Laid,
  layRow,
  type PlacedColumn,
  STEP,
  stepOf,
  type TableOptions,
  type TableRow,
} from "./table-layout.ts";
import { artifact, element, link, spanCells } from "./tags.ts";

export type { Cell, CellArea, Column, TableOptions, TableRow } from "./table-layout.ts";

/** Points that the whole table would take on one page. */
export function tableHeight(report: Report, options: TableOptions): number {
  const frame = frameOf(report, options);
  return options.rows.reduce((sum, row) => sum + heightOf(frame, layRow(frame, row)), frame.headHeight);
}

/** Draws the table at the cursor, under `parent`. */
export function drawTable(report: Report, parent: Element, options: TableOptions): void {
  const { doc, flow } = report;
  const frame = frameOf(report, options);
  const laid = options.rows.map((row) => layRow(frame, row));
  const table = element(doc, parent, "Table");
  flow.need(heightTogether(frame, laid));
  const header = element(doc, element(doc, table, "THead"), "TR");
  drawHead(frame, header);
  const body = element(doc, table, "TBody");
  laid.forEach((row, i) => {
    // no row stands alone on a page: neither that of a group nor the last one
    const keep = row.row.group === true || (i > 0 && i === laid.length - 2);
    drawRow(frame, body, row, keep ? laid[i + 1] : undefined);
  });
}

function drawHead(frame: Frame, row: Element | null): void {
  const { doc, ink, flow } = frame.report;
  const top = flow.y;
  const bottom = top + frame.headHeight;
  const drawCell = (column: PlacedColumn) => {
    const lines = column.head.split("\n");
    lines.forEach((line, i) => {
      const baseline = bottom - 5 - (lines.length - 1 - i) * STEP;
      const end = column.align === "end";
      ink.text(end ? line : `${line} `, end ? column.x + column.width : column.x, baseline, TYPE.label, end ? "end" : "start");
    });
  };
  const left = frame.columns[0]?.x ?? 0;
  const rule = () => ink.line(left, bottom, frame.right, bottom, PRINT.ink, 0.75);
  if (row === null) {
    artifact(doc, () => {
      frame.columns.forEach(drawCell);
      rule();
    });
  } else {
    for (const column of frame.columns) element(doc, row, "TH", { scope: "Column" }, () => drawCell(column));
    artifact(doc, rule);
  }
  flow.y = bottom;
}

function drawRow(frame: Frame, body: Element, laid: Laid, keepWith: Laid | undefined): void {
  const { doc, ink, flow } = frame.report;
  const height = heightOf(frame, laid);
  const sheetHeight = flow.sheet.bottom - flow.sheet.top;
  const keep = height + (keepWith === undefined ? 0 : heightOf(frame, keepWith));
  if (flow.left() < keep && keep < sheetHeight / 2) nextPage(frame);
  else if (flow.left() < height && (height < sheetHeight / 2 || flow.left() < stepOf(laid) * 2 + 2 * frame.pad)) nextPage(frame);
  const left = frame.columns[0]?.x ?? 0;
  if (laid.row.total === true) artifact(doc, () => ink.line(left, flow.y, frame.right, flow.y, PRINT.ink, 0.75));
  laid.row.drawn?.(flow.y);
  const elements = rowElements(frame, body, laid);
  let from = 0;
  const all = laid.count + laid.below.length;
  while (from < all) {
    if (from > 0) nextPage(frame);
    const step = stepOf(laid);
    const fits = Math.max(1, Math.floor((flow.left() - 2 * frame.pad + 0.01) / step));
    const to = heightOf(frame, laid) <= flow.left() ? all : Math.min(all, from + fits);
    drawLines(frame, laid, elements, from, to);
    from = to;
  }
  const bottom = flow.y;
  if (laid.row.total !== true)
    artifact(doc, () => ink.line(left, bottom, frame.right, bottom, laid.row.group === true ? PRINT.ink2 : PRINT.rule, 0.4));
}

function nextPage(frame: Frame): void {
  const { doc, ink, flow } = frame.report;
  flow.newPage();
  if (frame.continued !== "") {
    artifact(doc, () => ink.text(frame.continued, frame.columns[0]?.x ?? 0, flow.y + 9, TYPE.label));
    flow.y += STEP + 4;
  }
  drawHead(frame, null);
}

function rowElements(
  frame: Frame,
  body: Element,
  laid: Laid,
): { readonly cells: readonly Element[]; readonly below: Element | null } {
  const { doc } = frame.report;
  const row = element(doc, body, "TR");
  const cells = laid.cells.map((_, i) => element(doc, row, i === 0 ? "TH" : "TD", i === 0 ? { scope: "Row" } : {}));
  const [first] = cells;
  if (laid.row.group === true && first !== undefined) spanCells(first, { ColSpan: frame.columns.length });
  if (laid.below.length === 0) return { cells, below: null };
  // The lines below are a row of their own, which the head of the row spans.
  if (first !== undefined) spanCells(first, { RowSpan: 2 });
  const below = element(doc, element(doc, body, "TR"), "TD");
  spanCells(below, { ColSpan: frame.columns.length - 1 });
  return { cells, below };
}

/** Draws the lines `from` to `to` of a row at the cursor: first those of the cells, then those below. */
function drawLines(
  frame: Frame,
  laid: Laid,
  elements: { readonly cells: readonly Element[]; readonly below: Element | null },
  from: number,
  to: number,
): void {
  const { doc, flow } = frame.report;
  const step = stepOf(laid);
  const size = Math.max(...laid.cells.map((cell) => (cell.style ?? TYPE.table).size));
  const first = flow.y + frame.pad + size * 0.98;
  const arts: (() => void)[] = [];
  laid.cells.forEach((cell, i) => {
    const column = frame.columns[i];
    const target = elements.cells[i];
    if (column === undefined || target === undefined) return;
    const lines = (laid.lines[i] ?? []).slice(from, Math.min(to, laid.count));
    if (cell.art !== undefined && from === 0) {
      const { art } = cell;
      arts.push(() => art(frame.report.ink, { x: column.x, baseline: first, width: column.width }));
    }
    if (lines.length > 0 && lines.some((line) => line !== "")) drawCell(frame, cell, column, target, lines, first, step);
  });
  const mainLines = Math.max(0, Math.min(to, laid.count) - from);
  const belowFrom = Math.max(0, from - laid.count);
  const below = laid.below.slice(belowFrom, Math.max(0, to - laid.count));
  const belowX = frame.columns[frame.belowColumn]?.x ?? 0;
  const belowTop = first + mainLines * step;
  const style = belowStyle(laid.row);
  if (elements.below !== null && below.length > 0) {
    elements.below.add(() => {
      below.forEach((line, i) => {
        frame.report.ink.text(`${line} `, belowX, belowTop + i * STEP, style);
      });
    });
  }
  if (arts.length > 0) {
    artifact(doc, () => {
      for (const art of arts) art();
    });
  }
  flow.y += mainLines * step + below.length * STEP + 2 * frame.pad;
}

function belowStyle(row: TableRow): TextStyle {
  return typeof row.below === "object" && row.below !== null ? (row.below.style ?? TYPE.label) : TYPE.label;
}

function drawCell(
  frame: Frame,
  cell: Cell,
  column: PlacedColumn,
  target: Element,
  lines: readonly string[],
  first: number,
  step: number,
): void {
  const { doc, ink } = frame.report;
  const style = cell.style ?? TYPE.table;
  const end = column.align === "end";
  const x = end ? column.x + column.width : column.x;
  const draw = () => {
    lines.forEach((line, i) => {
      ink.text(end ? line : `${line} `, x, first + i * step, style, end ? "end" : "start");
    });
  };
  if (cell.link === undefined) {
    target.add(draw);
    return;
  }
  const area = { x: column.x - 1, y: first - style.size, width: column.width + 2, height: lines.length * step };
  link(doc, target, area, cell.link.target, cell.link.label, draw);
}
