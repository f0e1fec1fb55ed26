import type { CellList } from "./cell-list.ts";

const LF = 10;
const CR = 13;
const SPACE = 32;
const QUOTE = 34;
const HASH = 35;
const MINUS = 45;
const POINT = 46;
const COMMA = 44;
const COLON = 58;
const SEMICOLON = 59;

/** Beyond the limit of findings for one file nobody reads on. */
const MOST_COMMENTS = 100;

/** What a column holds, for the scanner. */
export const NUMBER = 0;
export const TIMECODE = 1;
export const TEXT = 2;

/** Powers of ten that a double holds exactly: a mantissa of at most 15 digits divided by one is rounded once, as `Number` does. */
const POW10 = Array.from({ length: 23 }, (_, n) => 10 ** n);

/** Where the rows of a log go, and how they are read. All arrays have room for every row. */
export interface RowSink {
  /** `NUMBER`, `TIMECODE` or `TEXT` by column. */
  readonly kinds: Uint8Array;
  /** Byte of the delimiter. */
  readonly delimiter: number;
  readonly decimal: "." | ",";
  /** Frames of a second of timecode, and the labels that drop-frame leaves out of a minute. */
  readonly base: number;
  readonly drop: number;
  readonly numbers: readonly (Float64Array | null)[];
  readonly labels: Int32Array | null;
  /** Physical line by row. */
  readonly lines: Uint32Array;
  readonly odd: CellList;
  readonly widths: CellList;
  /** Lines of comments that have as many cells as a row. */
  readonly comments: number[];
}

/**
 * Reads the rows of one page of a log from byte `from` on, which stands in line `firstLine`, and puts them behind the `row` rows that
 * there are. Its lines end in LF or CRLF. The new number of rows, or -1 when the careful reader has to do the file.
 */
export function scanRows(bytes: Uint8Array, from: number, firstLine: number, firstRow: number, sink: RowSink): number {
  const { kinds, delimiter, base, drop, numbers, labels, lines, odd, widths } = sink;
  const size = bytes.length;
  const width = kinds.length;
  const decimal = sink.decimal === "," ? COMMA : POINT;
  const bareDecimal = decimal !== delimiter;
  let row = firstRow;
  let line = firstLine;
  let i = from;

  while (i < size) {
    let b = bytes[i] as number;
    if (b === HASH) {
      const start = i;
      while (i < size && bytes[i] !== LF) i++;
      if (width >= 3) noteComment(bytes, start, i, line, sink);
      i++;
      line++;
      continue;
    }
    let column = 0;
    let blank = true;
    for (;;) {
      const cellStart = i;
      const kind = column < width ? kinds[column] : TEXT;
      b = bytes[i] as number;
      let read = false;
      if (kind === NUMBER) {
        const quoted = b === QUOTE;
        if (quoted) b = bytes[++i] as number;
        while (b === SPACE) b = bytes[++i] as number;
        const negative = b === MINUS;
        if (negative) b = bytes[++i] as number;
        let mantissa = 0;
        let digits = 0;
        let places = -1;
        for (;;) {
          if (b >= 48 && b <= 57) {
            mantissa = mantissa * 10 + (b - 48);
            digits++;
            if (places >= 0) places++;
          } else if (b === decimal && places < 0 && (bareDecimal || quoted)) {
            places = 0;
          } else break;
          b = bytes[++i] as number;
        }
        while (b === SPACE) b = bytes[++i] as number;
        if (quoted) {
          if (b === QUOTE) b = bytes[++i] as number;
          else digits = 99;
        }
        if (i >= size || b === delimiter || b === LF || b === CR) {
          if (digits > 0 && digits <= 15) {
            const value = places > 0 ? mantissa / (POW10[places] as number) : mantissa;
            (numbers[column] as Float64Array)[row] = negative ? -value : value;
            read = true;
            blank = false;
          } else if (digits === 0 && places < 0 && !negative) {
            read = true;
          }
        }
      } else if (kind === TIMECODE) {
        const quoted = b === QUOTE;
        if (quoted) i++;
        const frame = labelAt(bytes, i, base, drop);
        if (frame >= 0) {
          i += bytes[i + 11] !== undefined && isDigit(bytes[i + 11] as number) ? 12 : 11;
          if (!quoted || bytes[i] === QUOTE) {
            if (quoted) i++;
            b = bytes[i] as number;
            if (i >= size || b === delimiter || b === LF || b === CR) {
              (labels as Int32Array)[row] = frame;
              read = true;
              blank = false;
            }
          }
        }
      }
      if (!read) {
        i = cellEnd(bytes, cellStart, delimiter);
        if (i < 0) return -1;
        if (kind === TIMECODE && delimiter === SEMICOLON && endsInSplitLabel(bytes, cellStart, i))
          i = cellEnd(bytes, i + 1, delimiter);
        if (!isBlank(bytes, cellStart, i)) {
          blank = false;
          if (kind !== TEXT) odd.add(row, column);
        }
      }
      column++;
      if (i < size && bytes[i] === delimiter) {
        i++;
        continue;
      }
      break;
    }
    if (i < size && bytes[i] === CR) i++;
    i++;
    if (!blank) {
      lines[row] = line;
      if (column !== width) widths.add(row, column);
      row++;
    }
    line++;
  }
  return row;
}

/** Remembers the lines of a few comments that have as many delimiters as a row: somebody may miss them. */
function noteComment(bytes: Uint8Array, start: number, end: number, line: number, sink: RowSink): void {
  if (sink.comments.length > MOST_COMMENTS) return;
  let cells = 1;
  for (let i = start; i < end; i++) if (bytes[i] === sink.delimiter) cells++;
  if (cells === sink.kinds.length) sink.comments.push(line);
}

/** Frame of the day of the label HH:MM:SS:FF at `at` (any of `: ; .` before the frames, two or three digits), or -1. See time/timecode.ts. */
function labelAt(bytes: Uint8Array, at: number, base: number, drop: number): number {
  const hours = twoDigits(bytes, at);
  const minutes = twoDigits(bytes, at + 3);
  const seconds = twoDigits(bytes, at + 6);
  let frames = twoDigits(bytes, at + 9);
  if (hours < 0 || minutes < 0 || seconds < 0 || frames < 0 || bytes[at + 2] !== COLON || bytes[at + 5] !== COLON) return -1;
  const sign = bytes[at + 8];
  if (sign !== COLON && sign !== SEMICOLON && sign !== POINT) return -1;
  const third = bytes[at + 11];
  if (third !== undefined && isDigit(third)) frames = frames * 10 + (third - 48);
  if (hours > 23 || minutes > 59 || seconds > 59 || frames >= base) return -1;
  if (frames < drop && seconds === 0 && minutes % 10 !== 0) return -1;
  const total = hours * 60 + minutes;
  return (total * 60 + seconds) * base + frames - drop * (total - Math.floor(total / 10));
}

function twoDigits(bytes: Uint8Array, at: number): number {
  const tens = (bytes[at] ?? 0) - 48;
  const ones = (bytes[at + 1] ?? 0) - 48;
  return tens >= 0 && tens <= 9 && ones >= 0 && ones <= 9 ? tens * 10 + ones : -1;
}

function isDigit(byte: number): boolean {
  return byte >= 48 && byte <= 57;
}

/** Index of the delimiter or line end after the cell that begins at `at`; -1 when its quotes need the careful reader. */
function cellEnd(bytes: Uint8Array, at: number, delimiter: number): number {
  const size = bytes.length;
  let i = at;
  if (bytes[i] === QUOTE) {
    i++;
    for (;;) {
      const b = bytes[i];
      if (b === undefined || b === LF || b === CR) return -1;
      if (b !== QUOTE) i++;
      else if (bytes[i + 1] === QUOTE) i += 2;
      else break;
    }
    i++;
    while (bytes[i] === SPACE) i++;
    const b = bytes[i];
    return b === undefined || b === delimiter || b === LF || b === CR ? i : -1;
  }
  while (i < size && bytes[i] !== delimiter && bytes[i] !== LF && bytes[i] !== CR) i++;
  return i;
}

/** A label without quotes in a table with semicolons, cut before its frames: HH:MM:SS, then a cell of two or three digits. */
function endsInSplitLabel(bytes: Uint8Array, start: number, end: number): boolean {
  let at = start;
  while (bytes[at] === SPACE) at++;
  if (end - at !== 8 || twoDigits(bytes, at) < 0 || twoDigits(bytes, at + 3) < 0 || twoDigits(bytes, at + 6) < 0) return false;
  if (bytes[at + 2] !== COLON || bytes[at + 5] !== COLON || bytes[end] !== SEMICOLON || twoDigits(bytes, end + 1) < 0) return false;
  let after = end + 3;
  if (isDigit(bytes[after] ?? 0)) after++;
  while (bytes[after] === SPACE) after++;
  const b = bytes[after];
  return b === undefined || b === SEMICOLON || b === LF || b === CR;
}

/** Spaces only, in quotes or not. */
function isBlank(bytes: Uint8Array, start: number, end: number): boolean {
  let from = start;
  let to = end;
  if (bytes[from] === QUOTE) {
    while (to > from && bytes[to - 1] === SPACE) to--;
    if (to - from < 2 || bytes[to - 1] !== QUOTE) return false;
    from++;
    to--;
  }
  while (from < to && (bytes[from] === SPACE || bytes[from] === 9)) from++;
  return from === to;
}
