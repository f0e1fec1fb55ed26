import type { FindingCollector } from "../../core/findings/collect.ts";
import { CSV } from "../../core/findings/csv.ts";
import { sha256 } from "../../core/hash.ts";
import { wholeFile } from "../../csv/decode.ts";
import type { KeyLine } from "../../csv/key-lines.ts";
import { LARGEST_TEXT_BYTES, MOST_LOG_NUMBERS } from "../../csv/limits.ts";
import type { LogPlan } from "../../csv/log-table.ts";
import { type PagedText, textOfBytes } from "../../csv/paged-text.ts";
import { parseLogTable } from "../../csv/parse-log.ts";
import { type CsvRow, readCsv } from "../../csv/read.ts";
import { scanTable } from "../../csv/scan.ts";
import type { FrameRate } from "../../time/frame-rate.ts";
import { type FieldMap, mapFor } from "./field-map.ts";
import { buildLog } from "./log-build.ts";
import { type LogHead, readLogHead } from "./log-keys.ts";
import { type HeaderCell, headerNames, type LogLayout, logLayout } from "./log-layout.ts";
import type { LensLog } from "./log-record.ts";
import { logStart } from "./log-start.ts";
import { isReadable } from "./log-text.ts";

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
  readonly text: PagedText;
  readonly sha256: string;
}

/**
 * Reads one CSV log: key lines, header, rows, through the field map that fits. `null`, with a finding, for an empty file and for one
 * that is no text; a log without a timing column has all its rows rejected. A page of the text at a time is in memory, except where its
 * quotes need the careful reader, which takes the text as a whole.
 */
export function readLensLog(source: LogSource, context: LogContext, found: FindingCollector): LensLog | null {
  const { file, text } = source;
  if (!isReadable(text, file, found)) return null;
  const head = logStart(text, file, headerNames(context.maps), found);
  if (head !== null) {
    const opened = openLog(head.keys, head.header, head.delimiter, source, context, found);
    if (hasTooManyNumbers(source, opened.plan, found)) return null;
    const table = scanTable(text, head.rows, opened.plan);
    if (table !== null) return buildLog({ source, context, ...opened, table }, found);
    return isSmallEnough(source, found) ? withCarefulTable(source, context, opened, found) : null;
  }
  if (!isSmallEnough(source, found)) return null;
  const document = readCsv(text.whole(), file, headerNames(context.maps));
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

function withCarefulTable(source: LogSource, context: LogContext, opened: OpenedLog, found: FindingCollector): LensLog | null {
  const document = readCsv(source.text.whole(), source.file, headerNames(context.maps));
  // The key lines were read, and told of, together with the header.
  found.addAll(document.findings.filter((finding) => finding.code !== CSV.keyTwice.code));
  return buildLog({ source, context, ...opened, table: parseLogTable(document.rows, opened.plan) }, found);
}

/** Rows times columns of numbers that would not fit in memory are told of before they are read. */
function hasTooManyNumbers(source: LogSource, plan: LogPlan, found: FindingCollector): boolean {
  const { lines } = source.text.survey;
  const columns = plan.columns.filter((kind) => kind !== "text").length;
  if (lines * columns <= MOST_LOG_NUMBERS) return false;
  found.add(CSV.tooLarge, {
    place: wholeFile(source.file),
    message: `the log has ${lines} lines with ${columns} columns that are read, and such logs are read up to ${Math.floor(MOST_LOG_NUMBERS / columns)} lines`,
    hint: "Split it by card or by take. A day at 120 frames a second has 10 million frames.",
  });
  return true;
}

/** The careful reader has the text as a whole in memory, which is too much for a very large log. */
function isSmallEnough({ file, text }: LogSource, found: FindingCollector): boolean {
  if (text.size <= LARGEST_TEXT_BYTES) return true;
  found.add(CSV.tooLarge, {
    place: wholeFile(file),
    message: `the log has ${Math.floor(text.size / 1e6)} MB and a quote that is left open or goes over a line end, and such logs are read up to ${LARGEST_TEXT_BYTES / 1e6} MB`,
    hint: "Export it without quotes, or split it by card or by take: `daybook check` then names the line of the quote.",
  });
  return false;
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

/** A source from bytes in memory. */
export function logSource(file: string, bytes: Uint8Array, stretch?: number): LogSource {
  return { file, text: textOfBytes(bytes, stretch), sha256: sha256(bytes) };
}
