/** What to say when nothing is found: the code that is nearest, or the term that stands in the way. */
import { editCost } from "../../core/nearest-name.ts";
import type { SearchTerm } from "../../core/search-query.ts";
import type { Entry, Prepared } from "./entries.ts";

export interface Advice {
  /** "Nearest code", "Without 99". */
  readonly label: string;
  /** The query to search for instead. */
  readonly query: string;
  /** Clips that it finds; 0 where they were not counted. */
  readonly takes: number;
}

type Count = (terms: readonly SearchTerm[]) => number;

const MOST = 3;

export function adviceFor(
  terms: readonly SearchTerm[],
  prepared: Pick<Prepared, "entries" | "lenses" | "columns">,
  count: Count,
): readonly Advice[] {
  const advice: Advice[] = [];
  const alone = terms.map((term) => (terms.length > 1 && (term.kind === "code" || terms.length === 2) ? count([term]) : 0));
  terms.forEach((term, i) => {
    if (term.kind !== "code" || alone[i] !== 0) return;
    const code = nearestCode(term.key, prepared);
    if (code !== null) advice.push({ label: "Nearest code", query: queryWith(terms, i, code), takes: 0 });
  });
  if (terms.length === 1) return advice;
  terms.slice(0, MOST).forEach((term, i) => {
    const rest = terms.filter((_, at) => at !== i);
    const takes = terms.length === 2 ? (alone[1 - i] ?? 0) : count(rest);
    if (takes > 0) advice.push({ label: `Without \u201c${term.text}\u201d`, query: rest.map(({ text }) => text).join(" "), takes });
  });
  return advice.slice(0, MOST);
}

function queryWith(terms: readonly SearchTerm[], at: number, code: string): string {
  return terms.map((term, i) => (i === at ? code : term.text)).join(" ");
}

/**
 * The slate, slate with take, clip, roll or lens within a slip or two of the typed code, as the notes write it; one digit for
 * another counts as two slips.
 */
function nearestCode(key: string, { entries, lenses, columns }: Pick<Prepared, "entries" | "lenses" | "columns">): string | null {
  const limit = Math.min(Math.max(20, 3 * key.length), 10 * key.length - 1);
  const shape = shapeOf(key);
  let least = limit + 0.5;
  const isNearer = (candidate: string): boolean => {
    const slips = candidate === "" ? least : slipCost(key, candidate, least);
    if (slips >= least) return false;
    const cost = slips + (shapeOf(candidate) === shape ? 0 : 15);
    if (cost >= least) return false;
    least = cost;
    return true;
  };
  let best: string | null = null;
  let before: Entry | null = null;
  for (const e of entries) {
    // The takes of a slate and the clips of a roll mostly follow each other.
    if (e.slate !== before?.slate && isNearer(e.slate)) best = columns.slate[e.place] ?? null;
    if (e.slateTake !== before?.slateTake && isNearer(e.slateTake)) best = `${columns.slate[e.place]} ${columns.take[e.place]}`;
    if (isNearer(e.clip.key)) best = columns.clip[e.place] ?? null;
    if (e.roll !== before?.roll && isNearer(e.roll.key)) best = columns.roll[e.place] ?? null;
    before = e;
  }
  for (const lens of lenses) if (isNearer(lens.id)) best = lens.hyphened.toUpperCase();
  return best;
}

/** Cost of the one place where two codes differ; `none` or more when that is longer than a few signs. */
function slipCost(a: string, b: string, none: number): number {
  if (Math.abs(a.length - b.length) > 2) return none;
  let from = 0;
  while (from < a.length && from < b.length && a.charCodeAt(from) === b.charCodeAt(from)) from++;
  let [endA, endB] = [a.length, b.length];
  while (endA > from && endB > from && a.charCodeAt(endA - 1) === b.charCodeAt(endB - 1)) {
    endA--;
    endB--;
  }
  if (endA - from > 3 || endB - from > 3) return none;
  // What one has and the other lacks costs an edit each: most codes are dropped here, before the dear part.
  if (10 * Math.max(lacking(a, b, from, endA, endB), lacking(b, a, from, endB, endA)) - from / 10 >= none) return none;
  // Of two that are as near, the one that begins alike for longer.
  return editCost(a.slice(from, endA), b.slice(from, endB)) - from / 10;
}

/** How many signs of the one stretch do not stand in the other. */
function lacking(a: string, b: string, from: number, endA: number, endB: number): number {
  let count = 0;
  for (let i = from; i < endA; i++) {
    const at = b.indexOf(a.charAt(i), from);
    if (at < 0 || at >= endB) count++;
  }
  return count;
}

/** Letters and digits in their order: K45 is rather K44 than 45. */
function shapeOf(key: string): string {
  return key.replace(/\p{L}/gu, "a").replace(/\p{N}/gu, "0");
}
