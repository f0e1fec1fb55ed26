/** How well one term of a query fits one take; 0 is not at all. Codes come before figures, figures before words. */
import type { CodeTerm, FieldTerm, FocalTerm, StopTerm, TimeTerm } from "../../core/search-query.ts";
import type { SearchDay } from "../../core/search-rows.ts";
import { timeKey, withoutZeros } from "../../core/search-words.ts";
import type { Code, Columns, Entry, LensKeys } from "./entries.ts";

/** A typed code, worked out once a query. */
export interface TypedCode {
  readonly key: string;
  readonly short: string;
  /** A number that may be a focal length; `null` for any other code. */
  readonly number: number | null;
  /** More than a number or a letter: it may be a clip, a roll or a lens. */
  readonly long: boolean;
}

export function typedCode(key: string): TypedCode {
  const number = isNumber(key) ? Number(key) : null;
  return { key, short: withoutZeros(key), number, long: key.length > 1 && number === null };
}

/** A code typed in one piece, against every code of the take. */
export function codeScore({ key, short, number, long }: TypedCode, e: Entry, lens: LensKeys | undefined, c: Columns): number {
  const { slate, slateTake, clip, roll } = e;
  if (slate !== "" && key.startsWith(slate)) {
    if (key.length === slate.length) return 60;
    if (key.startsWith(slateTake) && (key.length === slateTake.length || key === slateTake + e.camera)) return 96;
  }
  if (long) {
    if (clip.key !== "") {
      if (key === clip.key) return 100;
      if (short === clip.short) return 98;
      if (key.endsWith(slateTake) && key === e.camera + slateTake) return 94;
      if (short === clip.bare) return 92;
      if (key === clip.end || key === clip.endShort) return 52;
      if (clip.key.startsWith(key) || clip.short.startsWith(short)) return key === roll.key || short === roll.short ? 55 : 50;
    }
    if (roll.key !== "" && (key === roll.key || short === roll.short)) return 55;
    if (lens?.id.startsWith(key)) return key.length === lens.id.length ? 51 : 36;
  }
  if (slate.startsWith(key)) return isDigit(slate.charCodeAt(key.length)) ? 24 : 42;
  if (key.length > slate.length && slateTake.startsWith(key)) return 44;
  if (key === e.scene) return 35;
  if (number !== null && isFocal(number, e, 0.25, c) === "whole") return 30;
  if (key === e.plateOf) return 28;
  if (key === e.camera) return 20;
  if (key === e.take) return 15;
  return e.takeParts.length > 0 && e.takeParts.includes(key) ? 12 : 0;
}

/** A code with signs in it, such as `14b-2`, `a-14b-2`, `KZ31-87` or `A012_C003`; `parts` scores each of its pieces. */
export function signedCodeScore(
  term: CodeTerm,
  e: Entry,
  lens: LensKeys | undefined,
  c: Columns,
  parts: () => readonly number[],
): number {
  const address = c.address[e.place] as string;
  // "14b-2" of address a-14b-2
  const tail = address.slice(e.camera.length + 1);
  if (term.hyphened === address || term.hyphened === tail) return 97;
  if (term.key === e.clip.key || (e.clip.key !== "" && withoutZeros(term.key) === e.clip.short)) return 98;
  // A file is named by its clip with more behind it: A012C003_261006_AB12.
  const first = term.parts[0] ?? "";
  if (e.clip.key !== "" && (first === e.clip.key || withoutZeros(first) === e.clip.short)) return 90;
  if (lens !== undefined && lens.hyphened === term.hyphened) return 51;
  if (address.startsWith(term.hyphened) || tail.startsWith(term.hyphened)) return 44;
  if (lens?.hyphened.startsWith(term.hyphened)) return 36;
  const scores = parts();
  return scores.includes(0) ? 0 : Math.max(...scores) / 2;
}

/** Slate, take and camera named by separate terms: together they are an address. */
export function addressBonus(keys: readonly string[], e: Entry): number {
  const slate = keys.indexOf(e.slate);
  if (slate < 0) return 0;
  // "14 2 B" is slate 14, "14 b 2" rather slate 14B: the take comes right after its slate.
  if (keys[slate + 1] !== e.take) return 0;
  return keys.includes(e.camera, slate + 2) ? 90 : 80;
}

export function timeScore(term: TimeTerm, { place }: Entry, c: Columns): number {
  const { from, to, exact } = term.span;
  const [timeIn, timeOut] = [timeKey(c.timecodeIn[place] as string), timeKey(c.timecodeOut[place] as string)];
  if (timeIn === "") return 0;
  if (timeIn >= from && timeIn <= to) return exact ? 110 : 60;
  if (timeOut === "") return 0;
  // A take across midnight runs to the end of the day and on from its beginning.
  const runs = timeOut > timeIn ? timeIn <= to && timeOut > from : timeIn <= to || timeOut > from;
  return runs ? (exact ? 100 : 40) : 0;
}

/** A third of a stop away is another stop: the label and what a log says of it lie closer. */
const STOP_TOLERANCE = 0.1;

export function stopScore(term: StopTerm, { place }: Entry, c: Columns): number {
  const [widest, deepest] = [c.widest[place] ?? null, c.deepest[place] ?? null];
  if (widest === null || deepest === null) return 0;
  const above = 2 * Math.log2(term.t / widest);
  const below = 2 * Math.log2(deepest / term.t);
  if (!(above >= -STOP_TOLERANCE && below >= -STOP_TOLERANCE)) return 0;
  return Math.abs(above) <= STOP_TOLERANCE && Math.abs(below) <= STOP_TOLERANCE ? 40 : 25;
}

export function focalScore(term: FocalTerm, e: Entry, c: Columns): number {
  const fit = isFocal(term.mm, e, 0.5, c);
  return fit === "whole" ? 40 : fit === "inside" ? 25 : 0;
}

function isFocal(mm: number, { place }: Entry, tolerance: number, c: Columns): "whole" | "inside" | null {
  const [min, max] = [c.focalMin[place] ?? null, c.focalMax[place] ?? null];
  if (min === null || max === null || mm < min - tolerance || mm > max + tolerance) return null;
  return max - min <= 2 * tolerance ? "whole" : "inside";
}

/** A field word against a take; `dayScores` has the score of each day of the table. */
export function fieldScore(
  term: FieldTerm,
  e: Entry,
  lens: LensKeys | undefined,
  c: Columns,
  dayScores: readonly number[],
): number {
  const { key } = term;
  switch (term.field) {
    case "slate":
      return whole(key === e.slate) || half(begins(e.slate, key));
    case "take":
      return whole(key === e.take) || half(e.takeParts.includes(key));
    case "camera":
      return whole(key === e.camera);
    case "scene":
      return whole(key === e.scene) || half(begins(e.scene, key));
    case "clip":
      return whole(isCode(key, e.clip) || isClipEnd(key, e.clip)) || half(begins(e.clip.key, key));
    case "roll":
      return whole(isCode(key, e.roll)) || half(begins(e.roll.key, key));
    case "plate":
      return plateScore(key, e, c);
    case "lens":
      return lensScore(key, e, lens, c);
    case "day":
      return dayScores[c.day[e.place] as number] ?? 0;
  }
}

/** Days are few: each is looked at once a query. */
export function dayScoresOf(term: FieldTerm, days: readonly SearchDay[]): readonly number[] {
  return term.field === "day" ? days.map((day) => whole(isDay(term.key, day))) : [];
}

function plateScore(key: string, e: Entry, c: Columns): number {
  const plate = c.plate[e.place] ?? "";
  if (plate === "") return 0;
  return whole(key === e.plateOf || key === e.slate) || half(plate.startsWith(key) || key === "yes" || key === "any");
}

/** "35", and "3.5" as it is folded. */
const FOCAL = /^\d+(?:-\d+)?$/;

function lensScore(key: string, e: Entry, lens: LensKeys | undefined, c: Columns): number {
  if (lens !== undefined && (key === lens.hyphened || key === lens.id || key === lens.name)) return 50;
  if (isDigit(key.charCodeAt(0)) && FOCAL.test(key))
    return focalScore({ kind: "focal", text: key, mm: Number(key.replace("-", ".")) }, e, c);
  if (lens === undefined) return 0;
  return half(begins(lens.hyphened, key) || begins(lens.name, key) || lens.words.includes(key));
}

/** "9", "2026-10-06", "10-06"; the day of the month where a day has no number. */
function isDay(key: string, [date, , number]: SearchDay): boolean {
  if (isNumber(key)) return Number(key) === (number ?? Number(date.slice(8)));
  return date.startsWith(key) || date.endsWith(`-${key}`);
}

/** The whole code, the code without its zeros, or, for a number, the number in it. */
function isCode(key: string, code: Code): boolean {
  if (code.key === "") return false;
  const short = withoutZeros(key);
  return key === code.key || short === code.short || short === code.bare;
}

/** "c003", "c3", "003" or "3" of A012C003. */
function isClipEnd(key: string, { end, endShort }: Code): boolean {
  if (end === "" || key === "") return false;
  return key === end || key === endShort || withoutZeros(key) === endShort.slice(1);
}

function begins(code: string, key: string): boolean {
  return code.length > key.length && code.startsWith(key);
}

function isDigit(unit: number): boolean {
  return unit >= 48 && unit <= 57;
}

function isNumber(key: string): boolean {
  return /^\d+$/.test(key);
}

function whole(fits: boolean): number {
  return fits ? 50 : 0;
}

function half(fits: boolean): number {
  return fits ? 30 : 0;
}
