/** What the pages of one day look up again and again. */
import type { DaySummary, TakeSummary } from "../../summary/types.ts";
import type { SiteContext } from "../context.ts";
import { lensPaths, slateAnchors } from "../links.ts";
import { takeName } from "../names.ts";
import { MOST_ROWS } from "../table.ts";
import { slatesShown } from "./slates-shown.ts";

export interface DayContext {
  readonly site: SiteContext;
  readonly summary: DaySummary;
  /** Takes that have a page: all but rows with an address that an earlier row has. */
  readonly takes: readonly TakeSummary[];
  /** Names of those takes by address. */
  readonly names: ReadonlyMap<string, string>;
  /** Slates in shooting order with their takes. */
  readonly slates: readonly SlateGroup[];
  readonly lensPaths: ReadonlyMap<string, string>;
}

export interface SlateGroup {
  readonly slate: string;
  /** Fragment of the slate on the day page; `null` where that has no room for the slate. */
  readonly anchor: string | null;
  readonly takes: readonly TakeSummary[];
}

export function dayContext(summary: DaySummary, site: SiteContext): DayContext {
  const takes = summary.takes.filter((t) => !t.take.duplicate);
  return {
    site,
    summary,
    takes,
    names: new Map(takes.map((t) => [t.take.address, takeName(t.take)])),
    slates: groupBySlate(takes),
    lensPaths: lensPaths(summary.kit),
  };
}

function groupBySlate(takes: readonly TakeSummary[]): readonly SlateGroup[] {
  const groups = new Map<string, TakeSummary[]>();
  for (const t of takes) {
    const group = groups.get(t.take.slate);
    if (group === undefined) groups.set(t.take.slate, [t]);
    else group.push(t);
  }
  const anchors = slateAnchors([...groups.keys()]);
  const shown = slatesShown(takes.map((t) => t.take.slate));
  return [...groups].map(([slate, members]) => {
    const anchor = shown.has(slate) ? (anchors.get(slate) ?? null) : null;
    return { slate, anchor, takes: members };
  });
}

/** A slate with the fragment that it has on the day page. */
export interface ShownSlate extends SlateGroup {
  readonly anchor: string;
}

/** The slates of the day page, with those of their takes that it has room for. */
export function shownSlates(day: DayContext): readonly ShownSlate[] {
  return day.slates.flatMap(({ slate, anchor, takes }) =>
    anchor === null ? [] : [{ slate, anchor, takes: takes.slice(0, MOST_ROWS) }],
  );
}
