/**
 * How much room a take gets. Plates, gaps and circled takes that move have a large ribbon; on a thick day only the first of
 * them, and takes that nobody has asked for yet are short, so that the report stays one that a person can leaf through.
 */
import type { DaySummary, TakeSummary } from "../../summary/types.ts";
import { takesBySlate } from "../totals.ts";

/** Up to so many clips every take has its full notes. */
const FEW_CLIPS = 40;
/** Large ribbons on a thicker day. */
const LARGE_ON_A_THICK_DAY = 8;

/** Names of the places of the takes with a large ribbon. */
export function largeRibbons(summary: DaySummary): ReadonlySet<string> {
  const takes = takesBySlate(summary).flatMap((slate) => slate.takes);
  const thick = isThick(summary);
  const scored = takes
    .map((take, order) => ({ ...take, order, score: toSay(take.summary) }))
    .filter(({ score }) => score >= 2)
    .sort((a, b) => b.score - a.score || a.order - b.order);
  return new Set(scored.slice(0, thick ? LARGE_ON_A_THICK_DAY : FEW_CLIPS).map(({ target }) => target));
}

export function isThick(summary: DaySummary): boolean {
  return summary.takes.length > FEW_CLIPS;
}

/** Whether a take of a thick day goes without the lines that are worked out: nobody has asked for it yet. */
export function isShort(summary: DaySummary, t: TakeSummary): boolean {
  return isThick(summary) && !t.take.circled && t.take.plate === null;
}

/** Plates and gaps first, then circled takes with pulls, then moves. 0: nothing that a row would not show. */
function toSay(t: TakeSummary): number {
  if (t.perFrame === null || t.take.durationFrames === 0) return 0;
  const pulls = t.pulls?.length ?? 0;
  if (pulls === 0 && t.gaps.length === 0) return 0;
  return (t.take.plate === null ? 0 : 4) + (t.gaps.length > 0 ? 2 : 0) + (t.take.circled ? 2 : 0) + Math.min(pulls, 4) * 0.5 + 0.5;
}
