/** The words of remarks, standings and lens names, each with the places it stands in; typing errors are found by MiniSearch. */
import MiniSearch from "minisearch";
import { hasDigit } from "../../core/search-words.ts";

export interface WordMatch {
  readonly word: string;
  /** 1 for the word itself, less for what begins with it, less again for a likely typing error. */
  readonly weight: number;
}

export interface Vocabulary {
  /** Words that a typed key stands for, itself first. */
  lookup(key: string): readonly WordMatch[];
  has(key: string): boolean;
}

const FUZZY = 0.2;
const FUZZY_LETTERS = 4;
const INFIX_LETTERS = 3;

export function vocabularyOf(words: ReadonlySet<string>): Vocabulary {
  const plain = [...words].filter((word) => !hasDigit(word));
  // One document a word: a few thousand words take a tenth of the time that every remark would take.
  const index = new MiniSearch<{ id: number; word: string }>({
    fields: ["word"],
    tokenize: (text) => [text],
    processTerm: (term) => term,
  });
  index.addAll(plain.map((word, id) => ({ id, word })));
  const ask = (key: string, options: { readonly prefix?: boolean; readonly fuzzy?: number }) =>
    index.search(key, options).map(({ id }) => plain[id as number] as string);

  function lookup(key: string): readonly WordMatch[] {
    // 35 and 50 are no typing errors of each other: what has a digit is itself or nothing.
    if (hasDigit(key)) return words.has(key) ? [{ word: key, weight: 1 }] : [];
    const begun = ask(key, { prefix: true });
    if (begun.length > 0) return begun.map((word) => ({ word, weight: word === key ? 1 : 0.7 }));
    if (key.length >= FUZZY_LETTERS) {
      const near = [...swapped(key).filter((word) => words.has(word)), ...ask(key, { fuzzy: FUZZY })];
      if (near.length > 0) return [...new Set(near)].map((word, i) => ({ word, weight: 0.45 / (1 + 0.1 * Math.min(i, 10)) }));
    }
    if (key.length < INFIX_LETTERS && /^[a-z]*$/.test(key)) return [];
    return plain.filter((word) => word.includes(key)).map((word) => ({ word, weight: 0.3 }));
  }
  return { lookup, has: (key) => words.has(key) };
}

/** The word with each pair of neighbours exchanged, the commonest slip of two hands. */
function swapped(key: string): readonly string[] {
  const letters = [...key];
  return letters.slice(1).map((letter, i) => [...letters.slice(0, i), letter, letters[i], ...letters.slice(i + 2)].join(""));
}
