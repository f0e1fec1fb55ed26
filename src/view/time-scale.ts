/** The time scale in the head of the takes table: one width a second for all rows of the day. */
import type { Drawing, DrawItem } from "../chart/drawing.ts";
import { minutesSeconds } from "../format/time.ts";

/** Left gutter for the distance labels of a row's ribbon, and the width of the scale beside it. */
export const GUTTER = 26;
export const SCALE_WIDTH = 378;
/** A block of the scale, in seconds; the first that needs at most ten blocks is taken. */
const BLOCKS = [1, 2, 5, 10, 15, 30, 60, 120, 300, 600, 1200, 1800, 3600];

export interface TimeScale {
  readonly seconds: number;
  readonly pixelsPerSecond: number;
  readonly drawing: Drawing;
}

export function timeScale(longestSeconds: number): TimeScale {
  const wanted = Math.max(longestSeconds, 1);
  const block = BLOCKS.find((b) => wanted / b <= 10) ?? Math.ceil(wanted / 36000) * 3600;
  const blocks = Math.max(2, Math.ceil(wanted / block));
  const seconds = blocks * block;
  const pixelsPerSecond = SCALE_WIDTH / seconds;
  return { seconds, pixelsPerSecond, drawing: scaleDrawing(block, blocks) };
}

function scaleDrawing(block: number, blocks: number): Drawing {
  const width = SCALE_WIDTH / blocks;
  const items: DrawItem[] = [{ type: "rect", k: "k-bar-open", x: GUTTER, y: 22, width: SCALE_WIDTH, height: 5 }];
  for (let i = 0; i <= blocks; i++) {
    const x = Math.round((GUTTER + i * width) * 10) / 10;
    if (i < blocks && i % 2 === 0) {
      items.push({ type: "rect", k: "k-bar", x, y: 22, width: Math.round(width * 10) / 10, height: 5 });
    }
    if (i % 2 === 0 || i === blocks) {
      const crowded = i === blocks && i % 2 === 1;
      if (crowded) continue;
      const anchor = i === 0 ? "start" : i === blocks ? "end" : "middle";
      items.push({ type: "text", x, y: 14, text: i === 0 ? "0" : minutesSeconds(i * block), anchor, tone: "t-fine" });
    }
  }
  return {
    width: GUTTER + SCALE_WIDTH,
    height: 30,
    title: `Time scale: 0 to ${minutesSeconds(block * blocks)}`,
    description: `One block is ${block} seconds.`,
    items,
  };
}
