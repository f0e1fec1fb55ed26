/** What a reader typed into the search box, taken apart. */
import { codeKey, fold, hasDigit, hyphenKey, type TimeSpan, timeSpan, words } from "./search-words.ts";

/** Field words, as in `lens:35`. */
const SEARCH_FIELDS = ["slate", "take", "camera", "scene", "clip", "roll", "day", "lens", "t", "note", "plate"] as const;
export type SearchField = (typeof SEARCH_FIELDS)[number];

interface Typed {
  /** As typed, for what is said back. */
  readonly text: string;
}
/** With a digit, or a single letter: compared exactly and from its beginning. */
export interface CodeTerm extends Typed {
  readonly kind: "code";
  readonly key: string;
  /** With hyphens where signs stand: `24b-3`; the same as `key` without signs. */
  readonly hyphened: string;
  /** The codes between the signs; one without signs. */
  readonly parts: readonly string[];
}
/** Letters only: compared through the words of the remarks, with room for a typing error. */
export interface WordTerm extends Typed {
  readonly kind: "word";
  readonly key: string;
  /** May be missing from a take: "the", "of". */
  readonly light: boolean;
}
export interface TimeTerm extends Typed {
  readonly kind: "time";
  readonly span: TimeSpan;
}
export interface StopTerm extends Typed {
  readonly kind: "stop";
  readonly t: number;
}
export interface FocalTerm extends Typed {
  readonly kind: "focal";
  readonly mm: number;
}
export interface FieldTerm extends Typed {
  readonly kind: "field";
  readonly field: Exclude<SearchField, "note" | "t">;
  readonly key: string;
}
/** `note:` with a code or a word: looked for in the remarks only. */
export interface NoteTerm extends Typed {
  readonly kind: "note";
  readonly key: string;
}
export type SearchTerm = CodeTerm | WordTerm | TimeTerm | StopTerm | FocalTerm | FieldTerm | NoteTerm;

const FIELD_WORDS: Readonly<Record<string, SearchField>> = {
  ...Object.fromEntries(SEARCH_FIELDS.map((field) => [field, field])),
  cam: "camera",
  stop: "t",
  remark: "note",
  remarks: "note",
};
/** Words that say what the next code is, when one follows: "take 3", "camera A". */
const LABELS: Readonly<Record<string, FieldTerm["field"]>> = {
  slate: "slate",
  take: "take",
  tk: "take",
  camera: "camera",
  cam: "camera",
  scene: "scene",
  clip: "clip",
  roll: "roll",
  day: "day",
  lens: "lens",
};
const LIGHT_WORDS = new Set("a an and at by for from in is it of on or the to with".split(" "));

const FIELD = /^(\p{L}+):(.*)$/u;
const STOP = /^t[/\u00a0]?(\d{1,2}(?:\.\d+)?)$/i;
const FOCAL = /^(\d+(?:\.\d+)?)mm$/i;
const DECIMAL = /^\d{1,2}\.\d+$/;
const DATE = /^\d{4}-\d{2}(?:-\d{2})?$/;
const NUMBER = /^\d+(?:\.\d+)?$/;
/** Ends of file names: a letter first, so that T2.8 has none. */
const EXTENSION = /^(?=.*\p{L})(?=.*\d)(.{3,})\.[a-z][a-z0-9]{1,4}$/iu;
const PATH_START = /^(?:[a-z]:[\\/]|[\\/~]|file:)/i;
/** A word, or a field word with what stands in quotes after it. */
const TYPED = /\p{L}+:["\u201c\u201d][^"\u201c\u201d]*["\u201c\u201d]?|[^\s,"\u201c\u201d]+/gu;
/** "T2,8" and "T 2,8": a comma that is no end of a word. */
const STOP_COMMA = /\b(t:?\s?\d{1,2}),(?=\d)/gi;

/**
 * The terms of a query in the order typed; all of them must hold for a take. Empty for nothing to look for.
 *
 * @example searchTerms("24b 3").map((term) => term.kind) // ["code", "code"]
 * @example searchTerms("lens:35 T2.8 rain").map((term) => term.kind) // ["field", "stop", "word"]
 */
export function searchTerms(query: string): readonly SearchTerm[] {
  const typed =
    fileName(query)
      .replace(/\b(\p{L}{1,8}):\s+/gu, "$1:")
      .replace(STOP_COMMA, "$1.")
      .match(TYPED) ?? [];
  const terms: SearchTerm[] = [];
  for (let i = 0; i < typed.length; i++) {
    const text = typed[i] as string;
    const next = typed[i + 1];
    const pair = next === undefined ? null : pairTerm(text, next);
    if (pair === null) terms.push(...wordTerms(text));
    else {
      terms.push(pair);
      i++;
    }
  }
  // A query of light words alone is looked for as it stands.
  return terms.every((term) => term.kind === "word" && term.light)
    ? terms.map((term) => (term.kind === "word" ? { ...term, light: false } : term))
    : terms;
}

/** Words before a colon that are no field words, such as "colour" of `colour:red`: they are looked for as any word. */
export function unknownFields(query: string): readonly string[] {
  return (fileName(query).match(TYPED) ?? []).flatMap((text) => {
    const name = FIELD.exec(text)?.[1];
    return name === undefined || FIELD_WORDS[fold(name)] !== undefined ? [] : [name];
  });
}

/** The name at the end of a pasted path; any other query as it is. */
function fileName(query: string): string {
  const text = query.trim().replace(/^"(.*)"$/, "$1");
  const [path = ""] = text.split(/[?#]/);
  const name =
    path
      .split(/[\\/]/)
      .filter((part) => part !== "")
      .at(-1) ?? "";
  return name !== path && (PATH_START.test(path) || EXTENSION.test(name)) ? name : query;
}

/** Two words that are one term: "take 3", "44 mm", "T 2.8". */
function pairTerm(text: string, next: string): SearchTerm | null {
  const whole = `${text} ${next}`;
  if (fold(next) === "mm" && NUMBER.test(text)) return { kind: "focal", text: whole, mm: Number(text) };
  if (fold(text) === "t" && DECIMAL.test(next)) return { kind: "stop", text: whole, t: Number(next) };
  const label = LABELS[fold(text)];
  const key = codeKey(next);
  if (label === undefined || timeSpan(next) !== null) return null;
  // "camera shake" is two words of a remark; "camera A" and "lens K26" are codes.
  return hasDigit(key) || (key.length === 1 && (label === "camera" || label === "roll"))
    ? { kind: "field", text: whole, field: label, key: label === "lens" ? hyphenKey(next) : key }
    : null;
}

function wordTerms(text: string): readonly SearchTerm[] {
  const span = timeSpan(text);
  if (span !== null) return [{ kind: "time", text, span }];
  const named = FIELD.exec(text);
  const field = named === null ? undefined : FIELD_WORDS[fold(named[1] ?? "")];
  if (field !== undefined) return fieldTerms(field, (named?.[2] ?? "").replace(/["\u201c\u201d]/g, "").trim(), text);
  if (DATE.test(text)) return [{ kind: "field", text, field: "day", key: text }];
  const stop = STOP.exec(text);
  if (stop !== null) return [{ kind: "stop", text, t: Number(stop[1]) }];
  const focal = FOCAL.exec(text);
  if (focal !== null) return [{ kind: "focal", text, mm: Number(focal[1]) }];
  if (DECIMAL.test(text)) return [{ kind: "stop", text, t: Number(text) }];
  const code = EXTENSION.exec(text)?.[1] ?? text;
  const key = codeKey(code);
  if (key === "") return [];
  if (hasDigit(key) || key.length === 1) {
    const hyphened = hyphenKey(code);
    return [{ kind: "code", text, key, hyphened, parts: hyphened.split("-") }];
  }
  // "half-speed" is looked for by its parts, as a remark may write it "half speed"; "R&D" and "don't" are one word.
  const parts = hyphenKey(text).split("-");
  const pieces = parts.some((part) => part.length === 1) ? [key] : parts;
  return pieces.map((part) => ({ kind: "word", text: part === key ? text : part, key: part, light: LIGHT_WORDS.has(part) }));
}

/** A field word with nothing after it yet looks for nothing. */
function fieldTerms(field: SearchField, value: string, text: string): readonly SearchTerm[] {
  if (value === "") return [];
  // What is no stop is nothing that a take has: its score is 0, and the answer names it.
  if (field === "t") return [{ kind: "stop", text, t: Number(value.replace(/^t/i, "")) }];
  if (field === "note") {
    const keys = value.split(/\s+/).flatMap(noteKeys);
    return keys.map((key) => ({ kind: "note", text: keys.length === 1 ? text : `note:${key}`, key }));
  }
  const key = field === "lens" || field === "day" ? hyphenKey(value.replace(/mm$/i, "")) : codeKey(value);
  return key === "" ? [] : [{ kind: "field", text, field, key }];
}

/** A code whole; "half-speed" by its parts, as a remark may write it "half speed". */
function noteKeys(text: string): readonly string[] {
  const [whole, ...parts] = words(text).map((word) => word.key);
  if (whole === undefined) return [];
  return hasDigit(whole) || parts.length === 0 ? [whole] : parts;
}
