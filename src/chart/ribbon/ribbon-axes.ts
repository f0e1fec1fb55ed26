/** Grid, axes and borders of the focus ribbon. Every block of a border is a measure: a second, a tenth of a dioptre. */
import { fixed } from "../../format/number.ts";
import type { DistanceSystem, PageDistances } from "../../format/units.ts";
import type { DrawItem } from "../drawing.ts";
import { text } from "../labels.ts";
import { bar, segment } from "../path.ts";
import { type DistanceScale, dioptreLabelStep, footTicks, metreTicks } from "../scales.ts";
import type { TimeAxis } from "../time-axis.ts";
import { unitsDrawn } from "../unit-choices.ts";
import type { Strip } from "./strips.ts";

const BORDER = 6;

export interface PlacedStrip {
  readonly strip: Strip;
  readonly top: number;
  readonly bottom: number;
}

export function gridLines(
  axis: TimeAxis,
  scale: DistanceScale,
  top: number,
  strips: readonly PlacedStrip[],
  system: PageDistances,
): readonly DrawItem[] {
  const { left, right } = axis;
  let d = "";
  for (const s of strips) for (const tick of s.strip.ticks) d += segment(left, tick.y, right, tick.y);
  for (const tick of axis.ticks) {
    d += segment(tick.x, top, tick.x, scale.floorY);
    for (const s of strips) d += segment(tick.x, s.top, tick.x, s.bottom);
  }
  const across = unitsDrawn(system).map(({ system: of, units }): DrawItem => {
    const ticks = (of === "imperial" ? footTicks(scale) : metreTicks(scale)).filter((tick) => tick.dioptres > 0);
    const lines = ticks.map((tick) => segment(left, scale.y(tick.dioptres), right, scale.y(tick.dioptres)));
    return { type: "path", k: "k-grid", d: lines.join(""), ...units };
  });
  return [
    ...across,
    { type: "path", k: "k-grid", d },
    { type: "path", k: "k-infinity", d: segment(left, scale.infinityY, right, scale.infinityY) },
  ];
}

/** Metres or feet down the left side; for both, feet further left on a line of their own. */
export function distanceAxis(scale: DistanceScale, axis: TimeAxis, top: number, distances: PageDistances): readonly DrawItem[] {
  return unitsDrawn(distances).flatMap(({ system, units }) =>
    oneAxis(scale, axis, top, system).map((item) => ({ ...item, ...units })),
  );
}

function oneAxis(scale: DistanceScale, axis: TimeAxis, top: number, system: DistanceSystem): readonly DrawItem[] {
  const main = system === "imperial" ? footTicks(scale) : metreTicks(scale);
  const items: DrawItem[] = [];
  let d = segment(axis.left - 0.5, top, axis.left - 0.5, scale.floorY);
  const side = (ticks: readonly { readonly dioptres: number; readonly text: string }[], line: number) => {
    for (const tick of ticks) {
      const y = scale.y(tick.dioptres);
      d += segment(line - 6, y, line, y);
      const infinite = tick.dioptres === 0;
      items.push(text(line - 10, y + (infinite ? 5.5 : 4.3), tick.text, "end", infinite ? "t-ink t-inf" : ""));
    }
  };
  side(main, axis.left);
  if (system === "both") {
    const line = axis.left - 50;
    d += segment(line, scale.infinityY, line, scale.floorY);
    side(
      footTicks(scale).filter((tick) => tick.dioptres > 0),
      line,
    );
    items.push(text(0, top - 6, "focus, ft", "start"), text(axis.left - 10, top - 6, "m", "end"));
  } else items.push(text(0, top - 6, system === "imperial" ? "focus, ft" : "focus, m"));
  return [{ type: "path", k: "k-axis", d }, ...items];
}

/** A block of the right border is a tenth of a dioptre. */
export function dioptreBorder(scale: DistanceScale, x: number, top: number): readonly DrawItem[] {
  const tenth = scale.pixelsPerDioptre / 10;
  const blocks = Math.ceil(scale.floorDioptres * 10 - 1e-9);
  let d = "";
  for (let i = 0; i < blocks; i += 2) {
    const y = scale.infinityY + i * tenth;
    d += bar(x, y, BORDER, Math.min(tenth, scale.floorY - y));
  }
  const items: DrawItem[] = [
    { type: "path", k: "k-bar-open", d: bar(x, scale.infinityY, BORDER, scale.floorY - scale.infinityY) },
    { type: "path", k: "k-bar", d },
    text(x + 12, top - 6, "1/m", "start", "t-fine"),
  ];
  const step = dioptreLabelStep(scale);
  for (let i = 0; i * 0.1 <= scale.floorDioptres + 1e-9; i += step) {
    items.push(text(x + 12, scale.y(i / 10) + 4, fixed(i / 10, 1), "start", "t-fine"));
  }
  return items;
}

export function timeBorder(axis: TimeAxis, floor: number): readonly DrawItem[] {
  if (axis.ticks.length === 0 && axis.blocks.length === 0)
    return [{ type: "path", k: "k-axis", d: segment(axis.left, floor, axis.right, floor) }];
  const items: DrawItem[] = [
    { type: "path", k: "k-bar-open", d: bar(axis.left, floor, axis.right - axis.left, BORDER) },
    { type: "path", k: "k-bar", d: axis.blocks.map((b) => bar(b.x, floor, b.width, BORDER)).join("") },
  ];
  if (axis.ticks.length > 0) {
    items.push({
      type: "path",
      k: "k-axis",
      d: axis.ticks.map((t) => segment(t.x, floor + BORDER, t.x, floor + BORDER + 5)).join(""),
    });
  }
  for (const tick of axis.ticks) items.push(text(tick.x, floor + BORDER + 18, tick.label, "middle"));
  return items;
}

export function stripAxis({ strip, top }: PlacedStrip, axis: TimeAxis): readonly DrawItem[] {
  const d = strip.ticks.map((t) => segment(axis.left - 6, t.y, axis.left, t.y)).join("");
  return [
    { type: "path", k: "k-axis", d },
    text(0, top - 7, strip.title),
    ...strip.ticks.map((t) => text(axis.left - 10, t.y + 4.3, t.text, "end")),
  ];
}
