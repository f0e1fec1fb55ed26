/** The border that measures: blocks in turn black and open, from one tick to the next. */
import type { DrawItem } from "./drawing.ts";
import { bar } from "./path.ts";

const HEIGHT = 4;

/** A bar along `y` with a block between each two ticks; `xs` from left to right. */
export function scaleBar(xs: readonly number[], y: number): DrawItem[] {
  let filled = "";
  let open = "";
  for (let i = 1; i < xs.length; i++) {
    const from = xs[i - 1] ?? 0;
    const block = bar(from, y, (xs[i] ?? from) - from, HEIGHT);
    if (i % 2 === 1) filled += block;
    else open += block;
  }
  const items: DrawItem[] = [];
  if (open !== "") items.push({ type: "path", k: "k-bar-open", d: open });
  if (filled !== "") items.push({ type: "path", k: "k-bar", d: filled });
  return items;
}
