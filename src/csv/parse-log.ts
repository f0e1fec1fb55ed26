import { parseTimecode } from "../time/timecode.ts";
import { joinSplitTimecode, type LogPlan, type LogTable } from "./log-table.ts";
import type { CsvRow } from "./read.ts";

/**
 * The careful way to a `LogTable`: from records that `readCsv` has split. It serves the files that the byte scanner leaves alone,
 * and is the check on the scanner: both give equal tables.
 */
export function parseLogTable(records: readonly CsvRow[], plan: LogPlan): LogTable {
  const timecode = plan.columns.indexOf("timecode");
  const rows = records
    .map((record) => fittedRow(record, timecode, plan))
    .filter((row) => row.texts.some((text) => text.trim() !== ""));
  const odd: { row: number; column: number }[] = [];
  const widths: { row: number; cells: number }[] = [];
  const numbers = plan.columns.map((kind) => (kind === "number" ? new Float64Array(rows.length).fill(Number.NaN) : null));
  const labels = timecode >= 0 ? new Int32Array(rows.length).fill(-1) : null;
  rows.forEach((row, r) => {
    if (row.texts.length !== plan.columns.length) widths.push({ row: r, cells: row.texts.length });
    plan.columns.forEach((kind, c) => {
      const text = row.texts[c] ?? "";
      if (kind === "text" || text.trim() === "") return;
      const value = kind === "number" ? plainNumber(text, plan) : plainLabel(text, plan);
      if (value === null) odd.push({ row: r, column: c });
      else if (kind === "number") (numbers[c] as Float64Array)[r] = value;
      else (labels as Int32Array)[r] = value;
    });
  });
  return {
    rows: rows.length,
    numbers,
    labels,
    odd,
    widths,
    comments: [],
    line: (r) => (rows[r] as FittedRow).record.line,
    cell(r, c) {
      const row = rows[r] as FittedRow;
      const place = row.record.place(c > row.joinedAt && row.joinedAt >= 0 ? c + 1 : c);
      return { text: row.texts[c] ?? "", place: c === row.joinedAt ? { ...place, length: (row.texts[c] ?? "").length } : place };
    },
  };
}

interface FittedRow {
  readonly record: CsvRow;
  readonly texts: readonly string[];
  /** Column whose cell was joined from two, or -1. */
  readonly joinedAt: number;
}

function fittedRow(record: CsvRow, timecode: number, plan: LogPlan): FittedRow {
  const cells = record.cells.map((text) => ({ text, start: 0, end: 0 }));
  const joined = joinSplitTimecode(cells, timecode, plan.delimiter);
  return { record, texts: joined.map((cell) => cell.text), joinedAt: joined.length < cells.length ? timecode : -1 };
}

/** The numbers that the scanner reads too: digits, at most one decimal sign, at most 15 digits, spaces around. */
function plainNumber(text: string, plan: LogPlan): number | null {
  const pattern = plan.decimal === "," ? /^ *(-?\d*,?\d*) *$/ : /^ *(-?\d*\.?\d*) *$/;
  const written = pattern.exec(text)?.[1];
  const digits = written?.replace(/\D/g, "").length ?? 0;
  return written === undefined || digits === 0 || digits > 15 ? null : Number(written.replace(",", "."));
}

function plainLabel(text: string, plan: LogPlan): number | null {
  if (text !== text.trim()) return null;
  const result = parseTimecode(text, plan.rate, plan.dropFrame);
  return result.ok ? result.frame : null;
}
