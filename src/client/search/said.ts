/** Sentences of the search box. */

import type { SearchTable } from "../../core/packed-rows.ts";
import { searchTerms } from "../../core/search-query.ts";
import { AT } from "../../core/search-rows.ts";
import type { Found } from "./finder.ts";

const FIELDS = "lens:, day:, t:, roll:, note:, plate:, slate:, take:, camera:, scene: and clip:";

/** How many takes were found, or what was searched for when there is none. */
export function describeFound({ places, terms, unknownFields }: Found, table: SearchTable, shown: number): string {
  const numbers = table.column(AT.number);
  const all = () => count(numbers);
  if (terms.length === 0) return `${all()} on ${table.days.length} ${table.days.length === 1 ? "day" : "days"}.`;
  if (places.length === 0) {
    const asked = terms.map((term) => `\u201c${term.text}\u201d`);
    const what =
      asked.length === 1 ? asked[0] : `${asked.slice(0, -1).join(", ")} and ${asked.at(-1)}${asked.length > 2 ? " together" : ""}`;
    const fields = unknownFields.map((name) => ` \u201c${name}:\u201d is not one of the words for a field: ${FIELDS}.`).join("");
    return `No take has ${what}.${fields} Searched: slate, take, clip, roll, lens, stop, timecode and remarks of ${all()}. What to try instead stands below.`;
  }
  const found = count(places.map((place) => numbers[place] as number));
  return places.length === shown ? `${found}.` : `${found}; the first ${shown} are listed. One more word narrows it.`;
}

/** A take of two cameras is one take in two clips, with one number. */
function count(numbers: readonly number[]): string {
  const takes = new Set(numbers).size;
  return takes === numbers.length ? plural(takes, "take") : `${plural(takes, "take")} in ${plural(numbers.length, "clip")}`;
}

export function plural(count: number, word: string): string {
  return `${String(count).replace(/\B(?=(\d{3})+$)/g, "\u202f")} ${word}${count === 1 ? "" : "s"}`;
}

/** Examples from the show itself, so that each of them finds something. */
export function helpFor(table: SearchTable): string {
  if (table.count === 0) return "There is no take in this report yet.";
  const take = table.row(Math.floor(table.count / 2));
  const [day, , slate, number, , , , clip, timecode] = take;
  const lens = table.lenses[take[AT.lens]]?.[0];
  const stop = /T(\d+(?:\.\d+)?)/.exec(take[AT.stop])?.[1];
  const examples = [
    `${slate.toLowerCase()} ${number.toLowerCase()}`,
    clip === "" ? "" : clip.toLowerCase(),
    timecode === "" ? "" : timecode.slice(0, 5),
    lens === undefined ? "" : `lens:${lens}${stop === undefined ? "" : ` t:${stop}`}`,
    `day:${table.days[day]?.[2] ?? table.days[day]?.[0] ?? ""}`,
    noteExample(table),
  ];
  return `For example ${examples.filter((text) => text !== "" && searchTerms(text).length > 0).join(", ")}. Also roll: and plate:`;
}

/** The longest word of a remark from the middle of the show on. */
function noteExample(table: SearchTable): string {
  const remarks = table.column(AT.remarks);
  const half = Math.floor(table.count / 2);
  for (const remark of [...remarks.slice(half), ...remarks.slice(0, half)]) {
    const letters = (remark.match(/\p{L}{5,12}/gu) ?? []).sort((a, b) => b.length - a.length);
    if (letters[0] !== undefined) return `note:${letters[0].toLowerCase()}`;
  }
  return "";
}
