/**
 * The rows of search as columns: a browser reads a few long lists and texts in a fraction of the time that many small lists take.
 * With them goes where each word of the remarks stands, worked out by the builder.
 */
import { AT, type SearchRows, type SearchTake } from "./search-rows.ts";
import { firstFrom, type WordPlaces, wordPlaces } from "./word-places.ts";

/** Texts one a line; `at` says which of them each row has, and is left out where each row has one of its own. */
interface PackedTexts {
  readonly texts: string;
  readonly at?: readonly number[];
}

interface PackedWords {
  /** One a line, in order. */
  readonly words: string;
  /** A line a word: the takes that have it, each as its distance from the one before, in base 36. */
  readonly takes: string;
}

export interface PackedRows extends Pick<SearchRows, "path" | "days" | "lenses"> {
  readonly count: number;
  /** In the order of `SearchTake`: numbers as they are, texts packed. */
  readonly columns: readonly (readonly (number | null)[] | PackedTexts)[];
  readonly remarkWords: PackedWords;
}

/** What the browser searches: the rows column by column. */
export interface SearchTable extends Pick<SearchRows, "path" | "days" | "lenses"> {
  /** Clips. */
  readonly count: number;
  /** One column of `SearchTake`, a value for each row. */
  column<K extends number>(index: K): readonly SearchTake[K][];
  row(place: number): SearchTake;
  readonly remarkWords: WordPlaces;
}

const BASE = 36;

export function packRows({ path, days, lenses, takes }: SearchRows): PackedRows {
  const columns = (takes[0] ?? []).map((_, i) => {
    const values = takes.map((take) => take[i] as string | number | null);
    return values.every((value) => typeof value === "string") ? packTexts(values) : (values as (number | null)[]);
  });
  const remarkWords = packWords(wordPlaces(takes.map((take) => take[AT.remarks])));
  return { path, days, lenses, count: takes.length, columns, remarkWords };
}

/** The rows as they were packed, but that a line end in a text is a space. */
export function unpackRows({ path, days, lenses, count, columns, remarkWords }: PackedRows): SearchTable {
  const lists = columns.map((column): readonly unknown[] => ("texts" in column ? unpackTexts(column) : column));
  return {
    path,
    days,
    lenses,
    count,
    column: <K extends number>(index: K) => (lists[index] ?? []) as readonly SearchTake[K][],
    row: (place) => lists.map((list) => list[place]) as unknown as SearchTake,
    remarkWords: unpackWords(remarkWords),
  };
}

function packTexts(values: readonly string[]): PackedTexts {
  const ids = new Map<string, number>();
  const at = values.map((value) => {
    const text = value.replace(/\n/g, " ");
    const id = ids.get(text) ?? ids.size;
    ids.set(text, id);
    return id;
  });
  const texts = [...ids.keys()].join("\n");
  return ids.size === values.length ? { texts } : { texts, at };
}

function unpackTexts({ texts, at }: PackedTexts): readonly string[] {
  const known = texts.split("\n");
  return at === undefined ? known : at.map((id) => known[id] as string);
}

function packWords({ words, places }: WordPlaces): PackedWords {
  const steps = (word: string) => {
    let before = 0;
    return Array.from(places(word), (place) => {
      const step = place - before;
      before = place;
      return step.toString(BASE);
    });
  };
  return { words: words.join("\n"), takes: words.map((word) => steps(word).join(" ")).join("\n") };
}

function unpackWords(packed: PackedWords): WordPlaces {
  const words = packed.words === "" ? [] : packed.words.split("\n");
  const takes = packed.takes.split("\n");
  return {
    words,
    places(word) {
      const at = firstFrom(words, word);
      if (words[at] !== word) return [];
      let place = 0;
      return (takes[at] as string).split(" ").map((step) => {
        place += Number.parseInt(step, BASE);
        return place;
      });
    },
  };
}
