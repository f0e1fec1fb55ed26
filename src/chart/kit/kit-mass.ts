/** Masses of the lenses, lightest first, each with its step from the one before. */
import { grams, signedGrams } from "../../format/amounts.ts";
import { thousands } from "../../format/number.ts";
import type { DrawItem, Drawing } from "../drawing.ts";
import { boxOf, text } from "../labels.ts";
import { segment } from "../path.ts";
import { scaleBar } from "../scale-bar.ts";
import { toneWidth } from "../text-width.ts";

export interface LensMass {
  readonly name: string;
  readonly massG: number;
}

const ROW = 25;
const TOP = 34;
const GAP = 10;
const WORDS = 210;
/** Blocks of the scale in grams, the finest that gives no more than MOST_BLOCKS. */
const BLOCKS = [50, 100, 250, 500, 1000, 2500, 5000, 10_000];
const MOST_BLOCKS = 14;

/** A line a lens from nothing to its mass, lightest first, with the step from the one before. `null` without a lens. */
export function massDrawing(lenses: readonly LensMass[], width: number): Drawing | null {
  if (lenses.length === 0) return null;
  const sorted = [...lenses].sort((a, b) => a.massG - b.massG || (a.name < b.name ? -1 : 1));
  const heaviest = sorted[sorted.length - 1]?.massG ?? 0;
  const block = BLOCKS.find((g) => heaviest / g <= MOST_BLOCKS) ?? 20_000;
  const count = Math.max(1, Math.ceil(heaviest / block));
  const left = Math.ceil(Math.max(...sorted.map((lens) => toneWidth(lens.name, "t-b")))) + GAP;
  const right = width - WORDS;
  const x = (g: number): number => left + (g / (count * block)) * (right - left);
  const bottom = TOP + sorted.length * ROW;
  return {
    width,
    height: bottom + 4,
    title: titleOf(sorted),
    description: `A line a lens, lightest first, on a scale from nothing to ${grams(count * block)}; a block of the border is ${grams(block)}.`,
    items: [
      { type: "rect", k: "k-frame", x: left, y: TOP, width: right - left, height: bottom - TOP },
      ...scaleItems(count, block, x, bottom),
      ...sorted.flatMap((lens, i) => lensRow(lens, sorted[i - 1], TOP + (i + 0.5) * ROW, { x, left })),
    ],
  };
}

function scaleItems(count: number, block: number, x: (g: number) => number, bottom: number): DrawItem[] {
  const ticks = Array.from({ length: count + 1 }, (_, i) => i * block);
  const items: DrawItem[] = [
    { type: "path", k: "k-grid", d: ticks.map((g) => segment(x(g), TOP, x(g), bottom)).join("") },
    ...scaleBar(ticks.map(x), TOP - 4),
  ];
  let free = Number.NEGATIVE_INFINITY;
  for (const g of ticks) {
    const label = text(x(g), TOP - 11, g === 0 ? "0 g" : thousands(g), "middle", "t-fine");
    if (boxOf(label).left < free + 12) continue;
    free = boxOf(label).right;
    items.push(label);
  }
  return items;
}

function lensRow(
  lens: LensMass,
  before: LensMass | undefined,
  y: number,
  at: { readonly x: (g: number) => number; readonly left: number },
): DrawItem[] {
  const x = at.x(lens.massG);
  const mass = text(x + 10, y + 4.5, grams(lens.massG), "start", "t-b");
  const items: DrawItem[] = [
    text(at.left - GAP, y + 4.5, lens.name, "end", "t-b"),
    { type: "line", k: "k-focal", x1: at.left, y1: y, x2: x, y2: y },
    { type: "circle", k: "k-roll", x, y, r: 4.5 },
    mass,
  ];
  if (before !== undefined) {
    const step = lens.massG - before.massG;
    const words = step === 0 ? `as ${before.name}` : `${signedGrams(step)} on ${before.name}`;
    items.push(text(boxOf(mass).right + 6, y + 4.5, words, "start", "t-fine"));
  }
  return items;
}

function titleOf(sorted: readonly LensMass[]): string {
  const lightest = sorted[0];
  const heaviest = sorted[sorted.length - 1];
  if (lightest === undefined || heaviest === undefined) return "";
  if (lightest.massG === heaviest.massG) return `Every lens weighs ${grams(lightest.massG)}`;
  return `From ${grams(lightest.massG)} (${lightest.name}) to ${grams(heaviest.massG)} (${heaviest.name})`;
}
