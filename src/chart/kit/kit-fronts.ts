/** Front diameters of the lenses, drawn to one scale. */

import { millimetres } from "../../format/length.ts";
import { trimmed } from "../../format/number.ts";
import { listWords, plural } from "../../format/words.ts";
import type { DrawItem, Drawing } from "../drawing.ts";
import { text } from "../labels.ts";
import { segment } from "../path.ts";
import { toneWidth } from "../text-width.ts";

export interface LensFront {
  readonly name: string;
  readonly frontMm: number;
}

/** Pixels a millimetre where the row has room; less where a lens is very large. */
const SCALE = 0.72;
const GAP = 16;
const LABELS = 38;
const SIDE = 4;

/**
 * A circle a lens on a common ground, in the order given, with name and diameter under it; dotted in every other size the one
 * that most lenses have. As many rows as the width asks for. `null` without a lens.
 */
export function frontsDrawing(lenses: readonly LensFront[], width: number): Drawing | null {
  if (lenses.length === 0) return null;
  const common = commonest(lenses);
  const largest = Math.max(...lenses.map((lens) => lens.frontMm));
  const scale = Math.min(SCALE, (width - 2 * SIDE) / largest);
  const rowHeight = largest * scale + LABELS + 12;
  const items: DrawItem[] = [];
  let x = SIDE;
  let row = 0;
  let rowStart = x;
  const ground = () => row * rowHeight + SIDE + largest * scale;
  const endRow = (end: number) => items.push({ type: "path", k: "k-axis", d: segment(rowStart, ground(), end, ground()) });
  for (const lens of lenses) {
    const label = millimetres(lens.frontMm);
    const cell = Math.max(lens.frontMm * scale, toneWidth(lens.name, "t-b"), toneWidth(label, "t-fine"));
    if (x > SIDE && x + cell > width - SIDE) {
      endRow(x - GAP);
      row++;
      x = SIDE;
      rowStart = x;
    }
    const middle = x + cell / 2;
    const circle = (k: "k-box" | "k-lead", mm: number): DrawItem => ({
      ...{ type: "circle", k, x: middle, y: ground() - (mm * scale) / 2, r: (mm * scale) / 2 },
    });
    items.push(circle("k-box", lens.frontMm));
    if (common !== null && lens.frontMm !== common) items.push(circle("k-lead", common));
    items.push(text(middle, ground() + 17, lens.name, "middle", "t-b"), text(middle, ground() + 33, label, "middle", "t-fine"));
    x += cell + GAP;
  }
  endRow(x - GAP);
  return { width, height: Math.ceil(ground() + LABELS + SIDE), title: titleOf(lenses), description: descriptionOf(common), items };
}

/** The diameter that most lenses have; `null` when no two are alike or all are. */
function commonest(lenses: readonly LensFront[]): number | null {
  const counts = countsOf(lenses);
  const [first] = counts;
  return first === undefined || counts.length === 1 || first.count < 2 ? null : first.mm;
}

function countsOf(lenses: readonly LensFront[]): readonly { readonly mm: number; readonly count: number }[] {
  const counts = new Map<number, number>();
  for (const { frontMm } of lenses) counts.set(frontMm, (counts.get(frontMm) ?? 0) + 1);
  return [...counts].map(([mm, count]) => ({ mm, count })).sort((a, b) => b.count - a.count || a.mm - b.mm);
}

function titleOf(lenses: readonly LensFront[]): string {
  const counts = countsOf(lenses);
  const [only] = counts;
  if (counts.length === 1 && only !== undefined) return `One front diameter, ${millimetres(only.mm)}`;
  return `${plural(counts.length, "front diameter")}: ${listWords(counts.map(({ mm, count }) => `${millimetres(mm)} on ${plural(count, "lens", "lenses")}`))}`;
}

function descriptionOf(common: number | null): string {
  const dotted = common === null ? "" : ` Dotted in the others: ${trimmed(common, 1)} mm.`;
  return `A circle a lens, drawn to one scale on a common ground.${dotted}`;
}
