/** Takes made ready for the scan: every code folded once, every distinct text once. */
import type { SearchRows, SearchTake } from "../../core/search-rows.ts";
import { codeKey, hyphenKey, timeKey, withoutZeros, wordKeys } from "../../core/search-words.ts";
import { type Postings, postingsOf } from "./postings.ts";
import { type Vocabulary, vocabularyOf } from "./vocabulary.ts";

export interface Entry {
  readonly row: SearchTake;
  readonly slate: string;
  readonly take: string;
  /** "2" and "pu" of take "2 PU"; empty for a take in one piece. */
  readonly takeParts: readonly string[];
  readonly camera: string;
  readonly scene: string;
  readonly roll: Code;
  readonly clip: Code;
  readonly slateTake: string;
  /** "14b-2" of address a-14b-2. */
  readonly addressTail: string;
  readonly timeIn: string;
  readonly timeOut: string;
  readonly plateOf: string;
  /** Places in the lists of `Prepared`; -1 for no lens. */
  readonly lens: number;
  readonly standing: number;
}

/** A roll or a clip in the forms that people type. */
export interface Code {
  readonly key: string;
  /** Without leading zeros: "a12c3". */
  readonly short: string;
  /** That without its first letter: "12c3". */
  readonly bare: string;
  /** The last letter with its number, as it is and without zeros: "c003", "c3"; empty when that is the whole code. */
  readonly end: string;
  readonly endShort: string;
}

export interface LensKeys {
  readonly id: string;
  readonly hyphened: string;
  readonly words: readonly string[];
}

export interface Prepared {
  readonly rows: SearchRows;
  readonly entries: readonly Entry[];
  readonly lenses: readonly LensKeys[];
  /** Made when it is asked for first: codes are found without it. */
  readonly text: () => TextIndex;
}

export interface TextIndex {
  readonly vocabulary: Vocabulary;
  /** Places of a word: takes whose remark has it, standings, lenses. */
  readonly inRemarks: Postings;
  readonly inStandings: Postings;
  readonly inLenses: Postings;
}

export function prepare(rows: SearchRows): Prepared {
  const key = remembered(codeKey);
  const clip = codeForms();
  const roll = remembered(clip);
  const takeParts = remembered((take): readonly string[] => (/^[A-Za-z0-9]*$/.test(take) ? [] : wordKeys(take)));
  const standings: string[] = [];
  const standing = remembered((text) => standings.push(text) - 1);
  const lenses = rows.lenses.map(([id, name]): LensKeys => ({ id: codeKey(id), hyphened: hyphenKey(id), words: wordKeys(name) }));
  const entries = rows.takes.map((row): Entry => {
    const [slate, take, camera] = [key(row[2]), key(row[3]), key(row[4])];
    return {
      row,
      slate,
      take,
      takeParts: takeParts(row[3]),
      camera,
      scene: key(row[5]),
      roll: roll(row[6]),
      clip: clip(row[7]),
      slateTake: slate + take,
      addressTail: row[1].slice(camera.length + 1),
      timeIn: timeKey(row[8]),
      timeOut: timeKey(row[9]),
      plateOf: key(row[20]),
      lens: row[10],
      standing: standing(row[17] === 1 ? `circled ${row[18]}` : row[18]),
    };
  });
  let text: TextIndex | null = null;
  return {
    rows,
    entries,
    lenses,
    text() {
      text ??= textIndexOf(rows, standings);
      return text;
    },
  };
}

function textIndexOf(rows: SearchRows, standings: readonly string[]): TextIndex {
  const inRemarks = postingsOf(rows.takes.map((row) => row[21]));
  const inStandings = postingsOf(standings);
  const inLenses = postingsOf(rows.lenses.map(([id, name]) => `${id} ${name}`));
  const vocabulary = vocabularyOf(new Set([...inRemarks.words, ...inStandings.words, ...inLenses.words]));
  return { vocabulary, inRemarks, inStandings, inLenses };
}

/** Gives the forms of a code; the rolls and the numbers in them repeat, so that their zeros are dropped once. */
function codeForms(): (text: string) => Code {
  const withoutItsZeros = remembered(withoutZeros);
  return (text) => {
    const key = codeKey(text);
    // Where the last letter stands; what is before it belongs to the roll.
    let at = key.length - 1;
    while (at > 0 && !isLetter(key.charCodeAt(at))) at--;
    const tail = key.slice(Math.max(at, 0));
    const endShort = withoutItsZeros(tail);
    const short = at > 0 ? withoutItsZeros(key.slice(0, at)) + endShort : endShort;
    return at > 0 && tail.length > 1
      ? { key, short, bare: short.slice(1), end: tail, endShort }
      : { key, short, bare: short.slice(1), end: "", endShort: "" };
  };
}

function isLetter(unit: number): boolean {
  return unit >= 97 && unit <= 122;
}

/** Slates, rolls and cameras repeat: each is worked out once. */
function remembered<T>(compute: (text: string) => T): (text: string) => T {
  const known = new Map<string, T>();
  return (text) => {
    const before = known.get(text);
    if (before !== undefined) return before;
    const result = compute(text);
    known.set(text, result);
    return result;
  };
}
