import { codePointCount } from "../core/text-position.ts";
import { type SplitCell, splitLine } from "./delimiter.ts";
import { joinSplitTimecode, type LogPlan, type LogTable, labelBase } from "./log-table.ts";

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

const NUMBER = 0;
const TIMECODE = 1;
const TEXT = 2;

const DECODER = new TextDecoder("utf-8", { ignoreBOM: true });

/** Powers of ten that a double holds exactly: a mantissa of at most 15 digits divided by one is rounded once, as `Number` does. */
const POW10 = Array.from({ length: 23 }, (_, n) => 10 ** n);

/**
 * Reads the rows of a log straight from its UTF-8 bytes, beginning at byte `from` on physical line `firstLine`, without a string per
 * cell. Exact for what it reads; it gives `null`, and the careful reader has to do the file, when a quoted cell holds a line break,
 * a quote is never closed or stray, or a line ends in a lone CR.
 */
export function scanTable(bytes: Uint8Array, from: number, firstLine: number, plan: LogPlan): LogTable | null {
  const size = bytes.length;
  const width = plan.columns.length;
  const delimiter = plan.delimiter.charCodeAt(0);
  const decimal = plan.decimal === "," ? COMMA : POINT;
  const bareDecimal = decimal !== delimiter;
  const { base, drop } = labelBase(plan);
  const kinds = Uint8Array.from(plan.columns, (kind) => (kind === "number" ? NUMBER : kind === "timecode" ? TIMECODE : TEXT));
  const capacity = countLines(bytes, from);
  const numbers = plan.columns.map((kind) => (kind === "number" ? new Float64Array(capacity).fill(Number.NaN) : null));
  const labels = plan.columns.includes("timecode") ? new Int32Array(capacity).fill(-1) : null;
  const starts = new Uint32Array(capacity);
  const lines = new Uint32Array(capacity);
  const odd: { row: number; column: number }[] = [];
  const widths: { row: number; cells: number }[] = [];
  let row = 0;
  let line = firstLine;
  let i = from;

  while (i < size) {
    const start = i;
    let b = bytes[i] as number;
    if (b === HASH) {
      while (i < size && bytes[i] !== LF) i++;
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
        if (i < 0) return null;
        if (kind === TIMECODE && delimiter === SEMICOLON && endsInSplitLabel(bytes, cellStart, i))
          i = cellEnd(bytes, i + 1, delimiter);
        if (!isBlank(bytes, cellStart, i)) {
          blank = false;
          if (kind !== TEXT) odd.push({ row, column });
        }
      }
      column++;
      if (i < size && bytes[i] === delimiter) {
        i++;
        continue;
      }
      break;
    }
    if (i < size && bytes[i] === CR) {
      if (i + 1 < size && bytes[i + 1] !== LF) return null;
      i++;
    }
    i++;
    if (!blank) {
      starts[row] = start;
      lines[row] = line;
      if (column !== width) widths.push({ row, cells: column });
      row++;
    }
    line++;
  }

  const rows = row;
  // Cells are mostly asked for row by row: the last row is kept split.
  let splitRow = -1;
  let text = "";
  let cells: readonly SplitCell[] = [];
  const timecode = plan.columns.indexOf("timecode");
  return {
    rows,
    numbers: numbers.map((values) => values?.subarray(0, rows) ?? null),
    labels: labels?.subarray(0, rows) ?? null,
    odd,
    widths,
    line: (r) => lines[r] as number,
    cell(r, c) {
      if (r !== splitRow) {
        text = rowText(bytes, starts[r] as number);
        cells = joinSplitTimecode(splitLine(text, plan.delimiter), timecode, plan.delimiter);
        splitRow = r;
      }
      const cell = cells[c];
      const end = cells.at(-1)?.end ?? 0;
      const place = { file: plan.file, line: lines[r] as number, column: codePointCount(text, 0, cell?.start ?? end) + 1 };
      if (cell === undefined) return { text: "", place };
      return { text: cell.text, place: { ...place, length: codePointCount(text, cell.start, cell.end) } };
    },
  };
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

function countLines(bytes: Uint8Array, from: number): number {
  let count = 1;
  for (let i = bytes.indexOf(LF, from); i >= 0; i = bytes.indexOf(LF, i + 1)) count++;
  return count;
}

function rowText(bytes: Uint8Array, start: number): string {
  let end = bytes.indexOf(LF, start);
  if (end < 0) end = bytes.length;
  if (end > start && bytes[end - 1] === CR) end--;
  return DECODER.decode(bytes.subarray(start, end));
}
