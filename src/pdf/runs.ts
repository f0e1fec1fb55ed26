/**
 * Text as written by people, cut into runs that a face can show: letters that the face lacks go to the sans face, and what
 * no face has becomes an open square, so that a missing letter is seen and never silently dropped. Words written from
 * right to left stay together and come in reading order.
 */
import type { Face } from "./fonts.ts";

export interface TextRun {
  readonly face: Face;
  readonly text: string;
}

/** Stands for a character that no embedded face has. */
export const MISSING_SIGN = "\u25A1";

const PLAIN = /^[\x20-\x7e\xa0-\xac\xae-\xff]*$/;
const INVISIBLE = /[\p{Cf}\p{Variation_Selector}]/gu;
const CONTROL = /[\p{Cc}\u2028\u2029]+/gu;
const RIGHT_TO_LEFT = /[\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufefc\u{10800}-\u{10fff}\u{1e800}-\u{1efff}]/u;
const LEFT_TO_RIGHT = /\p{L}/u;

/** One line of text without control characters, joiners and direction marks; composed, so that accents find their glyph. */
export function cleanText(text: string): string {
  if (PLAIN.test(text)) return text;
  return text.replace(CONTROL, " ").replace(INVISIBLE, "").normalize("NFC");
}

/** Runs of a cleaned line in the order they are drawn, from left to right. */
export function textRuns(text: string, face: Face, has: (face: Face, codePoint: number) => boolean): readonly TextRun[] {
  if (PLAIN.test(text)) return text === "" ? [] : [{ face, text }];
  return directionRuns(text).flatMap((part) => faceRuns(part, face, has));
}

function faceRuns(text: string, face: Face, has: (face: Face, codePoint: number) => boolean): TextRun[] {
  const runs: { face: Face; text: string }[] = [];
  for (const character of text) {
    const codePoint = character.codePointAt(0) as number;
    const known = has(face, codePoint) ? face : has("sans", codePoint) ? "sans" : null;
    const last = runs.at(-1);
    const next = known ?? "sans";
    const shown = known === null ? MISSING_SIGN : character;
    if (last?.face === next) last.text += shown;
    else runs.push({ face: next, text: shown });
  }
  return runs;
}

/** Splits at changes of direction; within right-to-left words and the numbers between them the order is turned round. */
function directionRuns(text: string): readonly string[] {
  if (!RIGHT_TO_LEFT.test(text)) return [text];
  const parts: string[] = [];
  let rest = text;
  while (rest !== "") {
    const start = rest.search(RIGHT_TO_LEFT);
    if (start < 0) {
      parts.push(rest);
      break;
    }
    if (start > 0) parts.push(rest.slice(0, start));
    const end = endOfRightToLeft(rest, start);
    parts.push(...turned(rest.slice(start, end)));
    rest = rest.slice(end);
  }
  return parts;
}

function endOfRightToLeft(text: string, start: number): number {
  let end = start;
  let at = start;
  for (const character of text.slice(start)) {
    at += character.length;
    if (RIGHT_TO_LEFT.test(character)) end = at;
    else if (LEFT_TO_RIGHT.test(character) && !/\p{M}/u.test(character)) break;
    else if (/\p{M}/u.test(character)) end = at;
  }
  return end;
}

function turned(text: string): readonly string[] {
  return (text.match(/\s+|[\d.,:]+|[^\s\d.,:]+/g) ?? []).reverse();
}
