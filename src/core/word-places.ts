/** Where each word stands: in which of a list of texts. Made by the builder for the remarks, by the browser for a few short lists. */
import { wordKeys } from "./search-words.ts";

export interface WordPlaces {
  /** Every word once, in the order of their code units. */
  readonly words: readonly string[];
  /** Places of the texts that have the word, in order, each once; none for a word that no text has. */
  places(word: string): readonly number[];
}

const NONE: readonly number[] = [];

export function wordPlaces(texts: readonly string[]): WordPlaces {
  const known = new Map<string, number[]>();
  texts.forEach((text, place) => {
    for (const key of text === "" ? [] : wordKeys(text)) {
      const places = known.get(key);
      if (places === undefined) known.set(key, [place]);
      else if (places.at(-1) !== place) places.push(place);
    }
  });
  return { words: [...known.keys()].sort(), places: (word) => known.get(word) ?? NONE };
}

/** Place of the first of some sorted words that is not before the key: the key itself, or what begins with it. */
export function firstFrom(words: readonly string[], key: string): number {
  let [from, to] = [0, words.length];
  while (from < to) {
    const middle = (from + to) >> 1;
    if ((words[middle] as string) < key) from = middle + 1;
    else to = middle;
  }
  return from;
}
