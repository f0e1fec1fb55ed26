/** Where data stands in every pixel column, so that labels can keep clear of it. */
import type { Box } from "../labels.ts";

export interface Envelope {
  /** Adds what stands at a frame: from `top` to `bottom` in pixels, over the columns from `left` to `right`. */
  add(left: number, right: number, top: number, bottom: number): void;
  /** Whether a box covers data, or comes closer to it than `air` pixels. */
  blocks(box: Box, air?: number): boolean;
  /** Highest and lowest data between two x; `null` where there is none. */
  between(left: number, right: number): { readonly top: number; readonly bottom: number } | null;
}

/** An empty envelope between two x. */
export function envelope(left: number, right: number): Envelope {
  const columns = Math.max(1, Math.ceil(right - left) + 1);
  const tops = new Float64Array(columns).fill(Number.POSITIVE_INFINITY);
  const bottoms = new Float64Array(columns).fill(Number.NEGATIVE_INFINITY);
  const column = (x: number) => Math.min(columns - 1, Math.max(0, Math.floor(x - left)));
  const between = (from: number, to: number) => {
    let top = Number.POSITIVE_INFINITY;
    let bottom = Number.NEGATIVE_INFINITY;
    for (let c = column(from); c <= column(to); c++) {
      top = Math.min(top, tops[c] ?? top);
      bottom = Math.max(bottom, bottoms[c] ?? bottom);
    }
    return top > bottom ? null : { top, bottom };
  };
  return {
    add(from, to, top, bottom) {
      for (let c = column(from); c <= column(to); c++) {
        tops[c] = Math.min(tops[c] ?? top, top);
        bottoms[c] = Math.max(bottoms[c] ?? bottom, bottom);
      }
    },
    blocks(box, air = 2) {
      const data = between(box.left, box.right);
      return data !== null && box.top < data.bottom + air && box.bottom > data.top - air;
    },
    between,
  };
}
