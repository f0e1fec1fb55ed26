import type { Place } from "../../core/finding.ts";
import type { FindingCollector } from "../../core/findings/collect.ts";
import { CSV } from "../../core/findings/csv.ts";
import { LOG } from "../../core/findings/log.ts";
import { LOG_KEYS } from "../../csv/columns.ts";
import { wholeFile } from "../../csv/decode.ts";
import type { LogTable } from "../../csv/log-table.ts";
import { meantColumn } from "../columns/header-words.ts";
import { rejectClosingLines } from "./closing-lines.ts";
import { dioptresOf, settleNumbers } from "./log-cells.ts";
import { tellOfConvention, tellOfDate } from "./log-checks.ts";
import type { LogHead } from "./log-keys.ts";
import type { HeaderCell, LogLayout } from "./log-layout.ts";
import type { LensLog, LogColumn } from "./log-record.ts";
import { rejectRepeats } from "./log-repeats.ts";
import { timingOf } from "./log-timing.ts";

export interface LogParts {
  readonly source: { readonly file: string; readonly text: { readonly size: number }; readonly sha256: string };
  readonly context: { readonly date: string };
  readonly head: LogHead;
  readonly layout: LogLayout;
  readonly header: readonly HeaderCell[];
  readonly table: LogTable;
}

type RowKey = "camera" | "clip" | "slate" | "take" | "lens";

/** Completes a log from its head and its table: units, times, rejected rows, and all there is to say about its cells. */
export function buildLog(parts: LogParts, found: FindingCollector): LensLog {
  const { source, head, layout, table } = parts;
  const { file } = source;
  const rejected = new Uint8Array(table.rows);
  tellOfLayout(parts, found);
  tellOfComments(parts, found);
  rejectHeaders(parts, rejected, found);
  rejectClosingLines(table, layout, parts.header.length, file, rejected, found);
  tellOfWidths(parts, rejected, found);
  settleNumbers(table, layout, head.decimal, file, rejected, found);
  const columns: Partial<Record<LogColumn, Float64Array>> = {};
  if (layout.focus !== null) {
    columns.focus = dioptresOf(table.numbers[layout.focus.column] as Float64Array, layout.focus.spec.name);
  }
  for (const { spec, column } of layout.readings) columns[spec.name as LogColumn] = table.numbers[column] as Float64Array;
  const timing = timingOf(table, layout, head, file, rejected, found);
  const rowKeys = rowKeysOf(layout, table);
  const identity = rowKeys.camera ?? rowKeys.clip;
  const timingColumn = layout.timing?.column ?? 0;
  rejectRepeats(
    {
      file,
      rows: table.rows,
      timing,
      rate: head.rate,
      dropFrame: head.dropFrame,
      rejected,
      columns: Object.values(columns),
      identity: identity === undefined ? null : (row) => `${rowKeys.camera?.(row) ?? ""} ${rowKeys.clip?.(row) ?? ""}`,
      lineOf: table.line,
      placeOf: (row) => table.cell(row, timingColumn).place,
      textOf: (row) => table.cell(row, timingColumn).text.trim(),
    },
    found,
  );
  tellOfConvention(file, head, columns, parts.header, found);
  tellOfDate(head.keys.date, parts.context.date, head.place("date"), found);
  return {
    file,
    sha256: source.sha256,
    bytes: source.text.size,
    keys: head.keys,
    keyPlace: head.place,
    rows: table.rows,
    timing,
    rate: head.rate,
    dropFrame: head.dropFrame,
    rejected,
    columns,
    focusField: layout.focus?.spec.name ?? null,
    rowKeys,
    unknown: layout.unknown.map(({ name, column }) => ({ name, text: (row: number) => table.cell(row, column).text })),
    lineOf: table.line,
    cell: (row, column) => table.cell(row, columnNumber(layout, column)),
  };
}

/** Position of a column by its canonical name; `focus` is the log's focus column and `timecode` its timing column. */
function columnNumber(layout: LogLayout, name: string): number {
  if (name === "focus") return layout.focus?.column ?? 0;
  if (name === "timecode") return layout.timing?.column ?? 0;
  return layout.columnOf.get(name) ?? layout.unknown.find((column) => column.name === name)?.column ?? 0;
}

function rowKeysOf(layout: LogLayout, table: LogTable): Partial<Record<RowKey, (row: number) => string>> {
  return Object.fromEntries(
    layout.identities.map(({ name, column }) => [name, (row: number) => table.cell(row, column).text.trim()]),
  );
}

function tellOfLayout(parts: LogParts, found: FindingCollector): void {
  const { layout, header, table, source } = parts;
  const place: Place = { ...(header[0]?.place ?? wholeFile(source.file)), length: 1 };
  if (layout.timing === null) {
    const names = header.map((cell) => cell.text.trim());
    const key = keyWithoutMark(names[0] ?? "");
    const headless = layout.columnOf.size === 0 && names.some((name) => /^[\d.,:;+-]+$/.test(name));
    found.add(headless ? CSV.noHeader : LOG.noTiming, {
      place,
      field: "timecode",
      message: headless
        ? `the first row holds values (${names.slice(0, 2).join(", ")}), not column names`
        : key !== null
          ? `the first line without # is "${key}", and that is where the column names are expected; the ${table.rows} rows cannot be placed`
          : `the log has no column timecode, frame or time_s, so its ${table.rows} rows cannot be placed`,
      hint: headless
        ? "Write a header row such as timecode,focus_m,t before the rows."
        : key !== null
          ? `A key line begins with #: write "# ${key}".`
          : timeHint(names),
    });
  } else if (layout.focus === null && layout.readings.length === 0) {
    found.add(LOG.nothingKnown, {
      place,
      message: "beside its time the log has no column that is known",
      hint: "Rename the columns (`daybook columns` lists the names), or map them in kit/columns.yaml.",
    });
  }
  if (table.rows === 0) {
    found.add(LOG.noRows, {
      place,
      message: "the log has no rows after its header",
      hint: "Take it out of the folder, or copy it again.",
    });
  }
}

/** The words of a key line that lost its #, such as `camera: A`. */
function keyWithoutMark(text: string): string | null {
  const key = /^([a-z_]+)\s*:/.exec(text)?.[1];
  return key !== undefined && LOG_KEYS.some((spec) => spec.name === key) ? text : null;
}

/** Names the header that looks like the time. */
function timeHint(names: readonly string[]): string {
  for (const name of names) {
    const meant = meantColumn(name);
    if (meant === "timecode" || meant === "frame" || meant === "time_s")
      return `Is it "${name}"? Rename it to ${meant}, or run \`daybook columns\` with this file: it proposes a map for all such logs.`;
  }
  return `Rename the column that holds the time, or map it in kit/columns.yaml. The header has ${names.join(", ")}.`;
}

function tellOfWidths(parts: LogParts, rejected: Uint8Array, found: FindingCollector): void {
  const { table, header, source, layout } = parts;
  // all rows are rejected already, for one reason
  if (layout.timing === null) return;
  const width = header.length;
  const nameAt = (column: number): string =>
    [...layout.columnOf].find(([, c]) => c === column)?.[0] ?? header[column]?.text.trim() ?? "";
  for (const { row, cells } of table.widths) {
    if (rejected[row] === 1) continue;
    if (cells < width) {
      // A spreadsheet writes delimiters behind the last column that has a name.
      if (header.slice(cells).every((cell) => cell.text.trim() === "")) continue;
      found.addIn(source.file, CSV.shortRow, () => ({
        place: table.cell(row, 0).place,
        field: nameAt(cells),
        message: `the row has ${cells} cells, the header ${width}`,
        hint: `"${nameAt(cells)}" and what follows count as not logged. Complete the row, or delete it if it was cut off.`,
      }));
      continue;
    }
    const beyond = Array.from({ length: cells - width }, (_, i) => table.cell(row, width + i));
    const [first] = beyond;
    if (first === undefined || beyond.every((cell) => cell.text.trim() === "")) continue;
    found.addIn(source.file, CSV.longRow, () => ({
      place: first.place,
      message: `the row has ${cells} cells, the header ${width}`,
      hint: "What is beyond the header is left out. A number with a decimal comma goes in quotes in a table with commas.",
    }));
  }
}

/** Rejects the rows that are the header once more. */
function rejectHeaders({ table, header, layout }: LogParts, rejected: Uint8Array, found: FindingCollector): void {
  const timing = layout.timing?.column;
  if (timing === undefined) return;
  const isHeader = (row: number): boolean =>
    header.every((name, column) => table.cell(row, column).text.trim() === name.text.trim());
  let first = -1;
  let count = 0;
  for (const { row, column } of table.odd) {
    if (column !== timing || !isHeader(row)) continue;
    rejected[row] = 1;
    if (first < 0) first = row;
    count++;
  }
  if (first < 0) return;
  found.add(LOG.headerAgain, {
    place: table.cell(first, 0).place,
    message: `the header row comes again${count === 1 ? "" : ` here and ${count - 1} more ${count === 2 ? "time" : "times"}`}`,
    hint: `Nothing to do if the recorder was started again within the file. The ${count === 1 ? "row is" : "rows are"} left out.`,
  });
}

/** Comments are skipped silently, but not one that looks like a row that somebody would miss. */
function tellOfComments({ table, header, source }: LogParts, found: FindingCollector): void {
  for (const line of table.comments) {
    found.addIn(source.file, CSV.commentLikeRow, () => ({
      place: { file: source.file, line, column: 1 },
      message: `a line that begins with # is a comment, though it has ${header.length} cells`,
      hint: "If it is a row, put its first cell in quotes; if it is a comment, all is well.",
    }));
  }
}
