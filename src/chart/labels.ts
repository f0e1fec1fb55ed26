/** Places texts so that none lies on another, on a line that must stay readable, or outside the drawing. */
import type { DrawItem } from "./drawing.ts";
import { toneSize, toneWidth } from "./text-width.ts";

export type TextItem = Extract<DrawItem, { readonly type: "text" }>;
export type Anchor = TextItem["anchor"];

export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export function text(x: number, y: number, words: string, anchor: Anchor = "start", tone = ""): TextItem {
  return { type: "text", x: Math.round(x * 10) / 10, y: Math.round(y * 10) / 10, text: words, anchor, tone };
}

/** The box a text can fill at most, from the height of its capitals to the depth of its tails. */
export function boxOf(item: TextItem): Box {
  const size = toneSize(item.tone);
  const width = toneWidth(item.text, item.tone);
  const left = item.anchor === "start" ? item.x : item.anchor === "middle" ? item.x - width / 2 : item.x - width;
  return { left, top: item.y - 0.8 * size, right: left + width, bottom: item.y + 0.25 * size };
}

/** Whether two boxes share more than an edge, with so much air between them. */
export function overlaps(a: Box, b: Box, air = 0): boolean {
  return a.left < b.right + air && b.left < a.right + air && a.top < b.bottom + air && b.top < a.bottom + air;
}

export function contains(outer: Box, inner: Box): boolean {
  return inner.left >= outer.left && inner.right <= outer.right && inner.top >= outer.top && inner.bottom <= outer.bottom;
}

/** A sheet that knows what is taken. */
export interface Board {
  /** The first of the candidates (a candidate is one text or several lines) that is free; it is taken then. `null`: none is. */
  place(candidates: Iterable<readonly TextItem[]>): readonly TextItem[] | null;
  /** Keeps a box free of later texts. */
  reserve(box: Box): void;
}

/**
 * A board of the size of `bounds`. `blocked` says whether a box would cover drawn data. Texts keep 4 pixels of air
 * from each other.
 */
export function labelBoard(bounds: Box, blocked: (box: Box) => boolean = () => false): Board {
  const taken: Box[] = [];
  const free = (box: Box) => contains(bounds, box) && !taken.some((other) => overlaps(box, other, 4)) && !blocked(box);
  return {
    place(candidates) {
      for (const lines of candidates) {
        const boxes = lines.map(boxOf);
        if (!boxes.every(free)) continue;
        taken.push(...boxes);
        return lines;
      }
      return null;
    },
    reserve(box) {
      taken.push(box);
    },
  };
}
