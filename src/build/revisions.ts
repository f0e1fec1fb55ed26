/** What a day's input is known by from one build to the next, and which days the last change of the input made anew. */
import { sha256 } from "../core/hash.ts";
import { canonicalJson } from "../core/stable-json.ts";
import type { ChangedDay, LastChange } from "../view/context.ts";
import { buildId, type DayFacts, inOrder, whatChanged } from "./plan.ts";

/** A day of the report as the next build compares it. */
export interface DayRevision {
  readonly date: string;
  readonly day: number | null;
  /** Hash of what the day is made from: not of the program's own files, and not of the neighbouring days. */
  readonly content: string;
  /** Id of the day's pack, as its PDF has it. */
  readonly packId: string;
  /** Why the content is not what it was before, such as "notes.csv changed". */
  readonly reason: string;
}

/** What the show-wide pages were made from. */
export interface StoredChange {
  readonly days: readonly Pick<DayRevision, "date" | "day" | "content">[];
  readonly lastChange: LastChange;
}

export function packIdOf(facts: DayFacts): string {
  return buildId({ ...facts, previous: null, next: null });
}

export function contentOf({ toolVersion, showFiles, dayFiles, vfx }: DayFacts): string {
  return sha256(canonicalJson({ toolVersion, showFiles: inOrder(showFiles), dayFiles: inOrder(dayFiles), vfx: vfx ?? null }));
}

/** Why the content of a day is not what the record says. A day that is built again from the same keeps the reason it had. */
export function reasonOf(facts: DayFacts, stored: { readonly facts: DayFacts; readonly reason: string } | null): string {
  if (stored === null) return "new";
  return contentOf(stored.facts) === contentOf(facts) ? stored.reason : whatChanged(stored.facts, facts);
}

/**
 * Compares the days with those that the show-wide pages were last made from. While nothing differs, the last change stays what
 * it was: building the same input again, forced or not, gives the same pages.
 */
export function lastChange(before: StoredChange | null, now: readonly DayRevision[]): LastChange {
  if (before === null) return { first: true, days: [] };
  const was = new Map(before.days.map((day) => [day.date, day]));
  const is = new Set(now.map(({ date }) => date));
  const changed = now.flatMap(({ date, day, content, reason }): readonly ChangedDay[] => {
    const old = was.get(date);
    if (old?.content === content) return [];
    return [{ date, day, what: old === undefined ? "new" : "changed", reason: old === undefined ? "" : reason }];
  });
  const gone = before.days
    .filter(({ date }) => !is.has(date))
    .map(({ date, day }): ChangedDay => ({ date, day, what: "gone", reason: "no longer in the show" }));
  const days = [...changed, ...gone].sort((a, b) => (a.date < b.date ? -1 : 1));
  return days.length === 0 ? before.lastChange : { first: false, days };
}
