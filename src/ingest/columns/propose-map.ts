import type { Finding } from "../../core/finding.ts";
import { collectFindings } from "../../core/findings/collect.ts";
import { metresFromDioptres } from "../../core/quantity.ts";
import { LOG_FILE_COLUMNS } from "../../csv/columns.ts";
import { decodeText } from "../../csv/decode.ts";
import type { Delimiter } from "../../csv/delimiter.ts";
import { type CsvDocument, readCsv } from "../../csv/read.ts";
import { formatTimecode } from "../../time/timecode.ts";
import { readFieldMaps } from "../log/field-map.ts";
import { logSource, readLensLog } from "../log/lens-log.ts";
import type { LensLog, LogColumn } from "../log/log-record.ts";
import { readNumber } from "../written/number.ts";
import { type ColumnGuess, guessColumn } from "./guess-column.ts";

/** A proposal for kit/columns.yaml, for a person to look at. */
export interface MapProposal {
  readonly file: string;
  readonly delimiter: Delimiter;
  readonly decimal: "." | ",";
  /** The cell by which the decimal sign was told; `null` when all numbers are whole. */
  readonly decimalFrom: string | null;
  readonly rows: number;
  /** In the order of the header. */
  readonly columns: readonly (ColumnGuess & { readonly header: string })[];
  /** Text for kit/columns.yaml; `null` when the log has the known names already. */
  readonly yaml: string | null;
  /** The first rows as they would be read with it. */
  readonly preview: { readonly columns: readonly string[]; readonly rows: readonly (readonly string[])[] };
  /** What reading with it would find. */
  readonly findings: readonly Finding[];
}

/** Rows that are looked at. */
const SAMPLE_ROWS = 2000;
const PREVIEW_ROWS = 5;
const KNOWN = new Set(LOG_FILE_COLUMNS.map((spec) => spec.name));

/**
 * Looks at a log of an unknown layout: which column may be what, by its header's words, its unit and its values, and the field map that
 * says so. Refused, in words: no text, no header row, nothing that a log has.
 */
export function proposeMap(file: string, bytes: Uint8Array): MapProposal | { readonly problem: string } {
  const decoded = decodeText(bytes, file);
  if (decoded.text === null) return { problem: decoded.findings[0]?.message ?? "it is no text" };
  const document = readCsv(decoded.text, file, KNOWN);
  if (document.header === null) return { problem: "it has no header row" };
  const headers = document.header.cells.map((cell) => cell.trim());
  if (/^[[{]/.test(headers[0] ?? "")) {
    return {
      problem:
        "it holds JSON, which has no columns to map: a .jsonl file is read as samples of OpenTrackIO (timing.timecode, lens.focusDistance, lens.tStop); log anything else as a table",
    };
  }
  if (headers.every((header) => header === "" || /^[\d.,:;+-]+$/.test(header))) {
    return {
      problem: `its first row holds values (${headers.slice(0, 3).join(", ")}), not column names: write a row of names above it, such as timecode,focus_m,t`,
    };
  }
  const decimal = decimalOf(document);
  const columns = withoutRivals(
    headers.map((header, i) => ({ header, ...guessColumn(sampleOf(document, i, header, decimal.sign)) })),
  );
  const yaml = yamlOf(columns, decimal.sign);
  const found = collectFindings();
  const maps = yaml === null ? [] : readFieldMaps(yaml, "kit/columns.yaml", found);
  const rate = { num: rateFor(document), denom: 1 };
  const log = readLensLog(logSource(file, bytes), { rate, dropFrame: false, maps, date: "" }, found);
  return {
    file,
    delimiter: document.delimiter,
    decimal: decimal.sign,
    decimalFrom: decimal.from,
    rows: document.rows.length,
    columns,
    yaml,
    preview: log === null || columns.every(({ column }) => column === null) ? { columns: [], rows: [] } : previewOf(log),
    findings: columns.every(({ column }) => column === null) ? [] : found.list(),
  };
}

function sampleOf(document: CsvDocument, column: number, header: string, sign: "." | ",") {
  const texts: string[] = [];
  const numbers: number[] = [];
  for (const row of document.rows.slice(0, SAMPLE_ROWS)) {
    const text = (row.cells[column] ?? "").trim();
    if (text === "") continue;
    texts.push(text);
    const number = /^\+?inf(inity)?$/i.test(text) ? null : readNumber(text, sign);
    if (number?.ok) numbers.push(number.value);
  }
  return { header, texts, numbers };
}

/** A decimal comma where some cell has one and no cell has a decimal point. */
function decimalOf(document: CsvDocument): { readonly sign: "." | ","; readonly from: string | null } {
  let comma: string | null = null;
  for (const row of document.rows.slice(0, SAMPLE_ROWS)) {
    for (const cell of row.cells) {
      const text = cell.trim();
      if (/^[+-]?\d*\.\d+$/.test(text)) return { sign: ".", from: text };
      if (comma === null && /^[+-]?\d+,\d+$/.test(text)) comma = text;
    }
  }
  return comma === null ? { sign: ".", from: null } : { sign: ",", from: comma };
}

/** Of two headers for one column the first keeps it; of several focus columns too, since a log has one focus. */
function withoutRivals<T extends ColumnGuess & { readonly header: string }>(columns: readonly T[]): readonly T[] {
  const taken = new Map<string, string>();
  return columns.map((column) => {
    if (column.column === null) return column;
    const kind = /^focus_/.test(column.column) ? "focus" : column.column;
    const first = taken.get(kind);
    if (first === undefined) taken.set(kind, column.header);
    return first === undefined
      ? column
      : { ...column, column: null, reasons: [`"${first}" is read as ${kind} already`], doubt: null };
  });
}

function yamlOf(columns: readonly (ColumnGuess & { readonly header: string })[], sign: "." | ","): string | null {
  const mapped = columns.filter(({ column }) => column !== null);
  if (mapped.length === 0 || (mapped.every(({ column, header }) => column === header) && sign === ".")) return null;
  const quoted = (text: string): string => JSON.stringify(text);
  const has = mapped.filter(({ column, header }) => column !== header);
  const names = (has.length === 0 ? mapped : has).map(({ header }) => quoted(header)).join(", ");
  return [
    "my-logs:",
    `  when: {header_has: [${names}]}`,
    ...(sign === "," ? ['  decimal: ","'] : []),
    "  columns:",
    ...mapped.map(({ header, column }) => `    ${quoted(header)}: ${column}`),
    ...(mapped.some(({ column }) => column === "camera" || column === "clip" || column === "slate")
      ? []
      : ["  # set: {camera: A}   if all these logs are of one camera and do not say so"]),
    "",
  ].join("\n");
}

/** Room for the highest frame number of the labels in the first rows. */
function rateFor(document: CsvDocument): number {
  let highest = 0;
  for (const row of document.rows.slice(0, SAMPLE_ROWS)) {
    for (const cell of row.cells) {
      const label = /^\d\d:\d\d:\d\d[:;.](\d\d)$/.exec(cell.trim());
      if (label !== null) highest = Math.max(highest, Number(label[1]));
    }
  }
  return [24, 25, 30, 48, 50, 60].find((rate) => highest < rate) ?? 120;
}

/** Readings in this project's units; an empty text is "not logged". */
function previewOf(log: LensLog): MapProposal["preview"] {
  const names = Object.keys(log.columns) as LogColumn[];
  const identities = Object.keys(log.rowKeys) as (keyof LensLog["rowKeys"])[];
  const rows = Array.from({ length: Math.min(PREVIEW_ROWS, log.rows) }, (_, row) => [
    timeOf(log, row),
    ...identities.map((key) => log.rowKeys[key]?.(row) ?? ""),
    ...names.map((name) => figure(name, (log.columns[name] as Float64Array)[row] as number)),
  ]);
  return { columns: [timingName(log), ...identities, ...names.map((name) => (name === "focus" ? "focus (m)" : name))], rows };
}

function timingName({ timing }: LensLog): string {
  return timing.kind === "time" ? "time_s" : timing.kind;
}

function timeOf(log: LensLog, row: number): string {
  if (log.rejected[row] === 1) return "rejected";
  const { timing } = log;
  if (timing.kind === "time") return String(timing.seconds[row]);
  const frame = timing.frames[row] as number;
  return timing.kind === "frame" ? String(frame) : formatTimecode(frame, log.rate, log.dropFrame);
}

function figure(name: LogColumn, value: number): string {
  if (Number.isNaN(value)) return "";
  if (name !== "focus") return String(Number(value.toPrecision(7)));
  const metres = metresFromDioptres(value);
  return metres === "inf" ? "inf" : String(Number(metres.toPrecision(5)));
}
