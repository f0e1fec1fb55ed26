/** Sentences of the search box. */

import { searchTerms } from "../../core/search-query.ts";
import type { SearchRows, SearchTake } from "../../core/search-rows.ts";
import type { Found } from "./finder.ts";

/** How many takes were found, or what was searched for when there is none. */
export function describeFound({ takes, terms }: Found, rows: SearchRows, shown: number): string {
  if (terms.length === 0) return `${count(rows.takes)} on ${rows.days.length} ${rows.days.length === 1 ? "day" : "days"}.`;
  if (takes.length === 0) {
    const asked = terms.map((term) => `\u201c${term.text}\u201d`);
    const what =
      asked.length === 1 ? asked[0] : `${asked.slice(0, -1).join(", ")} and ${asked.at(-1)}${asked.length > 2 ? " together" : ""}`;
    return `No take has ${what}. Searched: slate, take, clip, roll, lens, stop, timecode and remarks of ${count(rows.takes)}.`;
  }
  return takes.length === shown ? `${count(takes)}.` : `${count(takes)}; the first ${shown} are listed. One more word narrows it.`;
}

/** A take of two cameras is one take in two clips. */
function count(rows: readonly SearchTake[]): string {
  const takes = new Set(rows.map((row) => row[22])).size;
  return takes === rows.length ? plural(takes, "take") : `${plural(takes, "take")} in ${plural(rows.length, "clip")}`;
}

export function plural(count: number, word: string): string {
  return `${String(count).replace(/\B(?=(\d{3})+$)/g, "\u202f")} ${word}${count === 1 ? "" : "s"}`;
}

/** Examples from the show itself, so that each of them finds something. */
export function helpFor(rows: SearchRows): string {
  const take = rows.takes[Math.floor(rows.takes.length / 2)];
  if (take === undefined) return "There is no take in this report yet.";
  const [day, , slate, number, , , , clip, timecode] = take;
  const lens = rows.lenses[take[10]]?.[0];
  const stop = /T(\d+(?:\.\d+)?)/.exec(take[16])?.[1];
  const examples = [
    `${slate.toLowerCase()} ${number.toLowerCase()}`,
    clip === "" ? "" : clip.toLowerCase(),
    timecode === "" ? "" : timecode.slice(0, 5),
    lens === undefined ? "" : `lens:${lens}${stop === undefined ? "" : ` t:${stop}`}`,
    `day:${rows.days[day]?.[2] ?? rows.days[day]?.[0] ?? ""}`,
    noteExample(rows),
  ];
  return `For example ${examples.filter((text) => text !== "" && searchTerms(text).length > 0).join(", ")}. Also roll: and plate:`;
}

/** The longest word of a remark from the middle of the show on. */
function noteExample(rows: SearchRows): string {
  const half = Math.floor(rows.takes.length / 2);
  for (const take of [...rows.takes.slice(half), ...rows.takes.slice(0, half)]) {
    const letters = (take[21].match(/\p{L}{5,12}/gu) ?? []).sort((a, b) => b.length - a.length);
    if (letters[0] !== undefined) return `note:${letters[0].toLowerCase()}`;
  }
  return "";
}
