/** A remark cut to one line around what was found in it, in pieces that are marked or not. */
import { words } from "../../core/search-words.ts";

export interface Piece {
  readonly text: string;
  readonly marked: boolean;
}

/** Letters of a remark that are shown. */
const ROOM = 96;
/** Letters kept before the first mark when the beginning is cut off. */
const LEAD = 24;

export function markedRemark(remark: string, marks: ReadonlySet<string>, room = ROOM): readonly Piece[] {
  const ranges = words(remark).filter((word) => marks.has(word.key));
  const first = ranges[0];
  let from = 0;
  if (remark.length > room && first !== undefined && first.end > room) from = wordStart(remark, first.start - LEAD);
  const to = remark.length - from <= room ? remark.length : wordEnd(remark, from, from + room);
  const pieces: Piece[] = [];
  let at = from;
  const add = (text: string, marked: boolean) => {
    if (text !== "") pieces.push({ text, marked });
  };
  if (from > 0) add("\u2026 ", false);
  for (const { start, end } of ranges) {
    if (start < at || end > to) continue;
    add(remark.slice(at, start), false);
    add(remark.slice(start, end), true);
    at = end;
  }
  add(remark.slice(at, to), false);
  if (to < remark.length) add(" \u2026", false);
  return pieces;
}

/** The beginning of the word at or after a place, so that no word is cut. */
function wordStart(text: string, place: number): number {
  const space = text.indexOf(" ", Math.max(0, place));
  return space < 0 ? wholeSign(text, Math.max(0, place)) : space + 1;
}

/** The end of the last word before a place; the place itself where that would lose half, as in a Japanese text. */
function wordEnd(text: string, from: number, place: number): number {
  const space = text.lastIndexOf(" ", place);
  return space < (from + place) / 2 ? wholeSign(text, place) : space;
}

/** The place, or the one before where it lies inside a sign of two units. */
function wholeSign(text: string, place: number): number {
  return /^[\udc00-\udfff]/.test(text.charAt(place)) ? place - 1 : place;
}
