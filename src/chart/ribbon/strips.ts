/** The strips under the focus plot: stop in whole stops, focal length on a log scale. They share the plot's time. */
import { millimetres } from "../../format/length.ts";
import { trimmed } from "../../format/number.ts";
import { tStop } from "../../format/stop.ts";
import { exactStop, FULL_STOPS } from "../../optics/stop-series.ts";
import { runsOfNumbers } from "../../stats/runs.ts";
import type { TakeSummary } from "../../summary/types.ts";
import type { DrawItem, Mark } from "../drawing.ts";
import { boxOf, overlaps, text } from "../labels.ts";
import { polyline, segment } from "../path.ts";
import { trace } from "../series.ts";

/** One strip: where it stands and what is drawn in it. Gaps and time lines are the caller's. */
export interface Strip {
  readonly title: string;
  readonly height: number;
  readonly ticks: readonly { readonly y: number; readonly text: string }[];
  readonly items: readonly DrawItem[];
  readonly values: Float64Array | null;
}

/** Left and right edge in pixels, top edge, and the time scale. */
export interface StripPlace {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  x(frame: number): number;
}

const STOP_HEIGHT = 58;
const FOCAL_HEIGHT = 48;
/** Room above the highest value for its label. */
const HEAD = 18;
const TICK_GAP = 14;

/** The stop over time, deeper is higher; a noted stop is a dotted line. `null` without any stop. */
export function stopStrip(summary: TakeSummary, place: StripPlace): Strip | null {
  const stop = summary.tStop;
  if (stop === null) return null;
  const level = (t: number) => 2 * Math.log2(t);
  const lowest = Math.floor(level(stop.widest) + 0.05) - 1;
  const highest = Math.max(Math.ceil(level(stop.deepest) - 0.05), lowest + 2);
  const bottom = place.top + STOP_HEIGHT;
  const y = (t: number) => bottom - 6 - ((level(t) - lowest) / (highest - lowest)) * (STOP_HEIGHT - 6 - HEAD);
  const values = summary.perFrame?.tStop ?? null;
  const logged = values === null ? [] : runsOfNumbers(values);
  const full = FULL_STOPS.map((label) => ({ y: y(exactStop(label)), text: String(label), level: level(exactStop(label)) }));
  const ticks = spaced(
    full.filter((s) => s.level > lowest - 0.05 && s.level < highest + 1.05 && s.y > place.top + 4),
    TICK_GAP,
  );
  const base = { title: "stop, T", height: STOP_HEIGHT, ticks };
  if (values === null || logged.length === 0) {
    const ends = stop.widest === stop.deepest ? [stop.widest] : [stop.widest, stop.deepest];
    const d = ends.map((t) => segment(place.left, y(t), place.right, y(t))).join("");
    const words = `${ends.map(tStop).join(" to ")}, ${stop.source}`;
    const label = text(place.left + 8, y(stop.deepest) - 7, words, "start", "t-stop t-b");
    return { ...base, values: null, items: [{ type: "path", k: "k-noted-stop", d }, label] };
  }
  const items = lineItems(values, place, y, "k-stop", { k: "k-stop-band", floor: bottom });
  return { ...base, values, items: [...items, ...endLabels(values, place, y, tStop, "t-stop t-b halo")] };
}

/** The focal length over time; `null` unless it can change (a zoom) and was logged. */
export function focalStrip(summary: TakeSummary, place: StripPlace): Strip | null {
  const { focal, perFrame, take } = summary;
  if (focal === null || perFrame === null || runsOfNumbers(perFrame.focalMm).length === 0) return null;
  if (take.lens?.kind !== "zoom" && focal.minMm === focal.maxMm) return null;
  const smallest = Math.min(take.lens?.focalMinMm ?? focal.minMm, focal.minMm);
  const largest = Math.max(take.lens?.focalMaxMm ?? focal.maxMm, focal.maxMm, smallest * 1.2);
  const bottom = place.top + FOCAL_HEIGHT;
  const reach = Math.log2(largest / smallest);
  const y = (mm: number) => bottom - 6 - (Math.log2(mm / smallest) / reach) * (FOCAL_HEIGHT - 6 - HEAD + 10);
  const inner = [smallest, largest, ...ROUND_FOCALS.filter((mm) => mm > smallest && mm < largest)];
  const ticks = spaced(
    inner.map((mm) => ({ y: y(mm), text: trimmed(mm, 0) })),
    TICK_GAP,
  );
  const items = lineItems(perFrame.focalMm, place, y, "k-focal", null);
  const labels = endLabels(perFrame.focalMm, place, y, (mm) => millimetres(Math.round(mm * 10) / 10), "t-b halo");
  return { title: "focal, mm", height: FOCAL_HEIGHT, ticks, items: [...items, ...labels], values: perFrame.focalMm };
}

const ROUND_FOCALS = [50, 35, 100, 75, 25, 135, 200, 300, 18, 14, 40, 65, 85, 150, 250, 400, 600, 28, 32, 21];

/** Keeps a tick only where it stands `gap` pixels from every one kept before. */
function spaced<T extends { readonly y: number }>(ticks: readonly T[], gap: number): readonly T[] {
  const kept: T[] = [];
  for (const tick of ticks) if (kept.every((other) => Math.abs(other.y - tick.y) >= gap - 1e-6)) kept.push(tick);
  return kept;
}

function lineItems(
  values: Float64Array,
  place: StripPlace,
  y: (value: number) => number,
  k: Mark,
  band: { readonly k: Mark; readonly floor: number } | null,
): readonly DrawItem[] {
  let line = "";
  let area = "";
  for (const run of runsOfNumbers(values)) {
    const points = trace(values, run, place.x, y);
    line += polyline(points.xs, points.ys);
    const [left = 0] = points.xs;
    const right = points.xs.at(-1) ?? left;
    if (band !== null) area += polyline([...points.xs, right, left], [...points.ys, band.floor, band.floor], true);
  }
  const items: DrawItem[] = band === null ? [] : [{ type: "path", k: band.k, d: area }];
  items.push({ type: "path", k, d: line });
  return items;
}

/** The value at both ends, above the line; one label when both read alike. */
function endLabels(
  values: Float64Array,
  place: StripPlace,
  y: (value: number) => number,
  words: (value: number) => string,
  tone: string,
): readonly DrawItem[] {
  const runs = runsOfNumbers(values);
  const from = runs[0]?.first ?? 0;
  const to = runs.at(-1)?.last ?? 0;
  const first = values[from] ?? 0;
  const last = values[to] ?? 0;
  const start = text(place.x(from) + 8, y(first) - 6, words(first), "start", tone);
  if (words(first) === words(last)) return [start];
  const end = text(place.x(to + 1) - 8, y(last) - 6, words(last), "end", tone);
  return overlaps(boxOf(start), boxOf(end), 4) ? [start] : [start, end];
}
