/** Where each word stands: in which of a list of texts. */
import { wordKeys } from "../../core/search-words.ts";

export interface Postings {
  readonly words: readonly string[];
  /** Places of the texts that have the word, in order; a text that has it twice may be named twice. */
  places(word: string): Int32Array | null;
}

/** Flat arrays, counted first and filled then: a list a word would keep the garbage collector busy for longer than all else. */
export function postingsOf(texts: readonly string[]): Postings {
  const ids = new Map<string, number>();
  const counts: number[] = [];
  let tokens = new Int32Array(1024);
  let used = 0;
  // Per text: its number of words, then the id of each.
  for (const text of texts) {
    const keys = text === "" ? NONE : wordKeys(text);
    if (used + keys.length + 1 > tokens.length) tokens = enlarged(tokens, used + keys.length + 1);
    tokens[used++] = keys.length;
    for (const key of keys) {
      let id = ids.get(key);
      if (id === undefined) {
        id = ids.size;
        ids.set(key, id);
        counts.push(0);
      }
      counts[id] = (counts[id] as number) + 1;
      tokens[used++] = id;
    }
  }
  const starts = new Int32Array(counts.length + 1);
  counts.forEach((count, id) => {
    starts[id + 1] = (starts[id] as number) + count;
  });
  const places = new Int32Array(starts[counts.length] as number);
  const fill = starts.slice();
  let at = 0;
  for (let text = 0; text < texts.length; text++) {
    const end = at + 1 + (tokens[at] as number);
    for (at++; at < end; at++) {
      const id = tokens[at] as number;
      const slot = fill[id] as number;
      places[slot] = text;
      fill[id] = slot + 1;
    }
  }
  return {
    words: [...ids.keys()],
    places(word) {
      const id = ids.get(word);
      return id === undefined ? null : places.subarray(starts[id], starts[id + 1]);
    },
  };
}

const NONE: readonly string[] = [];

function enlarged(tokens: Int32Array<ArrayBuffer>, need: number): Int32Array<ArrayBuffer> {
  const larger = new Int32Array(Math.max(need, 2 * tokens.length));
  larger.set(tokens);
  return larger;
}
