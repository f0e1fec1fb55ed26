import { isUtf8 } from "node:buffer";
import { type ByteSource, eachStretch, STRETCH_BYTES } from "./byte-source.ts";
import { firstBadByte, utf16Name } from "./decode.ts";
import { LONGEST_LINE_BYTES, LONGEST_READ_LINE_BYTES, overlongLine } from "./limits.ts";

const LF = 10;
const CR = 13;

export type TextEncoding = "utf-8" | "utf-16le" | "utf-16be" | "windows-1252";

/** A stretch of a text that holds whole lines. */
export interface TextPage {
  /** Bytes of the file. */
  readonly start: number;
  readonly end: number;
  /** Physical line, from 1, that the page begins with. */
  readonly line: number;
}

/** A byte that a text does not have. */
export interface OddByte {
  /** From 0. */
  readonly at: number;
  readonly value: number;
  readonly line: number;
}

/** What one pass over the bytes of a text tells: where its lines are, and how it is to be decoded. */
export interface TextSurvey {
  readonly encoding: TextEncoding;
  readonly pages: readonly TextPage[];
  /** Number of physical lines, at least 1. */
  readonly lines: number;
  /** Whether a CR without LF ends a line somewhere. */
  readonly loneReturns: boolean;
  /** The first line over 1 MB. */
  readonly longLine: { readonly line: number; readonly bytes: number } | null;
  /** A line that does not end within what is read of a line; the pages end before it. */
  readonly endlessLine: number | null;
  /** The first NUL of a text that is not UTF-16; the pages end before it. */
  readonly nul: OddByte | null;
  /** The first byte that is not UTF-8, in a text that is read as Windows-1252. */
  readonly notUtf8: OddByte | null;
}

/**
 * Cuts a text into pages of whole lines and looks at every byte once. LF, CRLF and CR end a line.
 * @param everyByte gets all bytes in order, those after an error too: the hash of the file is made of them
 */
export function surveyText(source: ByteSource, everyByte: (bytes: Uint8Array) => void = () => {}): TextSurvey {
  const utf16 = utf16Name(source.read(0, 64));
  const pages: TextPage[] = [];
  const facts = { loneReturns: false, longLine: null, endlessLine: null, nul: null, notUtf8: null } as Facts;
  let line = 1;
  let start = 0;
  while (start < source.size && facts.nul === null && facts.endlessLine === null) {
    const page = nextPage(source, start, utf16);
    if (page === null) {
      facts.endlessLine = line;
      break;
    }
    if (page.length === 0) break;
    if (utf16 === null) lookAtBytes(page, start, line, facts);
    if (facts.nul !== null) break;
    everyByte(page);
    if (page.length > LONGEST_LINE_BYTES && facts.longLine === null) {
      const long = overlongLine(page);
      if (long !== null) facts.longLine = { line: line + long.line - 1, bytes: long.bytes };
    }
    pages.push({ start, end: start + page.length, line });
    line += utf16 === null ? lineEnds(page, facts) : lineEnds16(page, utf16);
    start += page.length;
  }
  eachStretch(source, everyByte, start);
  return { ...facts, encoding: utf16 ?? (facts.notUtf8 === null ? "utf-8" : "windows-1252"), pages, lines: line };
}

/** The lines from byte `start` on that end within a stretch, or within as many as the first line needs; `null` when it is endless. */
function nextPage(source: ByteSource, start: number, utf16: TextEncoding | null): Uint8Array | null {
  for (let length = source.stretch ?? STRETCH_BYTES; ; length *= 2) {
    const window = source.read(start, length);
    if (window.length < length || start + window.length >= source.size) return window;
    const cut = lineEndBefore(window, utf16);
    if (cut > 0) return window.subarray(0, cut);
    if (length > LONGEST_READ_LINE_BYTES) return null;
  }
}

type Facts = { -readonly [K in Exclude<keyof TextSurvey, "encoding" | "pages" | "lines">]: TextSurvey[K] };

function lookAtBytes(page: Uint8Array, start: number, line: number, facts: Facts): void {
  const odd = (at: number): OddByte => ({
    at: start + at,
    value: page[at] as number,
    line: line + lineEnds(page.subarray(0, at), { loneReturns: false }),
  });
  const nul = page.indexOf(0);
  if (nul >= 0) facts.nul = odd(nul);
  else if (facts.notUtf8 === null && !isUtf8(page)) facts.notUtf8 = odd(firstBadByte(page));
}

/** Length of the lines that are complete: up to the last LF, or, where there is none, up to the last CR that no LF may follow. */
function lineEndBefore(window: Uint8Array, utf16: TextEncoding | null): number {
  if (utf16 !== null) return lastUnit(window, LF, utf16, window.length) || lastUnit(window, CR, utf16, window.length - 2);
  const lf = window.lastIndexOf(LF);
  return lf >= 0 ? lf + 1 : window.subarray(0, -1).lastIndexOf(CR) + 1;
}

/** Offset after the last UTF-16 unit of this value that ends at or before `end`; 0 without one. */
function lastUnit(window: Uint8Array, value: number, encoding: TextEncoding, end: number): number {
  const low = encoding === "utf-16le" ? 0 : 1;
  for (let at = (end & ~1) - 2; at >= 0; at -= 2) {
    if (window[at + low] === value && window[at + 1 - low] === 0) return at + 2;
  }
  return 0;
}

/** Number of line ends, and whether a CR is one by itself. */
function lineEnds(page: Uint8Array, facts: { loneReturns: boolean }): number {
  let count = 0;
  for (let i = page.indexOf(LF); i >= 0; i = page.indexOf(LF, i + 1)) count++;
  for (let i = page.indexOf(CR); i >= 0; i = page.indexOf(CR, i + 1)) {
    if (page[i + 1] === LF) continue;
    count++;
    facts.loneReturns = true;
  }
  return count;
}

function lineEnds16(page: Uint8Array, encoding: TextEncoding): number {
  const low = encoding === "utf-16le" ? 0 : 1;
  let count = 0;
  let before = 0;
  for (let at = 0; at + 1 < page.length; at += 2) {
    const unit = page[at + 1 - low] === 0 ? (page[at + low] as number) : -1;
    if (unit === CR || (unit === LF && before !== CR)) count++;
    before = unit;
  }
  return count;
}
