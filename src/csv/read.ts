import Papa from "papaparse";
import type { Finding, Place } from "../core/finding.ts";
import { collectFindings, type FindingCollector } from "../core/findings/collect.ts";
import { CSV } from "../core/findings/csv.ts";
import { codePointCount, type LineIndex, lineIndex } from "../core/text-position.ts";
import { type Delimiter, delimiterOf, splitLine } from "./delimiter.ts";
import { type KeyLine, keyLines } from "./key-lines.ts";

/** One record: its cells with quotes resolved, not trimmed, and where each of them stands in the file. */
export interface CsvRow {
  readonly line: number;
  readonly cells: readonly string[];
  /** Place of the first character of a cell as written (its quote, when it is quoted); the end of the row beyond its last cell. */
  place(index: number): Place;
}

export interface CsvDocument {
  readonly file: string;
  readonly delimiter: Delimiter;
  readonly keys: readonly KeyLine[];
  /** `null` when the file has no header row. */
  readonly header: CsvRow | null;
  readonly rows: readonly CsvRow[];
  readonly findings: readonly Finding[];
}

/** After so many new starts the rest is read line by line, so that a hostile file costs linear time. */
const NEW_STARTS = 50;

/**
 * Reads a delimited text with its key lines, exact to the character: every cell knows its physical line and column.
 * The text must have LF line ends (see `decodeText`). Blank lines are skipped, lines that begin with # are comments.
 * A quote that never closes costs its own row only. `known` are the column names by which the delimiter is told.
 */
export function readCsv(text: string, file: string, known: ReadonlySet<string>): CsvDocument {
  const found = collectFindings();
  const lines = lineIndex(text);
  const head = keyLines(text, file, found);
  if (head.end >= text.length) return { file, delimiter: ",", keys: head.keys, header: null, rows: [], findings: found.list() };
  const delimiter = delimiterOf(lineFrom(text, head.end), known);
  const reader: Reader = { text, file, lines, delimiter, found, records: [] };
  readRecords(reader, head.end);
  const [header, ...rows] = reader.records;
  if (header !== undefined) tellOfComments(reader, head.end, header.cells.length);
  return { file, delimiter, keys: head.keys, header: header ?? null, rows, findings: found.list() };
}

interface Reader {
  readonly text: string;
  readonly file: string;
  readonly lines: LineIndex;
  readonly delimiter: Delimiter;
  readonly found: FindingCollector;
  readonly records: CsvRow[];
}

function readRecords(reader: Reader, from: number): void {
  let at = from;
  for (let starts = 0; starts < NEW_STARTS; starts++) {
    const stop = readUntilOpenQuote(reader, at);
    if (stop === null) return;
    if (stop.broken) readBrokenLine(reader, stop.at);
    at = stop.at + lineFrom(reader.text, stop.at).length + 1;
  }
  while (at < reader.text.length) {
    const line = lineFrom(reader.text, at);
    if (line.trim() !== "" && !line.startsWith("#")) pushRecord(reader, at, textsOf(splitLine(line, reader.delimiter)));
    at += line.length + 1;
  }
}

/** Where reading has to start again: after the line at `at`, which is a row with an open quote (`broken`) or a comment with a quote. */
interface Stop {
  readonly at: number;
  readonly broken: boolean;
}

function readUntilOpenQuote(reader: Reader, from: number): Stop | null {
  let start = from;
  let stop: Stop | null = null;
  Papa.parse<string[]>(from === 0 ? reader.text : reader.text.slice(from), {
    delimiter: reader.delimiter,
    newline: "\n",
    step: (result, parser) => {
      const at = start;
      const end = from + result.meta.cursor;
      start = end;
      const comment = reader.text.startsWith("#", at);
      if (comment || isBlank(result.data)) {
        if (!comment || at + lineFrom(reader.text, at).length + 1 >= end) return;
        stop = { at, broken: false };
      } else if (result.errors.some((error) => error.code === "MissingQuotes") || swallowsRows(reader, at, end)) {
        stop = { at, broken: true };
      }
      if (stop !== null) {
        parser.abort();
        return;
      }
      if (result.errors.some((error) => error.code === "InvalidQuotes")) tellOfStrayQuote(reader, at, end);
      pushRecord(reader, at, result.data);
    },
  });
  return stop;
}

function isBlank(cells: readonly string[]): boolean {
  return cells.every((cell) => cell.trim() === "");
}

/** A record over several lines, one of which has as many cells as the header: a quote was left open and took rows with it. */
function swallowsRows(reader: Reader, start: number, end: number): boolean {
  const header = reader.records[0];
  if (header === undefined || header.cells.length < 3) return false;
  const lines = reader.text.slice(start, end).replace(/\n$/, "").split("\n");
  return lines.slice(1).some((line) => line.split(reader.delimiter).length >= header.cells.length);
}

function readBrokenLine(reader: Reader, at: number): void {
  const line = lineFrom(reader.text, at);
  const cells = splitLine(line, reader.delimiter);
  const open = cells.find((cell) => cell.text.startsWith('"')) ?? cells[0];
  // Without its open quote the cell reads as it was meant, inch marks included.
  const texts = cells.map(({ text }) => (text.startsWith('"') ? text.slice(1).replaceAll('""', '"') : text));
  pushRecord(reader, at, texts);
  reader.found.add(CSV.openQuote, {
    place: { file: reader.file, ...reader.lines.at(at + (open?.start ?? 0)), length: 1 },
    message: `the quote before ${shorten(open?.text.slice(1) ?? line)} is never closed`,
    hint: 'Close the quote, or write the cell without quotes. Inside quotes an inch mark is written twice: "6\' 2""".',
  });
}

function textsOf(cells: readonly { readonly text: string }[]): string[] {
  return cells.map((cell) => cell.text);
}

function tellOfStrayQuote(reader: Reader, start: number, end: number): void {
  const position = reader.lines.at(start);
  reader.found.add(CSV.strayQuote, {
    place: { file: reader.file, ...position },
    message: `a quote inside a quoted cell is not written twice: ${shorten(reader.text.slice(start, end).trim())}`,
    hint: 'Inside quotes write a quote twice ("5\' 6""") or leave the outer quotes away.',
  });
}

function pushRecord(reader: Reader, start: number, cells: readonly string[]): void {
  const { text, file, lines, delimiter } = reader;
  const { line } = lines.at(start);
  let places: readonly { start: number; end: number }[] | null = null;
  reader.records.push({
    line,
    cells,
    place(index) {
      places ??= splitLine(recordFrom(text, start, cells, delimiter), delimiter);
      const cell = places[index];
      if (cell === undefined) {
        const { line: l, column } = lines.at(start + (places.at(-1)?.end ?? 0));
        return { file, line: l, column };
      }
      const length = codePointCount(text, start + cell.start, start + cell.end);
      return { file, ...lines.at(start + cell.start), length };
    },
  });
}

/** The text of a record: its line, and as many more as its cells have line breaks. */
function recordFrom(text: string, start: number, cells: readonly string[], delimiter: string): string {
  const breaks = cells.join(delimiter).split("\n").length - 1;
  let end = start - 1;
  for (let i = 0; i <= breaks; i++) {
    const next = text.indexOf("\n", end + 1);
    end = next < 0 ? text.length : next;
  }
  return text.slice(start, end);
}

/** Comments are skipped silently, but not one that looks like a row that somebody would miss. */
function tellOfComments(reader: Reader, from: number, cellCount: number): void {
  if (cellCount < 3) return;
  for (let at = from; ; ) {
    if (reader.text.startsWith("#", at)) {
      const line = lineFrom(reader.text, at);
      if (splitLine(line, reader.delimiter).length === cellCount) {
        reader.found.add(CSV.commentLikeRow, {
          place: { file: reader.file, ...reader.lines.at(at), length: codePointCount(line, 0, line.length) },
          message: `a line that begins with # is a comment, though it has ${cellCount} cells: ${shorten(line)}`,
          hint: "If it is a row, put its first cell in quotes; if it is a comment, all is well.",
        });
      }
    }
    const next = reader.text.indexOf("\n#", at);
    if (next < 0) return;
    at = next + 1;
  }
}

function lineFrom(text: string, start: number): string {
  const end = text.indexOf("\n", start);
  return text.slice(start, end < 0 ? text.length : end);
}

/** A value for a message: in quotes, cut when it is long. */
export function shorten(text: string): string {
  const flat = text.replace(/\s+/g, " ");
  return flat.length > 60 ? `"${flat.slice(0, 57)}..."` : `"${flat}"`;
}
