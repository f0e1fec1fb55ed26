/** Figures of a lens over focus: a line a focal length or stop, on a scale of equal amounts of focus. */
import { fixed } from "../../format/number.ts";
import type { PageDistances } from "../../format/units.ts";
import type { FocusCurve } from "../../summary/lens-curves.ts";
import type { DrawItem, Drawing, Mark } from "../drawing.ts";
import { boxOf, overlaps, type TextItem, text } from "../labels.ts";
import { polyline, segment } from "../path.ts";
import { type DistanceScale, distanceScale, footTicks, metreTicks } from "../scales.ts";
import { toneWidth } from "../text-width.ts";
import { oneUnitDrawn } from "../unit-choices.ts";
import { roundTicks, spread, tickDigits } from "../value-axis.ts";

export interface FocusCurvesOptions {
  readonly width: number;
  readonly height: number;
  readonly distances: PageDistances;
  /** Ink for geometry, plum for light. */
  readonly role: "ink" | "light";
  /** Unit of the values, written over the axis. */
  readonly unit: string;
  /** Words at the end of a line. */
  readonly label: (curve: FocusCurve) => string;
  readonly title: string;
  readonly description: string;
}

const LEFT = 52;
const TOP = 22;
const BOTTOM = 22;
const MARKS: Readonly<Record<FocusCurvesOptions["role"], readonly Mark[]>> = {
  ink: ["k-focal", "k-line-dash", "k-line-dot"],
  light: ["k-stop", "k-light-dash", "k-light-dot"],
};

/** Infinity on the left, near on the right. `null` without a line. */
export function focusCurvesDrawing(curves: readonly FocusCurve[], options: FocusCurvesOptions): Drawing | null {
  const values = curves.flatMap((c) => c.points.map((p) => p.value));
  if (values.length === 0) return null;
  const labels = curves.map(options.label);
  const right = options.width - Math.ceil(Math.max(...labels.map((l) => toneWidth(l, "t-b")))) - 12;
  const floor = options.height - BOTTOM;
  const ticks = roundTicks(Math.min(0, ...values), Math.max(0, ...values), 5);
  const [low = 0, high = 1] = [ticks[0], ticks.at(-1)];
  const y = (value: number): number => TOP + ((high - value) / (high - low)) * (floor - TOP);
  const nearest = Math.max(...curves.flatMap((c) => c.points.map((p) => p.focusDioptres)));
  const scale = distanceScale(LEFT, right, Math.max(nearest, 1e-3));
  const digits = tickDigits(ticks);
  const items: DrawItem[] = [
    { type: "rect", k: "k-frame", x: LEFT, y: TOP, width: right - LEFT, height: floor - TOP },
    { type: "path", k: "k-grid", d: ticks.map((t) => segment(LEFT, y(t), right, y(t))).join("") },
    { type: "path", k: "k-infinity", d: segment(LEFT, y(0), right, y(0)) },
    ...ticks.map((t) => text(LEFT - 8, y(t) + 4, fixed(t, digits), "end", "t-fine")),
    text(0, TOP - 9, options.unit, "start", "t-fine"),
    ...focusAxis(scale, floor, options.distances),
  ];
  curves.forEach((curve, i) => {
    const xs = curve.points.map((p) => scale.y(p.focusDioptres));
    const k = MARKS[options.role][i % 3] ?? "k-focal";
    items.push({
      type: "path",
      k,
      d: polyline(
        xs,
        curve.points.map((p) => y(p.value)),
      ),
    });
  });
  const ends = curves.map((c) => y(c.points.at(-1)?.value ?? 0) + 4);
  const at = spread(ends, 14, TOP + 8, floor);
  const tone = options.role === "light" ? "t-b t-stop" : "t-b";
  labels.forEach((label, i) => {
    items.push(text(right + 6, at[i] ?? 0, label, "start", tone));
  });
  return { width: options.width, height: options.height, title: options.title, description: options.description, items };
}

function focusAxis(scale: DistanceScale, floor: number, distances: PageDistances): readonly DrawItem[] {
  return oneUnitDrawn(distances).flatMap(({ system, units }) =>
    oneFocusAxis(scale, floor, system).map((item) => ({ ...item, ...units })),
  );
}

/** Ticks under the plot; where two would touch, the rounder one stands. */
function oneFocusAxis(scale: DistanceScale, floor: number, system: "metric" | "imperial"): readonly DrawItem[] {
  const ticks = system === "imperial" ? footTicks(scale) : metreTicks(scale);
  const words = system === "imperial" ? "ft" : "m";
  const kept: TextItem[] = [];
  let d = "";
  const last = ticks.length - 1;
  ticks.forEach((tick, i) => {
    const x = scale.y(tick.dioptres);
    const label = text(x, floor + 17, i === last && i > 0 ? `${tick.text} ${words}` : tick.text, "middle", "t-fine");
    if (kept.some((other) => overlaps(boxOf(other), boxOf(label), 5))) return;
    kept.push(label);
    d += segment(x, floor, x, floor + 4);
  });
  return [{ type: "path", k: "k-axis", d: segment(scale.infinityY, floor, scale.floorY, floor) + d }, ...kept];
}
