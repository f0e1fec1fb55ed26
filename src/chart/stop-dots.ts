/** The stop of a row as one or two dots on a scale that all rows share. */
import { tStop } from "../format/stop.ts";
import { exactStop, FULL_STOPS } from "../optics/stop-series.ts";
import type { TakeSummary } from "../summary/types.ts";
import type { DrawItem, Drawing } from "./drawing.ts";
import { polyline, segment } from "./path.ts";
import { stopWords } from "./ribbon/ribbon-words.ts";

export interface StopDotsOptions {
  /** Ends of the scale as stop labels; T1.4 to T8 without it. */
  readonly widest?: number;
  readonly deepest?: number;
}

/** A whole stop in pixels. */
const STEP = 11.2;
const LEFT = 7;
const BASE = 12;
const DOT = { y: 5, r: 3 } as const;

/**
 * Dots at the widest and the deepest stop with a line between them, a tick at each whole stop. A stop beyond the scale is a
 * triangle at its end: the words of the cell name it. Without a stop only the scale is drawn.
 */
export function stopDots(summary: TakeSummary, options: StopDotsOptions = {}): Drawing {
  const widest = options.widest ?? 1.4;
  const deepest = options.deepest ?? 8;
  const from = 2 * Math.log2(exactStop(widest));
  const to = 2 * Math.log2(exactStop(deepest));
  const x = (level: number) => LEFT + (level - from) * STEP;
  const right = x(to);
  const ticks = FULL_STOPS.map((label) => 2 * Math.log2(exactStop(label))).filter((s) => s > from - 0.01 && s < to + 0.01);
  const items: DrawItem[] = [
    {
      type: "path",
      k: "k-tick",
      d: segment(LEFT, BASE, right, BASE) + ticks.map((s) => segment(x(s), BASE - 3, x(s), BASE)).join(""),
    },
  ];
  const stop = summary.tStop;
  if (stop !== null) {
    const levels = [...new Set([stop.widest, stop.deepest].map((t) => 2 * Math.log2(t)))];
    const held = (level: number) => Math.min(right, Math.max(LEFT, x(level)));
    const [first = 0, last = first] = levels;
    if (held(last) > held(first)) {
      const k = stop.source === "noted" ? "k-noted-stop" : "k-stop";
      items.push({ type: "path", k, d: segment(held(first), DOT.y, held(last), DOT.y) });
    }
    for (const level of levels) {
      if (level < from - 0.17)
        items.push({ type: "path", k: "k-stop-off", d: polyline([LEFT + 1, LEFT + 1, LEFT - 6], [1, 9, 5], true) });
      else if (level > to + 0.17)
        items.push({ type: "path", k: "k-stop-off", d: polyline([right - 1, right - 1, right + 6], [1, 9, 5], true) });
      else items.push({ type: "circle", k: "k-stop-dot", x: held(level), y: DOT.y, r: DOT.r });
    }
  }
  return {
    width: Math.ceil(right) + LEFT,
    height: 14,
    title: stop === null ? "No stop logged or noted" : `Stop ${stopWords(summary)}`,
    description: `On a scale from ${tStop(exactStop(widest))} to ${tStop(exactStop(deepest))} in whole stops.`,
    items,
  };
}
