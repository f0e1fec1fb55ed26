import { isUtf8 } from "node:buffer";
import type { Finding, Place } from "../core/finding.ts";
import { CSV } from "../core/findings/csv.ts";
import { findingOf } from "../core/findings/kind.ts";
import { LARGEST_TEXT_BYTES, lineOfByte } from "./limits.ts";

/** Text of a file, or `null` when it is no text; in both cases with what there is to say about it. */
export interface DecodedText {
  /** Without byte order mark; every line ends in LF, so that lines and columns are those of the file. */
  readonly text: string | null;
  readonly findings: readonly Finding[];
}

/**
 * Turns the bytes of a text file into text. UTF-8 with or without a byte order mark is read as it is; UTF-16 is converted
 * with a remark; other bytes are read as Windows-1252 with a check. NUL bytes make it no text file: an error, no text; so does a size
 * above `largest`.
 */
export function decodeText(bytes: Uint8Array, file: string, largest = LARGEST_TEXT_BYTES): DecodedText {
  if (bytes.length > largest) return { text: null, findings: [tooLarge(file, bytes.length, largest)] };
  const utf16 = utf16Name(bytes);
  if (utf16 !== null) {
    const text = new TextDecoder(utf16).decode(bytes);
    return { text: normalLines(text), findings: [wasUtf16(file)] };
  }
  const nul = bytes.indexOf(0);
  if (nul >= 0) return { text: null, findings: [notText(file, { at: nul, line: lineOfByte(bytes, nul) }, isZip(bytes))] };
  if (isUtf8(bytes)) return { text: normalLines(new TextDecoder("utf-8").decode(bytes)), findings: [] };
  const text = normalLines(new TextDecoder("windows-1252").decode(bytes));
  const bad = firstBadByte(bytes);
  return { text, findings: [notUtf8(file, { at: bad, value: bytes[bad] ?? 0, line: lineOfByte(bytes, bad) })] };
}

/** The place of a file as a whole. */
export function wholeFile(file: string): Place {
  return { file, line: null, column: null };
}

/** Number of bytes of a UTF-8 byte order mark at the beginning: 3 or 0. */
export function byteOrderMark(bytes: Uint8Array): number {
  return bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf ? 3 : 0;
}

/** `null` for bytes that are no UTF-16: neither a mark nor the NULs that Latin letters in UTF-16 have. */
export function utf16Name(bytes: Uint8Array): "utf-16le" | "utf-16be" | null {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return "utf-16le";
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return "utf-16be";
  const sample = Math.min(bytes.length, 64) & ~1;
  if (sample < 8) return null;
  let even = 0;
  let odd = 0;
  for (let i = 0; i < sample; i += 2) {
    if (bytes[i] === 0) even++;
    if (bytes[i + 1] === 0) odd++;
  }
  if (odd === sample / 2 && even === 0) return "utf-16le";
  if (even === sample / 2 && odd === 0) return "utf-16be";
  return null;
}

function normalLines(text: string): string {
  return text.includes("\r") ? text.replace(/\r\n?/g, "\n") : text;
}

/** That a file is left out for its size. */
export function tooLarge(file: string, bytes: number, largest: number): Finding {
  const megabytes = (size: number): string => `${Math.floor(size / 1e6)} MB`;
  return findingOf(CSV.tooLarge, {
    place: wholeFile(file),
    message: `the file has ${megabytes(bytes)}, and such files are read up to ${megabytes(largest)}`,
    hint: "Split it, a log for example by card or by take, or take out what does not belong to this day.",
  });
}

/** That a file was converted from UTF-16. */
export function wasUtf16(file: string): Finding {
  return findingOf(CSV.utf16, {
    place: wholeFile(file),
    message: "the file is UTF-16 text and was converted",
    hint: "Save it as UTF-8 so that every program reads it.",
  });
}

/** Whether the bytes begin as those of a spreadsheet or an archive do. */
export function isZip(bytes: Uint8Array): boolean {
  return bytes[0] === 0x50 && bytes[1] === 0x4b;
}

/** That a file holds a NUL, at a byte counted from 0. */
export function notText(file: string, nul: { readonly at: number; readonly line: number }, zip: boolean): Finding {
  return findingOf(CSV.notText, {
    place: { file, line: nul.line, column: null },
    message: zip ? "the file is a spreadsheet or an archive, not text" : `byte ${nul.at + 1} is NUL, which text never holds`,
    hint: "Export the table as comma-separated UTF-8 text, or copy the file from the card again.",
  });
}

/** That a file was read as Windows-1252 for a byte, counted from 0, that UTF-8 does not have there. */
export function notUtf8(file: string, bad: { readonly at: number; readonly value: number; readonly line: number }): Finding {
  return findingOf(CSV.notUtf8, {
    place: { file, line: bad.line, column: null },
    message: `byte ${bad.at + 1} (0x${bad.value.toString(16)}) is not valid UTF-8; the file was read as Windows-1252`,
    hint: "Save the file as UTF-8, and look at the names with accents.",
  });
}

/** Index of the first byte after which the bytes stop being UTF-8, found by halving. */
export function firstBadByte(bytes: Uint8Array): number {
  let good = 0;
  let bad = bytes.length;
  while (bad - good > 1) {
    const middle = (good + bad) >> 1;
    if (isUtf8(wholeCharacters(bytes, middle))) good = middle;
    else bad = middle;
  }
  return bad - 1;
}

/** The first `length` bytes, without a character that is cut at the end. */
function wholeCharacters(bytes: Uint8Array, length: number): Uint8Array {
  let end = length;
  for (let back = 1; back <= 3 && back <= length; back++) {
    const byte = bytes[length - back] as number;
    if (byte < 0x80) break;
    if (byte >= 0xc0) {
      const need = byte >= 0xf0 ? 4 : byte >= 0xe0 ? 3 : 2;
      if (need > back) end = length - back;
      break;
    }
  }
  return bytes.subarray(0, end);
}
