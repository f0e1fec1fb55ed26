/** Order of slates, scenes and clip names as people read them. */
import { compareText } from "./finding.ts";

/** Order of an index: numbers by their value, letters without regard to case; 2 before 14, 14 before 14A. */
export function compareCodes(a: string, b: string): number {
  const [left, right] = [piecesOf(a), piecesOf(b)];
  for (let i = 0; i < Math.min(left.length, right.length); i++) {
    const [p, q] = [left[i] as string, right[i] as string];
    const [m, n] = [Number(p), Number(q)];
    const order = Number.isNaN(m) || Number.isNaN(n) ? compareText(p, q) : m - n;
    if (order !== 0) return order;
  }
  return left.length - right.length || compareText(a, b);
}

function piecesOf(code: string): readonly string[] {
  return code.toLowerCase().match(/\d+|\D+/g) ?? [];
}
