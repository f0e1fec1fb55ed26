/** How far each lens opens, on a scale of third stops. */
import { lightRatioText, signedStops, stopNumber, stopRange, stops, tStop } from "../../format/stop.ts";
import { plural } from "../../format/words.ts";
import { stopsBetween } from "../../optics/exposure.ts";
import { THIRD_STOPS } from "../../optics/stop-series.ts";
import { lowerMiddle } from "../../stats/summary.ts";
import type { DrawItem, Drawing } from "../drawing.ts";
import { boxOf, text } from "../labels.ts";
import { polyline, segment } from "../path.ts";
import { scaleBar } from "../scale-bar.ts";
import { toneWidth } from "../text-width.ts";

/** A lens with its widest T-stop. */
export interface LensStop {
  readonly name: string;
  readonly kind: "prime" | "zoom";
  readonly widestT: number;
}

const ROW = 25;
const TOP = 34;
const GAP = 10;
/** Room right of the scale for the longest words beside a dot or a bracket. */
const WORDS = 300;
const BRACKET = 24;

/**
 * A row a lens in the order given: a dot at its widest stop, a line to the middle of the primes (dotted), the stop and the
 * difference in words. Under the rows the spread of the primes and of all. `null` without a lens.
 */
export function widestStopsDrawing(lenses: readonly LensStop[], width: number): Drawing | null {
  if (lenses.length === 0) return null;
  const levels = lenses.map((lens) => level(lens.widestT));
  const from = Math.floor(3 * Math.min(...levels) - 0.05) / 3;
  const to = Math.max(Math.ceil(3 * Math.max(...levels) + 0.05) / 3, from + 1);
  const left = Math.ceil(Math.max(...lenses.map((lens) => toneWidth(lens.name, "t-b")))) + GAP;
  const right = width - WORDS;
  const x = (at: number): number => left + ((at - from) / (to - from)) * (right - left);
  const bottom = TOP + lenses.length * ROW;
  const primes = lenses.filter((lens) => lens.kind === "prime");
  const middle = lowerMiddle(Float64Array.from((primes.length > 0 ? primes : lenses).map((lens) => level(lens.widestT)))) ?? from;
  const brackets = bracketsOf(lenses, primes, x, bottom);
  return {
    width,
    height: bottom + 8 + brackets.length * BRACKET,
    title: titleOf(lenses),
    description: `A row a lens on a scale of third stops, from ${tStop(2 ** (from / 2))} to ${tStop(2 ** (to / 2))}; dots at the widest stops, dotted the middle of the primes, ${tStop(2 ** (middle / 2))}.`,
    items: [
      { type: "rect", k: "k-frame", x: left, y: TOP, width: right - left, height: bottom - TOP },
      ...thirds(from, to, x, bottom),
      { type: "line", k: "k-lead", x1: x(middle), y1: TOP, x2: x(middle), y2: bottom },
      ...lenses.flatMap((lens, i) => lensRow(lens, TOP + (i + 0.5) * ROW, middle, { x, left })),
      ...brackets.flat(),
    ],
  };
}

function level(t: number): number {
  return 2 * Math.log2(t);
}

function thirds(from: number, to: number, x: (at: number) => number, bottom: number): DrawItem[] {
  const count = Math.round(3 * (to - from));
  const at = (i: number) => from + i / 3;
  const items: DrawItem[] = scaleBar(
    Array.from({ length: count + 1 }, (_, i) => x(at(i))),
    TOP - 4,
  );
  let grid = "";
  let free = Number.NEGATIVE_INFINITY;
  for (let i = 0; i <= count; i++) {
    grid += segment(x(at(i)), TOP, x(at(i)), bottom);
    const third = THIRD_STOPS.find(({ exact }) => Math.abs(level(exact) - at(i)) < 0.01);
    if (third === undefined) continue;
    const isFull = Math.abs(at(i) - Math.round(at(i))) < 0.01;
    const label = text(x(at(i)), TOP - 11, isFull ? `T${third.label}` : String(third.label), "middle", isFull ? "t-b" : "t-fine");
    if (boxOf(label).left < free + 6) continue;
    free = boxOf(label).right;
    items.push(label);
  }
  return [{ type: "path", k: "k-grid", d: grid }, ...items];
}

function lensRow(
  lens: LensStop,
  y: number,
  middle: number,
  at: { readonly x: (level: number) => number; readonly left: number },
): DrawItem[] {
  const here = level(lens.widestT);
  const x = at.x(here);
  const difference = here - middle;
  const words = `${signedStops(difference)}${lens.kind === "zoom" ? ", zoom" : ""}`;
  const stop = text(x + 10, y + 4.5, tStop(lens.widestT), "start", "t-b");
  const items: DrawItem[] = [text(at.left - GAP, y + 4.5, lens.name, "end", "t-b")];
  if (Math.abs(difference) > 0.01) items.push({ type: "line", k: "k-stop", x1: at.x(middle), y1: y, x2: x, y2: y });
  items.push({ type: "circle", k: "k-stop-dot", x, y, r: 4.5 }, stop);
  if (Math.abs(difference) > 0.005) items.push(text(boxOf(stop).right + 6, y + 4.5, words, "start", "t-fine"));
  return items;
}

/** The spread of the primes, and of all lenses when that is another. */
function bracketsOf(
  lenses: readonly LensStop[],
  primes: readonly LensStop[],
  x: (level: number) => number,
  bottom: number,
): readonly (readonly DrawItem[])[] {
  const groups = [
    { of: primes, words: plural(primes.length, "prime") },
    { of: lenses, words: "all lenses" },
  ].filter(({ of }, i) => of.length > 1 && (i === 0 || !sameEnds(of, primes)));
  return groups.map(({ of, words }, i) => {
    const [fastest, slowest] = ends(of);
    const y = bottom + 8 + i * BRACKET;
    const from = x(level(fastest));
    const to = x(level(slowest));
    const label = `${stops(stopsBetween(fastest, slowest))}, light ratio ${lightRatioText((slowest / fastest) ** 2)}, ${words}`;
    return [
      { type: "path", k: "k-bracket", d: polyline([from, from, to, to], [y, y + 8, y + 8, y]) },
      text(to + 8, y + 12, label, "start", "t-fine"),
    ];
  });
}

function sameEnds(a: readonly LensStop[], b: readonly LensStop[]): boolean {
  return b.length > 0 && ends(a).every((end, i) => end === ends(b)[i]);
}

function ends(lenses: readonly LensStop[]): readonly [number, number] {
  const widest = lenses.map((lens) => lens.widestT);
  return [Math.min(...widest), Math.max(...widest)];
}

function titleOf(lenses: readonly LensStop[]): string {
  const [fastest, slowest] = ends(lenses);
  if (stopNumber(fastest) === stopNumber(slowest)) return `Every lens opens to ${tStop(fastest)}`;
  return `Widest stops ${stopRange(fastest, slowest)}, ${stops(stopsBetween(fastest, slowest))} apart: the set can hold ${tStop(slowest)}`;
}
