/** Pages of a scene as boxes: one box is an eighth of a page, a wider step after each page. */
import type { DrawItem, Drawing } from "../../chart/drawing.ts";

const STEP = 9;
const PAGE_GAP = 3;
/** More than this many boxes would not fit a row: the figure beside them says it. */
const MOST = 48;

export function eighthsDrawing(scheduled: number, completed: number): Drawing {
  const count = Math.min(scheduled, MOST);
  const items: DrawItem[] = [];
  for (let i = 0; i < count; i++) {
    const x = 0.5 + i * STEP + Math.floor(i / 8) * PAGE_GAP;
    items.push({ type: "rect", k: i < completed ? "k-bar" : "k-bar-open", x, y: 2.5, width: 7, height: 9 });
  }
  return {
    width: Math.max(9, count * STEP + Math.floor(Math.max(count - 1, 0) / 8) * PAGE_GAP),
    height: 14,
    title: `${completed} of ${scheduled} eighths`,
    description: "One box is an eighth of a page; filled is completed.",
    items,
  };
}

/** A bar for a share of the longest, drawn over a fixed width. */
export function shareDrawing(share: number): Drawing {
  const width = 160;
  return {
    width,
    height: 12,
    title: `${Math.round(share * 100)} of 100`,
    description: "Bar, as a share of the longest.",
    items: [{ type: "rect", k: "k-bar", x: 0, y: 1, width: Math.max(1, Math.round(share * width * 10) / 10), height: 10 }],
  };
}
