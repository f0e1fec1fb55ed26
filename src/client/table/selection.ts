/** What a reader has filtered the rows by, in the page's address: `?lens=P35&camera=A&circled&has=24X`. */
import { thousands } from "../../format/number.ts";

/** Chips that are pressed, by the name of their facet; a flag has the value "". */
export interface Selection {
  readonly chips: ReadonlyMap<string, readonly string[]>;
  readonly words: string;
}

/** What a row can be found by. */
export interface FilterRow {
  /** Its value of a facet; `undefined` when it has none. */
  facet(name: string): string | undefined;
  /** Its words in small letters. */
  readonly words: string;
}

/** Facets of takes that have no value. */
const FLAGS = ["circled", "plates", "findings"];

/** What is filtered, in the words of the page. */
export interface Noun {
  readonly one: string;
  readonly many: string;
  /** What to do when nothing is left. */
  readonly wayOut: string;
}

export const NOTHING: Selection = { chips: new Map(), words: "" };
const WORDS = "has";

export function isNothing({ chips, words }: Selection): boolean {
  return words.trim() === "" && chips.size === 0;
}

/** With a chip pressed or let go. */
export function toggled(selection: Selection, name: string, value: string): Selection {
  const chips = new Map(selection.chips);
  const pressed = chips.get(name) ?? [];
  const left = pressed.includes(value) ? pressed.filter((other) => other !== value) : [...pressed, value];
  if (left.length === 0) chips.delete(name);
  else chips.set(name, left);
  return { ...selection, chips };
}

/** Of one facet any of the pressed values will do; facets and words must all hold. */
export function passes(row: FilterRow, { chips, words }: Selection): boolean {
  for (const [name, values] of chips) {
    const own = row.facet(name);
    if (own === undefined || !values.includes(own)) return false;
  }
  return wordsOf(words).every((word) => row.words.includes(word));
}

/** Rows a chip would show beside what else is pressed: the other values of its own facet do not count. */
export function countFor(rows: readonly FilterRow[], selection: Selection, name: string, value: string): number {
  const chips = new Map(selection.chips).set(name, [value]);
  return rows.filter((row) => passes(row, { ...selection, chips })).length;
}

function wordsOf(text: string): readonly string[] {
  return text
    .toLowerCase()
    .split(/\s+/)
    .filter((word) => word !== "");
}

/** Reads a selection from a query; `names` are the facets of the page. Values that the page lacks stay: it says so. */
export function fromQuery(query: string, names: readonly string[]): Selection {
  const asked = new URLSearchParams(query);
  const chips = new Map<string, readonly string[]>();
  for (const name of names) {
    const values = [...new Set(asked.getAll(name).map((value) => (FLAGS.includes(name) ? "" : value)))];
    if (values.length > 0) chips.set(name, values);
  }
  return { chips, words: asked.get(WORDS) ?? "" };
}

/** The query with the selection in it; what else it holds stays. Empty, or with its question mark. */
export function toQuery(selection: Selection, query: string, names: readonly string[]): string {
  const others = new URLSearchParams(query);
  for (const name of [...names, WORDS]) others.delete(name);
  const parts = names.flatMap((name) =>
    (selection.chips.get(name) ?? []).map((value) => (value === "" ? name : `${name}=${encodeURIComponent(value)}`)),
  );
  if (selection.words.trim() !== "") parts.push(`${WORDS}=${encodeURIComponent(selection.words.trim())}`);
  const kept = others.toString();
  const all = kept === "" ? parts : [...parts, kept];
  return all.length === 0 ? "" : `?${all.join("&")}`;
}

/** "9 of 28 clips shown: Camera A, 35 mm." `labels` are those of the pressed chips. */
export function shownWords(shown: number, all: number, selection: Selection, labels: readonly string[], noun: Noun): string {
  const counted = (count: number) => `${thousands(count)} ${count === 1 ? noun.one : noun.many}`;
  if (isNothing(selection)) return all === 1 ? `1 ${noun.one}.` : `All ${counted(all)} shown.`;
  const words = selection.words.trim();
  if (shown === 0) {
    const none =
      words === ""
        ? `No ${noun.one} has these filters together: ${labels.join(", ")}.`
        : `No ${noun.one} has \u2018${words}\u2019${labels.length === 0 ? "" : ` with these filters: ${labels.join(", ")}`}.`;
    return `${none} ${noun.wayOut}`;
  }
  const by = words === "" ? labels : [...labels, `\u2018${words}\u2019`];
  return `${thousands(shown)} of ${counted(all)} shown: ${by.join(", ")}.`;
}
