/** The ribbon of a row of the day: every row has the same seconds a pixel and the same focus scale. */
import { dioptresFromMetres } from "../../core/quantity.ts";
import { minutesSeconds } from "../../format/time.ts";
import type { PageDistances } from "../../format/units.ts";
import type { TakeSummary } from "../../summary/types.ts";
import { nominalRate } from "../../time/frame-rate.ts";
import type { DrawItem, Drawing } from "../drawing.ts";
import { boxOf, text } from "../labels.ts";
import { bar, polyline, segment } from "../path.ts";
import { type DistanceScale, distanceScale } from "../scales.ts";
import { emptyRuns } from "../series.ts";
import { toneWidth } from "../text-width.ts";
import { oneUnitDrawn } from "../unit-choices.ts";
import { focusLine } from "./focus-line.ts";
import { gapEdges, gapSpans } from "./gaps.ts";
import { ribbonTitle, shortDistance } from "./ribbon-words.ts";
import { leastBand, thinDepth } from "./thin-band.ts";

export interface RowRibbonOptions {
  readonly pixelsPerSecond: number;
  /** Height of the drawing; 57 gives 54 pixels a dioptre. */
  readonly height: number;
  /** First row of a slate: the grid is labelled. */
  readonly firstRow: boolean;
  readonly distances: PageDistances;
  /** Whole width, so that rows line up; what the take needs without it. */
  readonly width?: number;
}

/** Left of the plot, for the labels of the grid. */
export const ROW_GUTTER = 34;
const TOP = 8;
const BOTTOM = 4;
/** Nearest distance of the scale, 1.2 m. */
const FLOOR_DIOPTRES = 1 / 1.2;

const METRIC_GRID = [
  { dioptres: 1 / 3, text: "3" },
  { dioptres: 1 / 1.5, text: "1.5" },
];
const IMPERIAL_GRID = [
  { dioptres: 1 / (10 * 0.3048), text: "10'" },
  { dioptres: 1 / (5 * 0.3048), text: "5'" },
];

/**
 * Line, band and two upright lines for a gap; dotted lines for what was only noted; a triangle on the floor with the
 * distance where the focus comes nearer than the scale. A band too thin to see has its least depth beside it. Decorative: the cells of the row hold the values.
 */
export function rowRibbon(summary: TakeSummary, options: RowRibbonOptions): Drawing {
  const { take, perFrame } = summary;
  const seconds = take.durationFrames / nominalRate(take.rate);
  const right = ROW_GUTTER + Math.max(take.durationFrames > 0 ? 2 : 0, seconds * options.pixelsPerSecond);
  const frames = Math.max(1, take.durationFrames);
  const x = (frame: number) => ROW_GUTTER + ((right - ROW_GUTTER) * frame) / frames;
  const scale = distanceScale(TOP, options.height - BOTTOM, FLOOR_DIOPTRES);
  const depth = perFrame === null ? null : thinDepth(summary, scale, options.distances);
  const items: DrawItem[] = [];
  if (take.durationFrames > 0) {
    items.push(frameWithGrid(options.distances, scale, right));
    if (options.firstRow) items.push(...gridLabels(options.distances, scale));
    if (perFrame !== null) {
      const drawn = focusLine(perFrame, scale, x, true);
      items.push(...drawn.band, ...(depth === null ? [] : leastBand(perFrame, scale, x)), ...drawn.line);
      const gaps = perFrame.focusDioptres.every(Number.isNaN) ? [] : gapSpans(emptyRuns(perFrame.focusDioptres), x);
      if (gaps.length > 0) items.push({ type: "path", k: "k-gap", d: gaps.map((g) => gapEdges(g, TOP, scale.floorY)).join("") });
    }
    items.push(...noted(summary, scale, right));
  }
  const off = offScale(summary, options, scale, x, right);
  items.push(...off.items);
  const beside = depth === null ? null : text(right + 6, TOP + 12, depth, "start", "t-fine t-focus");
  const end = beside === null ? off.right : Math.max(off.right, boxOf(beside).right);
  if (beside !== null && end <= (options.width ?? end)) items.push(beside);
  return {
    width: options.width ?? Math.ceil(end),
    height: options.height,
    title: ribbonTitle(summary, options.distances),
    description: "Focus over time on the scale of the day: height is 1 / distance, from infinity down to 1.2 m.",
    items,
  };
}

/** The round distances of the grid, for each choice of the reader's. */
function grids(distances: PageDistances) {
  return oneUnitDrawn(distances).map(({ system, units }) => ({ grid: system === "imperial" ? IMPERIAL_GRID : METRIC_GRID, units }));
}

/** The grid is drawn once: 3 m and 10 ft, 1.5 m and 5 ft lie less than a pixel apart in a row. */
function frameWithGrid(distances: PageDistances, scale: DistanceScale, right: number): DrawItem {
  const grid = grids(distances)[0]?.grid ?? [];
  const lines = grid.map(({ dioptres }) => segment(ROW_GUTTER, scale.y(dioptres), right, scale.y(dioptres)));
  const box = bar(ROW_GUTTER, TOP, right - ROW_GUTTER, scale.floorY - TOP);
  return { type: "path", k: "k-row", d: box + lines.join("") };
}

function gridLabels(distances: PageDistances, scale: DistanceScale): readonly DrawItem[] {
  const labels = grids(distances).flatMap(({ grid, units }) => {
    // On a low row only infinity and the nearer line have room.
    const room = scale.y(grid[0]?.dioptres ?? 0) - scale.infinityY >= 13;
    const shown = room ? grid : grid.slice(1);
    return shown.map((g) => ({ ...text(ROW_GUTTER - 5, scale.y(g.dioptres) + 4.3, g.text, "end", "t-fine"), ...units }));
  });
  return [text(ROW_GUTTER - 5, scale.infinityY + 5, "\u221e", "end", "t-ink"), ...labels];
}

function noted(summary: TakeSummary, scale: DistanceScale, right: number): readonly DrawItem[] {
  const focus = summary.focus;
  if (focus === null || focus.source !== "noted") return [];
  const ends = [...new Set([focus.startM, focus.endM])].map((m) => scale.y(dioptresFromMetres(m)));
  return [{ type: "path", k: "k-noted", thin: true, d: ends.map((y) => segment(ROW_GUTTER + 1, y, right, y)).join("") }];
}

/** Triangle at the nearest frame and "to 0.69 m" behind the plot. */
function offScale(
  summary: TakeSummary,
  options: RowRibbonOptions,
  scale: DistanceScale,
  x: (frame: number) => number,
  right: number,
): { readonly items: readonly DrawItem[]; readonly right: number } {
  const nearest = summary.focus === null ? 0 : dioptresFromMetres(summary.focus.nearestM);
  if (nearest <= FLOOR_DIOPTRES + 1e-6 || summary.take.durationFrames === 0) return { items: [], right: right + 2 };
  const values = summary.perFrame?.focusDioptres ?? new Float64Array(0);
  let first = -1;
  let last = -1;
  for (let i = 0; i < values.length; i++) {
    if ((values[i] ?? 0) < nearest * 0.98) continue;
    if (first < 0) first = i;
    last = i;
  }
  const at = Math.min(right - 5, Math.max(ROW_GUTTER + 5, first < 0 ? ROW_GUTTER + 5 : x((first + last) / 2)));
  const y = scale.floorY;
  const triangle = polyline([at - 5, at + 5, at], [y - 3, y - 3, y + 3], true);
  const label = text(right + 6, y, `to ${shortDistance(summary.focus?.nearestM ?? "inf", options.distances)}`, "start", "t-focus");
  return { items: [{ type: "path", k: "k-off", d: triangle }, label], right: right + 8 + toneWidth(label.text, label.tone) };
}

/** The time scale for the head of the rows: minutes and seconds over a border of blocks. */
export function rowTimeScale(options: { readonly pixelsPerSecond: number; readonly seconds: number }): Drawing {
  const { pixelsPerSecond, seconds } = options;
  const step = [5, 10, 15, 30, 60, 120, 300, 600].find((s) => s * pixelsPerSecond >= 44) ?? 1200;
  const block = [1, 5, 10, 30, 60, 300].find((s) => s * pixelsPerSecond >= 20) ?? 600;
  const right = ROW_GUTTER + seconds * pixelsPerSecond;
  const items: DrawItem[] = [{ type: "path", k: "k-bar-open", d: bar(ROW_GUTTER, 22, right - ROW_GUTTER, 5) }];
  let d = "";
  for (let s = 0; s < seconds; s += 2 * block) {
    const from = ROW_GUTTER + s * pixelsPerSecond;
    d += bar(from, 22, Math.min(block * pixelsPerSecond, right - from), 5);
  }
  items.push({ type: "path", k: "k-bar", d });
  for (let s = 0; s <= seconds; s += step) {
    const at = ROW_GUTTER + s * pixelsPerSecond;
    items.push(text(at, 14, s === 0 ? "0" : minutesSeconds(s), s === 0 ? "start" : "middle"));
  }
  return {
    width: Math.ceil(right) + 20,
    height: 30,
    title: `Time scale of the rows, 0 to ${minutesSeconds(seconds)}`,
    description: `One block is ${block === 1 ? "a second" : `${block} seconds`}.`,
    items,
  };
}
