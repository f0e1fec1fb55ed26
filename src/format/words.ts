/** Counts and lists in sentences. */
import { thousands } from "./number.ts";
import { NBSP } from "./space.ts";

/**
 * A count with its word: `1 take`, `17 takes`, `no takes` is never written. A plural that is not made with s is given.
 *
 * @example plural(17, "take") // "17 takes"
 */
export function plural(count: number, one: string, many = `${one}s`): string {
  return `${thousands(count)}${NBSP}${Math.abs(count) === 1 ? one : many}`;
}

const NUMBER_WORDS = "no one two three four five six seven eight nine ten eleven twelve".split(" ");

/** A small count in words, for titles: `four pulls`, `no pulls`; above twelve in figures. */
export function countWords(count: number, one: string, many = `${one}s`): string {
  const word = NUMBER_WORDS[count];
  return word === undefined ? plural(count, one, many) : `${word} ${count === 1 ? one : many}`;
}

/**
 * A list in a sentence, without a comma before the last: `a, b and c`. Empty for nothing.
 *
 * @example listWords(["24A", "24B", "31"]) // "24A, 24B and 31"
 */
export function listWords(items: readonly string[], last: "and" | "or" = "and"): string {
  if (items.length < 2) return items[0] ?? "";
  return `${items.slice(0, -1).join(", ")} ${last} ${items.at(-1)}`;
}

/** A sentence's first letter in capitals; the rest as it is. */
export function sentenceCase(text: string): string {
  const first = text.codePointAt(0);
  if (first === undefined) return text;
  const letter = String.fromCodePoint(first);
  return letter.toUpperCase() + text.slice(letter.length);
}
