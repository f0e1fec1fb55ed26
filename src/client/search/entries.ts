/** Takes made ready for the scan: every code folded once, every distinct text once. */
import type { SearchTable } from "../../core/packed-rows.ts";
import { AT } from "../../core/search-rows.ts";
import { codeKey, hyphenKey, withoutZeros, wordKeys } from "../../core/search-words.ts";
import { type WordPlaces, wordPlaces } from "../../core/word-places.ts";
import { type Vocabulary, vocabularyOf } from "./vocabulary.ts";

/** The codes of a take of one camera; what is asked for less often is read from its columns. */
export interface Entry {
  /** Its row in the table. */
  readonly place: number;
  readonly slate: string;
  readonly take: string;
  /** "2" and "pu" of take "2 PU"; empty for a take in one piece. */
  readonly takeParts: readonly string[];
  readonly camera: string;
  readonly scene: string;
  readonly roll: Code;
  readonly clip: Code;
  readonly slateTake: string;
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
  /** "kelp-44" of Kelp 44. */
  readonly name: string;
  readonly words: readonly string[];
}

export interface Prepared {
  readonly columns: Columns;
  readonly days: SearchTable["days"];
  readonly entries: readonly Entry[];
  readonly lenses: readonly LensKeys[];
  readonly text: TextIndex;
}

/** Columns that scores read, a value for each entry. */
export type Columns = ReturnType<typeof columnsOf>;

export interface TextIndex {
  readonly vocabulary: Vocabulary;
  /** Places of a word: takes whose remark has it, standings, lenses. */
  readonly inRemarks: WordPlaces;
  readonly inStandings: WordPlaces;
  readonly inLenses: WordPlaces;
}

function columnsOf({ column }: SearchTable) {
  return {
    day: column(AT.day),
    address: column(AT.address),
    slate: column(AT.slate),
    take: column(AT.take),
    camera: column(AT.camera),
    roll: column(AT.roll),
    clip: column(AT.clip),
    timecodeIn: column(AT.timecodeIn),
    timecodeOut: column(AT.timecodeOut),
    focalMin: column(AT.focalMinMm),
    focalMax: column(AT.focalMaxMm),
    widest: column(AT.widestT),
    deepest: column(AT.deepestT),
    plate: column(AT.plate),
  };
}

export function prepare(table: SearchTable): Prepared {
  const columns = columnsOf(table);
  const [scenes, lensPlaces, circled, status, platesOf] = [
    table.column(AT.scene),
    table.column(AT.lens),
    table.column(AT.circled),
    table.column(AT.standing),
    table.column(AT.plateOf),
  ];
  const key = remembered(codeKey);
  const clip = codeForms();
  const roll = remembered(clip);
  const takeParts = remembered((take): readonly string[] => (/^[A-Za-z0-9]*$/.test(take) ? [] : wordKeys(take)));
  const standings: string[] = [];
  const standing = remembered((text) => standings.push(text) - 1);
  const circledStanding = remembered((text) => standing(`circled ${text}`));
  const lenses = table.lenses.map(
    ([id, name]): LensKeys => ({ id: codeKey(id), hyphened: hyphenKey(id), name: hyphenKey(name), words: wordKeys(name) }),
  );
  const entries: Entry[] = [];
  for (let place = 0; place < table.count; place++) {
    const [slate, take] = [key(columns.slate[place] as string), key(columns.take[place] as string)];
    entries.push({
      place,
      slate,
      take,
      takeParts: takeParts(columns.take[place] as string),
      camera: key(columns.camera[place] as string),
      scene: key(scenes[place] as string),
      roll: roll(columns.roll[place] as string),
      clip: clip(columns.clip[place] as string),
      slateTake: slate + take,
      plateOf: key(platesOf[place] as string),
      lens: lensPlaces[place] as number,
      standing: (circled[place] === 1 ? circledStanding : standing)(status[place] as string),
    });
  }
  const inStandings = wordPlaces(standings);
  const inLenses = wordPlaces(table.lenses.map(([id, name]) => `${id} ${name}`));
  const inRemarks = table.remarkWords;
  const vocabulary = vocabularyOf([inRemarks, inStandings, inLenses].flatMap(({ words }) => words));
  return { columns, days: table.days, entries, lenses, text: { vocabulary, inRemarks, inStandings, inLenses } };
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
