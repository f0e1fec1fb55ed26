/**
 * How search cuts text: one module for the builder, the browser and the tests, so that what is written and what is typed
 * fold alike. Codes of a set (`A012C003`, `24B`, `T2.8`, `10:21:05:12`) stay whole.
 */

/** A word of a text with its place in it. */
export interface Word {
  /** Folded: lower case, accents dropped, no signs inside. */
  readonly key: string;
  /** Where it stands in the text as written, in UTF-16 units. */
  readonly start: number;
  readonly end: number;
}

const PLAIN = /^[A-Za-z0-9]*$/;
const ASCII = /^[\0-\x7f]*$/;

/** Lower case without accents: what differs only by these is the same to search. */
export function fold(text: string): string {
  return ASCII.test(text) ? text.toLowerCase() : text.normalize("NFKD").replace(/\p{M}/gu, "").toLowerCase();
}

/**
 * A code as search compares it: folded, only letters and digits.
 *
 * @example codeKey("A012_C003") // "a012c003"
 * @example codeKey("2 PU") // "2pu"
 */
export function codeKey(text: string): string {
  if (PLAIN.test(text)) return text.toLowerCase();
  return fold(text).replace(/[^\p{L}\p{N}]+/gu, "");
}

/**
 * The code with single hyphens where signs or spaces stand, as in addresses.
 *
 * @example hyphenKey("KZ31-87") // "kz31-87"
 */
export function hyphenKey(text: string): string {
  return fold(text)
    .replace(/[^\p{L}\p{N}]+/gu, "-")
    .replace(/^-|-$/g, "");
}

/** The key with each number's leading zeros dropped. @example withoutZeros("a012c003") // "a12c3" */
export function withoutZeros(key: string): string {
  return key.replace(/(^|[^0-9])0+(?=[0-9])/g, "$1");
}

export function hasDigit(text: string): boolean {
  return /\p{N}/u.test(text);
}

/** Letters and digits with the signs that stand inside one word: `10:21:05:12`, `T2.8`, `14B/2`, `half-speed`, `don't`. */
const RUN = /[\p{L}\p{N}\p{M}]+(?:[.:;/_'\u2019-][\p{L}\p{N}\p{M}]+)*/gu;
const PART = /[\p{L}\p{N}\p{M}]+/gu;

/**
 * The words of a remark in order: each run whole and, when signs cut it, each of its parts.
 *
 * @example words("T2.1 wide-open").map((w) => w.key) // ["t2.1", "wideopen", "wide", "open"]
 */
export function words(text: string): readonly Word[] {
  const found: Word[] = [];
  for (const match of text.matchAll(RUN)) {
    const run = match[0];
    const end = match.index + run.length;
    found.push({ key: runKey(run), start: match.index, end });
    const parts = [...run.matchAll(PART)];
    // The parts of a number mean nothing alone: 2 and 8 are not in T2.8.
    if (parts.length < 2 || /^\p{L}{0,2}\p{N}+(?:[.:;]\p{N}+)+\p{L}{0,3}$/u.test(run)) continue;
    for (const part of parts) {
      const start = match.index + part.index;
      found.push({ key: fold(part[0]), start, end: start + part[0].length });
    }
  }
  return found;
}

/** Letters or digits on both sides of a sign that may stand inside a word; or anything beyond ASCII. */
const SIGNED = /[a-z0-9][.:;/_'-][a-z0-9]|[^\0-\x7f]/i;

/** The keys of `words` alone, for an index: nine of ten remarks need no more than one plain cut. */
export function wordKeys(text: string): readonly string[] {
  if (SIGNED.test(text)) return words(text).map((word) => word.key);
  return text.toLowerCase().match(/[a-z0-9]+/g) ?? [];
}

/** Key of one run: a decimal point and the colons of a timecode are kept, other signs are dropped. */
function runKey(run: string): string {
  const folded = fold(run);
  if (!/[.:;]/.test(folded)) return codeKey(run);
  return folded
    .replace(/;/g, ":")
    .replace(/(?<=\p{N})([.:])(?=\p{N})|[^\p{L}\p{N}]+/gu, (_, kept: string | undefined) => kept ?? "");
}

const TIMECODE = /^(\d{1,2}):([0-5]\d?)(?::([0-5]\d?)(?:[:;.](\d{1,3}))?)?:?$/;

/** A stretch of the day as texts `HH:MM:SS:FF` that compare in order; both ends belong to it. */
export interface TimeSpan {
  readonly from: string;
  readonly to: string;
  /** A whole timecode, to the frame. */
  readonly exact: boolean;
}

/**
 * Reads a timecode or the beginning of one; `;` or `.` may stand before the frames. `null` for anything else.
 *
 * @example timeSpan("14:22") // { from: "14:22:00:00", to: "14:22:59:999", exact: false }
 */
export function timeSpan(text: string): TimeSpan | null {
  const match = TIMECODE.exec(text);
  if (match === null || Number(match[1]) > 23) return null;
  const [, hours = "", minutes = "", seconds, frames] = match;
  const low = [two(hours), step(minutes, "0"), step(seconds ?? "", "0"), two(frames ?? "0")];
  const high = [two(hours), step(minutes, "9"), step(seconds ?? "", "9"), frames === undefined ? "999" : two(frames)];
  return { from: low.join(":"), to: high.join(":"), exact: frames !== undefined };
}

/** Minutes or seconds that may not be typed to the end yet: `2` may become 20 to 29. */
function step(typed: string, rest: "0" | "9"): string {
  if (typed === "") return rest === "0" ? "00" : "59";
  return typed.length === 1 ? typed + rest : typed;
}

function two(digits: string): string {
  return digits.padStart(2, "0");
}

/** A timecode as written on a take, so that two compare as texts. */
export function timeKey(timecode: string): string {
  return timecode.replace(/[;.]/g, ":");
}
