/**
 * Texts that a page shows in metric or imperial as its reader wants. Both wordings travel in one string, between signs that
 * Unicode keeps for a program's own use, so that models, charts and templates pass them on like any other text. What prints
 * the page takes them apart: elements in the page, the show's own wording where markup cannot stand.
 */

/** How a show wants its distances: in metres, in feet and inches, or in both. */
export type DistanceSystem = "metric" | "imperial" | "both";

/** The same, or, for a page whose reader may choose, with the show's wish as what stands until then. */
export type PageDistances = DistanceSystem | `reader-${DistanceSystem}`;

/** Two wordings; `first` is what stands until the reader chooses. With `both`, metric comes first and imperial in brackets. */
export interface UnitChoice {
  readonly metric: string;
  readonly imperial: string;
  readonly first: DistanceSystem;
}

const OPEN: Readonly<Record<DistanceSystem, string>> = { metric: "\ufdd0", imperial: "\ufdd1", both: "\ufdd2" };
const FIRST: Readonly<Record<string, DistanceSystem>> = { "\ufdd0": "metric", "\ufdd1": "imperial", "\ufdd2": "both" };
const CHOICE = /([\ufdd0-\ufdd2])([^\ufdd0-\ufdd4]*)\ufdd3([^\ufdd0-\ufdd4]*)\ufdd4/g;

/** Distances whose reader may choose, beginning with what the show wants. */
export function readerMayChoose(system: DistanceSystem): PageDistances {
  return `reader-${system}`;
}

/** What the show wants. */
export function showsWish(distances: PageDistances): DistanceSystem {
  return distances.replace("reader-", "") as DistanceSystem;
}

/** The same where there is room for one figure: metres for a show that wants both. */
export function oneSystem(distances: PageDistances): PageDistances {
  if (distances === "both") return "metric";
  return distances === "reader-both" ? "reader-metric" : distances;
}

/** A text that hangs on the system of units, from what writes it in one of them. */
export function inUnits(distances: PageDistances, write: (system: "metric" | "imperial") => string): string {
  if (distances === "metric" || distances === "imperial") return write(distances);
  const metric = write("metric");
  const imperial = write("imperial");
  if (metric === imperial) return metric;
  if (distances === "both") return bothWordings(metric, imperial);
  const first = showsWish(distances);
  return `${OPEN[first]}${metric}\ufdd3${imperial}\ufdd4`;
}

/** The parts of a text in order: plain words, and choices between two wordings. */
export function unitParts(text: string): readonly (string | UnitChoice)[] {
  const parts: (string | UnitChoice)[] = [];
  let end = 0;
  for (const match of text.matchAll(CHOICE)) {
    const [whole, open = "", metric = "", imperial = ""] = match;
    if (match.index > end) parts.push(text.slice(end, match.index));
    parts.push({ metric, imperial, first: FIRST[open] ?? "metric" });
    end = match.index + whole.length;
  }
  if (end < text.length) parts.push(text.slice(end));
  return parts;
}

/** The text with each choice made: by the reader's system, or as the show wants it without one. */
export function settled(text: string, reader: DistanceSystem | null = null): string {
  if (!hasUnitChoice(text)) return text;
  return unitParts(text)
    .map((part) => (typeof part === "string" ? part : wordingOf(part, reader)))
    .join("");
}

/** Whether the text may hold a choice; quick. */
export function hasUnitChoice(text: string): boolean {
  return text.includes("\ufdd3");
}

/**
 * A choice as pieces of a page, each with the class by which the style sheet shows it: `dm` and `di` hide for readers of the
 * other units, `oi` shows for readers of imperial only, `ob` for readers of both.
 */
export function choicePieces({ metric, imperial, first }: UnitChoice): readonly (readonly [cls: string, text: string])[] {
  if (first !== "both")
    return [
      ["dm", metric],
      ["oi", imperial],
    ];
  return [
    ["dm", metric],
    ["ob", " ("],
    ["di", imperial],
    ["ob", ")"],
  ];
}

/** A choice whose room is for one figure stays with one, metres, for a reader who wants both. */
function wordingOf({ metric, imperial, first }: UnitChoice, reader: DistanceSystem | null): string {
  const system = reader ?? first;
  if (system === "both") return first === "both" ? bothWordings(metric, imperial) : metric;
  return system === "imperial" ? imperial : metric;
}

function bothWordings(metric: string, imperial: string): string {
  return `${metric} (${imperial})`;
}
