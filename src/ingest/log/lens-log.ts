import { isUtf8 } from "node:buffer";
import type { FindingCollector } from "../../core/findings/collect.ts";
import { CSV } from "../../core/findings/csv.ts";
import { sha256 } from "../../core/hash.ts";
import { codePointCount } from "../../core/text-position.ts";
import { byteOrderMark, decodeText, wholeFile } from "../../csv/decode.ts";
import { delimiterOf, splitLine } from "../../csv/delimiter.ts";
import { type KeyLine, keyLines } from "../../csv/key-lines.ts";
import type { LogPlan } from "../../csv/log-table.ts";
import { parseLogTable } from "../../csv/parse-log.ts";
import { type CsvRow, readCsv } from "../../csv/read.ts";
import { scanTable } from "../../csv/scan.ts";
import type { FrameRate } from "../../time/frame-rate.ts";
import { type FieldMap, mapFor } from "./field-map.ts";
import { buildLog } from "./log-build.ts";
import { type LogHead, readLogHead } from "./log-keys.ts";
import { type HeaderCell, headerNames, type LogLayout, logLayout } from "./log-layout.ts";
import type { LensLog } from "./log-record.ts";

/** What a log is read with. */
export interface LogContext {
  readonly rate: FrameRate;
  readonly dropFrame: boolean;
  readonly maps: readonly FieldMap[];
  /** Date of the day's folder. */
  readonly date: string;
}

/** A log file as it was found. */
export interface LogSource {
  readonly file: string;
  readonly bytes: Uint8Array;
  readonly sha256: string;
}

/**
 * Reads one CSV log: key lines, header, rows, through the field map that fits. `null`, with a finding, for an empty file and for one
 * that is no text; a log without a timing column has all its rows rejected.
 */
export function readLensLog(source: LogSource, context: LogContext, found: FindingCollector): LensLog | null {
  const { file, bytes } = source;
  const head = isUtf8(bytes) && bytes.indexOf(0) < 0 ? headOf(bytes, file, context, found) : null;
  if (head !== null) {
    const opened = openLog(head.keys, head.header, head.delimiter, source, context, found);
    const table = scanTable(bytes, head.rowsFrom, head.firstLine, opened.plan);
    if (table !== null) return buildLog({ source, context, ...opened, table }, found);
    const { text, findings } = decodeText(bytes, file);
    if (text !== null) return withCarefulTable(text, source, context, opened, found);
    found.addAll(findings);
    return null;
  }
  const decoded = decodeText(bytes, file);
  found.addAll(decoded.findings);
  if (decoded.text === null) return null;
  const document = readCsv(decoded.text, file, headerNames(context.maps));
  found.addAll(document.findings);
  if (document.header === null) return emptyLog(file, found);
  const opened = openLog(document.keys, headerCells(document.header), document.delimiter, source, context, found);
  return buildLog({ source, context, ...opened, table: parseLogTable(document.rows, opened.plan) }, found);
}

/** A log whose header has been read. */
interface OpenedLog {
  readonly head: LogHead;
  readonly layout: LogLayout;
  readonly header: readonly HeaderCell[];
  readonly plan: LogPlan;
}

function openLog(
  keys: readonly KeyLine[],
  header: readonly HeaderCell[],
  delimiter: string,
  source: LogSource,
  context: LogContext,
  found: FindingCollector,
): OpenedLog {
  const { file } = source;
  const map = mapFor(
    context.maps,
    header.map((cell) => cell.text),
  );
  const head = readLogHead(
    keys,
    file,
    { rate: context.rate, dropFrame: context.dropFrame, decimal: map?.decimal ?? ".", set: map?.set ?? [] },
    found,
  );
  const layout = logLayout(header, file, map, found);
  const plan: LogPlan = {
    file,
    delimiter,
    decimal: head.decimal,
    columns: layout.kinds,
    rate: head.rate,
    dropFrame: head.dropFrame,
  };
  return { head, layout, header, plan };
}

function withCarefulTable(
  text: string,
  source: LogSource,
  context: LogContext,
  opened: OpenedLog,
  found: FindingCollector,
): LensLog | null {
  const document = readCsv(text, source.file, headerNames(context.maps));
  // The key lines were read, and told of, together with the header.
  found.addAll(document.findings.filter((finding) => finding.code !== CSV.keyTwice.code));
  return buildLog({ source, context, ...opened, table: parseLogTable(document.rows, opened.plan) }, found);
}

interface Head {
  readonly keys: readonly KeyLine[];
  readonly header: readonly HeaderCell[];
  readonly delimiter: string;
  readonly rowsFrom: number;
  readonly firstLine: number;
}

/** Key lines and header of a UTF-8 log without reading the rest; `null` when the careful reader has to look. */
function headOf(bytes: Uint8Array, file: string, context: LogContext, found: FindingCollector): Head | null {
  let at = byteOrderMark(bytes);
  const from = at;
  let line = 1;
  let end = at;
  for (; ; line++) {
    const lf = bytes.indexOf(10, at);
    end = lf < 0 ? bytes.length : lf;
    const text = decode(bytes.subarray(at, end)).replace(/\r$/, "");
    if (text.includes("\r")) return null;
    if (text.trim() !== "" && !text.startsWith("#")) break;
    if (lf < 0) return null;
    at = lf + 1;
  }
  const headerText = decode(bytes.subarray(at, end)).replace(/\r$/, "");
  const delimiter = delimiterOf(headerText, headerNames(context.maps));
  const cells = splitLine(headerText, delimiter);
  if (cells.some((cell) => cell.text.includes('"'))) return null;
  const { keys } = keyLines(decode(bytes.subarray(from, at)).replaceAll("\r\n", "\n"), file, found);
  const header = cells.map((cell) => ({
    text: cell.text,
    place: {
      file,
      line,
      column: codePointCount(headerText, 0, cell.start) + 1,
      length: codePointCount(headerText, cell.start, cell.end),
    },
  }));
  return { keys, header, delimiter, rowsFrom: Math.min(end + 1, bytes.length), firstLine: line + 1 };
}

function headerCells(header: CsvRow): readonly HeaderCell[] {
  return header.cells.map((text, i) => ({ text, place: header.place(i) }));
}

function emptyLog(file: string, found: FindingCollector): null {
  found.add(CSV.empty, {
    place: wholeFile(file),
    message: "the log has no header row",
    hint: "Copy the file again from the recorder, or take it out of the folder.",
  });
  return null;
}

function decode(bytes: Uint8Array): string {
  return new TextDecoder("utf-8", { ignoreBOM: true }).decode(bytes);
}

/** A source from bytes in memory. */
export function logSource(file: string, bytes: Uint8Array): LogSource {
  return { file, bytes, sha256: sha256(bytes) };
}
