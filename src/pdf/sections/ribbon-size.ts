/**
 * How much room a take gets. Gaps and circled takes that move have a wide ribbon; on a thick day only the first of them, and
 * takes that nobody has asked for yet are short, so that the report stays one that a person can leaf through. Plates have
 * their own sheets.
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

/**
 * Whether a take goes without the lines that are worked out: a plate has them on its sheet, and of a thick day nobody has
 * asked for those of a take that is not circled.
 */
export function isShort(summary: DaySummary, t: TakeSummary): boolean {
  return hasPlateSheet(t) || (isThick(summary) && !t.take.circled);
}

/** Whether all values of a take are on a plate sheet. */
export function hasPlateSheet(t: TakeSummary): boolean {
  return t.take.plate !== null && !t.take.duplicate;
}

/** Gaps first, then circled takes with pulls, then moves. 0: nothing that a row would not show, or a plate sheet shows it. */
function toSay(t: TakeSummary): number {
  if (t.perFrame === null || t.take.durationFrames === 0 || hasPlateSheet(t)) return 0;
  const pulls = t.pulls?.length ?? 0;
  if (pulls === 0 && t.gaps.length === 0) return 0;
  return (t.gaps.length > 0 ? 2 : 0) + (t.take.circled ? 2 : 0) + Math.min(pulls, 4) * 0.5 + 0.5;
}
