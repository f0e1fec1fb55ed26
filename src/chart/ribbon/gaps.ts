/** What was not logged: two edge lines with sloped hatching. Nothing is ever joined across. */
import type { Run } from "../../stats/runs.ts";
import { segment } from "../path.ts";

export interface GapSpan {
  readonly left: number;
  readonly right: number;
  /** Frames not logged in it; narrow neighbours are drawn as one and counted together. */
  readonly frames: number;
}

/** Below this width two edge lines would run into one. */
const NARROWEST = 3;
/** Between hatching lines, down the page; wide gaps have fewer. */
const SPACING = 8;
const MOST_LINES = 60;

/** Runs of frames as spans of pixels: widened to 3 pixels, and joined where less than 3 pixels of data lie between them. */
export function gapSpans(runs: readonly Run[], x: (frame: number) => number): readonly GapSpan[] {
  const spans: GapSpan[] = [];
  for (const run of runs) {
    const widen = Math.max(0, NARROWEST - (x(run.last + 1) - x(run.first))) / 2;
    const next = { left: x(run.first) - widen, right: x(run.last + 1) + widen, frames: run.last - run.first + 1 };
    const before = spans.at(-1);
    if (before !== undefined && next.left - before.right < NARROWEST) {
      spans[spans.length - 1] = { left: before.left, right: next.right, frames: before.frames + next.frames };
    } else spans.push(next);
  }
  return spans;
}

/** The two edge lines of a gap. */
export function gapEdges(span: GapSpan, top: number, bottom: number): string {
  return segment(span.left, top, span.left, bottom) + segment(span.right, top, span.right, bottom);
}

/** Lines at 45 degrees, rising to the right, cut at the gap's edges. */
export function gapHatching(span: GapSpan, top: number, bottom: number): string {
  const { left, right } = span;
  const spacing = Math.max(SPACING, (right - left + bottom - top) / MOST_LINES);
  let d = "";
  // A line is y = c - x; it enters the box at the lower left corner's side and leaves at the upper right one's.
  for (let c = top + left + spacing; c < bottom + right; c += spacing) {
    const x1 = Math.max(left, c - bottom);
    const x2 = Math.min(right, c - top);
    if (x2 - x1 >= 1) d += segment(x1, c - x1, x2, c - x2);
  }
  return d;
}
