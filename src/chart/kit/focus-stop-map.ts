/** Where a lens was used, in focus and stop, over what is calibrated and inside what the lens can do. */
import { distance } from "../../format/length.ts";
import { tStop } from "../../format/stop.ts";
import { minutesSeconds } from "../../format/time.ts";
import { oneSystem, type PageDistances } from "../../format/units.ts";
import { exactStop, FULL_STOPS } from "../../optics/stop-series.ts";
import { bandEdges, type LensMap, type UsedCell } from "../../summary/lens-map.ts";
import type { DrawItem, Drawing, Mark } from "../drawing.ts";
import { labelBoard, type TextItem, text } from "../labels.ts";
import { bar, polyline, segment } from "../path.ts";
import { scaleBar } from "../scale-bar.ts";
import { type DistanceScale, distanceScale, floorFor, footTicks, metreTicks } from "../scales.ts";
import { oneUnitDrawn } from "../unit-choices.ts";

export interface FocusStopMapOptions {
  readonly width: number;
  readonly height: number;
  readonly distances: PageDistances;
  /** Frames a second, for the steps of the fill and the words. */
  readonly framesPerSecond: number;
}

const LEFT = 56;
const RIGHT = 128;
const TOP = 26;
const BOTTOM = 36;
/** Seconds from which a cell is filled darker. */
const FILL_SECONDS = { more: 10, most: 60 } as const;

/** Across: the stop, a block of the border is a third. Up: focus as 1 / distance. */
export function focusStopMap(map: LensMap, options: FocusStopMapOptions): Drawing {
  const right = options.width - RIGHT;
  const bottom = options.height - BOTTOM;
  const { from, to } = stopEnds(map);
  const x = (stops: number): number => LEFT + ((stops - from) / (to - from)) * (right - LEFT);
  const scale = distanceScale(TOP + 6, bottom, floorFor(nearestOf(map)));
  const place: MapPlace = { x, scale, left: LEFT, right, bottom };
  const labels = labelBoard({ left: 0, right: options.width, top: 0, bottom: options.height });
  const items: DrawItem[] = [
    { type: "rect", k: "k-frame", x: LEFT, y: TOP, width: right - LEFT, height: bottom - TOP },
    ...calibratedItems(map, place),
    ...cellItems(map.cells, place, options.framesPerSecond),
    ...gridItems(place, options.distances, from, to),
    ...limitItems(map, place, options.distances, labels),
  ];
  return {
    width: options.width,
    height: options.height,
    title: titleOf(map, options),
    description: `Stop from left to right, ${tStop(2 ** (from / 2))} to ${tStop(2 ** (to / 2))}, a block of the border is a third of a stop; focus from infinity on top to ${distance(1 / scale.floorDioptres, options.distances)}, height is 1 / distance. Filled: used; dots: calibration points; tinted: inside the table.`,
    items,
  };
}

interface MapPlace {
  readonly x: (stops: number) => number;
  readonly scale: DistanceScale;
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
}

function stopEnds(map: LensMap): { readonly from: number; readonly to: number } {
  const stops = [
    ...map.cells.flatMap((c) => [c.thirds / 3 - 1 / 6, c.thirds / 3 + 1 / 6]),
    ...(map.widestStops === null ? [] : [map.widestStops]),
    ...(map.calibrated?.stops == null ? [] : [map.calibrated.stops.from, map.calibrated.stops.to]),
  ];
  if (stops.length === 0) return { from: 1, to: 6 };
  const from = Math.floor(3 * Math.min(...stops) - 0.6) / 3;
  return { from, to: Math.max(Math.ceil(3 * Math.max(...stops) + 0.6) / 3, from + 2) };
}

function nearestOf(map: LensMap): number {
  const used = map.cells.map((cell) => {
    const { far, near } = bandEdges(cell.band);
    return Number.isFinite(near) ? near : far * 1.2;
  });
  return 1.02 * Math.max(0.2, map.closeFocusDioptres ?? 0, map.calibrated?.nearDioptres ?? 0, ...used);
}

function calibratedItems(map: LensMap, { x, scale, left, right }: MapPlace): readonly DrawItem[] {
  const table = map.calibrated;
  if (table === null) return [];
  const [a, b] = table.stops === null ? [left, right] : [x(table.stops.from), x(table.stops.to)];
  const [top, low] = [scale.y(table.farDioptres), scale.y(table.nearDioptres)];
  return [{ type: "path", k: "k-calibrated", d: bar(a, top, Math.max(b - a, 2), Math.max(low - top, 2)) }];
}

function cellItems(cells: readonly UsedCell[], { x, scale }: MapPlace, framesPerSecond: number): readonly DrawItem[] {
  const box = (cell: UsedCell): string => {
    const { far, near } = bandEdges(cell.band);
    const top = scale.y(far);
    const left = x(cell.thirds / 3 - 1 / 6);
    return bar(left, top, x(cell.thirds / 3 + 1 / 6) - left, scale.y(near) - top);
  };
  const items: DrawItem[] = [];
  for (const [k, of] of [
    ["k-used-some", (s: number) => s < FILL_SECONDS.more],
    ["k-used-more", (s: number) => s >= FILL_SECONDS.more && s < FILL_SECONDS.most],
    ["k-used-most", (s: number) => s >= FILL_SECONDS.most],
  ] as const satisfies readonly (readonly [Mark, (s: number) => boolean])[]) {
    const d = cells
      .filter((cell) => of(cell.frames / framesPerSecond))
      .map(box)
      .join("");
    if (d !== "") items.push({ type: "path", k, d });
  }
  const inside = cells
    .filter((c) => !c.outside)
    .map(box)
    .join("");
  const outside = cells
    .filter((c) => c.outside)
    .map(box)
    .join("");
  if (inside !== "") items.push({ type: "path", k: "k-used", d: inside });
  if (outside !== "") items.push({ type: "path", k: "k-outside", d: outside });
  return items;
}

function gridItems(
  { x, scale, left, right, bottom }: MapPlace,
  distances: PageDistances,
  from: number,
  to: number,
): readonly DrawItem[] {
  const thirds = Array.from({ length: Math.round(3 * (to - from)) + 1 }, (_, i) => x(from + i / 3));
  const full = FULL_STOPS.map((label) => ({ label, at: 2 * Math.log2(exactStop(label)) })).filter(
    (s) => s.at > from - 0.01 && s.at < to + 0.01,
  );
  return [
    {
      type: "path",
      k: "k-grid",
      d: full.map((s) => segment(x(s.at), TOP, x(s.at), bottom)).join(""),
    },
    ...oneUnitDrawn(distances).flatMap(({ system, units }) =>
      focusAxis(scale, left, right, system).map((item) => ({ ...item, ...units })),
    ),
    ...scaleBar(thirds, bottom),
    ...full.map((s) => text(x(s.at), bottom + 20, `T${s.label}`, "middle", "t-fine")),
  ];
}

function focusAxis(scale: DistanceScale, left: number, right: number, system: "metric" | "imperial"): readonly DrawItem[] {
  const ticks = system === "imperial" ? footTicks(scale) : metreTicks(scale);
  return [
    { type: "path", k: "k-grid", d: ticks.map((t) => segment(left, scale.y(t.dioptres), right, scale.y(t.dioptres))).join("") },
    text(0, TOP - 12, system === "imperial" ? "focus, ft" : "focus, m", "start", "t-fine"),
    ...ticks.map((t) => text(left - 8, scale.y(t.dioptres) + 4.3, t.text, "end", t.dioptres === 0 ? "t-ink t-inf" : "t-fine")),
  ];
}

/** Calibration points, the closest focus, the widest stop, and their words. */
function limitItems(
  map: LensMap,
  { x, scale, left, right, bottom }: MapPlace,
  distances: PageDistances,
  board: ReturnType<typeof labelBoard>,
): readonly DrawItem[] {
  const items: DrawItem[] = [];
  const words: (TextItem | undefined)[] = [];
  const beside = (y: number, ...lines: readonly string[]): void => {
    const tries = [0, -14, 14, 28, -28].map((by) =>
      lines.map((line, i) => text(right + 8, Math.max(TOP + 6, y + 4 + by) + 14 * i, line, "start", "t-fine")),
    );
    words.push(...(board.place(tries) ?? []));
  };
  for (const point of map.calibrated?.points ?? []) {
    if (point.stops !== null) items.push({ type: "circle", k: "k-roll", x: x(point.stops), y: scale.y(point.focusDioptres), r: 2 });
  }
  if (map.closeFocusDioptres !== null) {
    const y = scale.y(map.closeFocusDioptres);
    items.push({ type: "path", k: "k-axis", d: segment(left, y, right, y) });
    beside(y, "close focus", distance(1 / map.closeFocusDioptres, oneSystem(distances)));
  }
  if (map.widestStops !== null) {
    const at = x(map.widestStops);
    items.push({ type: "path", k: "k-stop", d: polyline([at, at], [TOP, bottom]) });
    words.push(
      board.place([[text(at + 4, TOP - 6, `widest ${tStop(2 ** (map.widestStops / 2))}`, "start", "t-fine t-stop")]])?.[0],
    );
  }
  if (map.calibrated !== null)
    beside(scale.y((map.calibrated.farDioptres + map.calibrated.nearDioptres) / 2), "tinted: calibrated");
  if (map.cells.some((cell) => cell.outside)) beside(scale.y(0.3 * scale.floorDioptres), "dashed: outside it");
  return [...items, ...words.filter((word) => word !== undefined)];
}

function titleOf(map: LensMap, { distances: system, framesPerSecond }: FocusStopMapOptions): string {
  if (map.cells.length === 0) return "Not used on a take with focus and stop logged";
  const stops = map.cells.map((c) => c.thirds / 3);
  const [wide, deep] = [tStop(2 ** (Math.min(...stops) / 2)), tStop(2 ** (Math.max(...stops) / 2))];
  const bands = map.cells.map((c) => bandEdges(c.band));
  const far = Math.min(...bands.map((b) => b.far));
  const near = Math.max(...bands.map((b) => b.near));
  const reach = `${distance(far === 0 ? "inf" : 1 / far, system)} to ${Number.isFinite(near) ? distance(1 / near, system) : "the lens"}`;
  return `Used for ${minutesSeconds(map.frames / framesPerSecond)} (min:s) at ${wide === deep ? wide : `${wide} to ${deep}`}, focus ${reach}`;
}
