/** The words of remarks, standings and lens names: what a typed key stands for. Typing errors are found in MiniSearch's tree of words. */
import SearchableMap from "minisearch/SearchableMap";
import { hasDigit } from "../../core/search-words.ts";
import { firstFrom } from "../../core/word-places.ts";

export interface WordMatch {
  readonly word: string;
  /** 1 for the word itself, less for what begins with it, less again for a likely typing error. */
  readonly weight: number;
}

export interface Vocabulary {
  /** Words that a typed key stands for, itself first. */
  lookup(key: string): readonly WordMatch[];
  /** Makes the tree of words now rather than at the first word that is typed wrongly: for a moment in which nobody waits. */
  warm(): void;
}

/** One slip in four or five letters, two in eight. */
const FUZZY = 0.2;
const FUZZY_LETTERS = 4;
const INFIX_LETTERS = 3;

/** Words may come in any order and more than once; words that are sorted already cost little. */
export function vocabularyOf(some: readonly string[]): Vocabulary {
  const words = [...new Set(some)].sort();
  let tree: SearchableMap<null> | null = null;

  const has = (key: string) => words[firstFrom(words, key)] === key;

  function begunWith(key: string): readonly string[] {
    const from = firstFrom(words, key);
    let to = from;
    while (words[to]?.startsWith(key)) to++;
    return words.slice(from, to).filter((word) => !hasDigit(word));
  }

  const whole = () => {
    tree ??= SearchableMap.from(words.filter((word) => !hasDigit(word)).map((word) => [word, null]));
    return tree;
  };

  /** Nearest first; of two as near the longer, in which a slip weighs less. */
  function near(key: string): readonly string[] {
    return [...whole().fuzzyGet(key, Math.round(FUZZY * key.length))]
      .map(([word, [, slips]]) => ({ word, slips }))
      .sort((a, b) => a.slips - b.slips || b.word.length - a.word.length || (a.word < b.word ? -1 : 1))
      .map(({ word }) => word);
  }

  function lookup(key: string): readonly WordMatch[] {
    // 35 and 50 are no typing errors of each other: what has a digit is itself or nothing.
    if (hasDigit(key)) return has(key) ? [{ word: key, weight: 1 }] : [];
    const begun = begunWith(key);
    if (begun.length > 0) return begun.map((word) => ({ word, weight: word === key ? 1 : 0.7 }));
    if (key.length >= FUZZY_LETTERS) {
      const alike = [...new Set([...swapped(key).filter(has), ...near(key)])];
      if (alike.length > 0) return alike.map((word, i) => ({ word, weight: 0.45 / (1 + 0.1 * Math.min(i, 10)) }));
    }
    if (key.length < INFIX_LETTERS && /^[a-z]*$/.test(key)) return [];
    return words.filter((word) => word.includes(key) && !hasDigit(word)).map((word) => ({ word, weight: 0.3 }));
  }
  return { lookup, warm: () => void whole() };
}

/** The word with each pair of neighbours exchanged, the commonest slip of two hands. */
function swapped(key: string): readonly string[] {
  const letters = [...key];
  return letters.slice(1).map((letter, i) => [...letters.slice(0, i), letter, letters[i], ...letters.slice(i + 2)].join(""));
}
