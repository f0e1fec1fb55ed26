/** The focus ribbon of a take sheet: focus over time with its depth of field, the stop and the focal length under it. */
import { dioptresFromMetres } from "../../core/quantity.ts";
import { fixed } from "../../format/number.ts";
import { type PageDistances, showsWish } from "../../format/units.ts";
import { plural } from "../../format/words.ts";
import { noteMarks } from "../../summary/note-marks.ts";
import type { TakeSummary } from "../../summary/types.ts";
import { nominalRate } from "../../time/frame-rate.ts";
import type { DrawItem, Drawing } from "../drawing.ts";
import { labelBoard } from "../labels.ts";
import { segment } from "../path.ts";
import { type DistanceScale, distanceScale, floorFor } from "../scales.ts";
import { emptyRuns } from "../series.ts";
import { type TimeAxis, timeAxis } from "../time-axis.ts";
import { envelope } from "./envelope.ts";
import { coverFocus, focusLine } from "./focus-line.ts";
import { type GapSpan, gapEdges, gapHatching, gapSpans } from "./gaps.ts";
import { noteMarkItems } from "./note-marks.ts";
import { PULL_HEIGHT, pullBrackets, pullLabels, pullRows } from "./pull-brackets.ts";
import { dioptreBorder, distanceAxis, gridLines, type PlacedStrip, stripAxis, timeBorder } from "./ribbon-axes.ts";
import { gapLabels, limitLabels, missingLabel, missingWords, notedLines, type Plot } from "./ribbon-labels.ts";
import { ribbonTitle } from "./ribbon-words.ts";
import { focalStrip, stopStrip } from "./strips.ts";

export interface FocusRibbonOptions {
  /** Whole width in CSS pixels, axes included; 480 at least. */
  readonly width: number;
  readonly distances: PageDistances;
  /** Frame that the cursor stands on, such as the middle logged frame that the readout shows; none without it. */
  readonly cursor?: number | null;
  /** Height from infinity to the nearest distance in CSS pixels; 324 if not given, 120 at least. */
  readonly scaleHeight?: number;
  /** Leaves out the strip of a stop or a focal length that is the same all through: the figures beside the drawing say it. */
  readonly changingOnly?: boolean;
}

/** The drawing and what a script needs to move the cursor: x = left + frame * (right - left) / frames. */
export interface FocusRibbon extends Drawing {
  readonly plot: {
    readonly left: number;
    readonly right: number;
    readonly frames: number;
    readonly infinityY: number;
    readonly pixelsPerDioptre: number;
    readonly top: number;
    readonly bottom: number;
    /** Seconds that one black or white block of the lower border stands for. */
    readonly blockSeconds: number;
  };
  /** The left axes alone, as high as the drawing: for a plot that scrolls under them. */
  readonly leftAxis: Drawing;
}

const SCALE_HEIGHT = 324;
const RIGHT_MARGIN = 56;
const LEFT_MARGIN = { metric: 64, imperial: 64, both: 108 } as const;
/** What changes by less is the play of the log. */
const STEADY_STOPS = 0.1;
const STEADY_MM = 0.5;
/** Keeps the nearest line off the floor. */
const HEADROOM = 1.04;

/**
 * The ribbon of one take. Height follows from what there is to draw. Texts stay inside the drawing whatever sans the
 * reader has; what finds no room is left to the tables beside it.
 */
export function focusRibbon(summary: TakeSummary, options: FocusRibbonOptions): FocusRibbon {
  const { take, perFrame } = summary;
  const width = Math.max(480, options.width);
  const system = options.distances;
  const axis = timeAxis(take, LEFT_MARGIN[showsWish(system)], width - RIGHT_MARGIN);
  const pulls = take.durationFrames > 0 ? (summary.pulls ?? []) : [];
  const base = nominalRate(take.rate);
  const labels = pullLabels(pulls, axis.x, axis.right, system, (frames) => frames / base);
  const rows = pullRows(labels.numbered);
  const slated = noteMarks(take).some((mark) => mark.kind === "slate");
  const top = pulls.length === 0 && !slated ? 24 : PULL_HEIGHT.labels + (labels.numbered ? PULL_HEIGHT.numbers : 0);
  const scale = distanceScale(top + 8, top + 8 + (options.scaleHeight ?? SCALE_HEIGHT), floorFor(nearestOf(summary) * HEADROOM));
  const floor = scale.floorY;
  const strips = placeStrips(summary, options.changingOnly === true, axis, floor + (axis.ticks.length > 0 ? 34 : 14));
  const height = 2 + (strips.at(-1)?.bottom ?? floor + (axis.ticks.length > 0 ? 28 : 10));

  const cover = envelope(axis.left, axis.right);
  if (perFrame !== null) coverFocus(perFrame, scale, axis.x, cover);
  const board = labelBoard({ left: axis.left + 2, right: axis.right - 2, top: top + 2, bottom: floor - 2 }, (box) =>
    cover.blocks(box),
  );
  const plot: Plot = { summary, system, axis, scale, board, cover };
  const gaps = perFrame === null ? [] : gapSpans(partlyEmpty(perFrame.focusDioptres), axis.x);
  for (const gap of gaps) board.reserve({ left: gap.left, right: gap.right, top, bottom: floor });

  const cursor = options.cursor ?? null;
  if (cursor !== null) board.reserve({ left: axis.x(cursor) - 1, right: axis.x(cursor) + 1, top, bottom: floor });

  const items: DrawItem[] = [
    { type: "rect", k: "k-frame", x: axis.left, y: top, width: axis.right - axis.left, height: floor - top },
    ...strips.map(
      (s): DrawItem => ({
        type: "rect",
        k: "k-frame",
        x: axis.left,
        y: s.top,
        width: axis.right - axis.left,
        height: s.bottom - s.top,
      }),
    ),
    ...gridLines(axis, scale, top, strips, system),
  ];
  if (perFrame !== null && take.durationFrames > 0) {
    const drawn = focusLine(perFrame, scale, axis.x, false);
    items.push(...drawn.band, ...drawn.line);
  }
  items.push(...notedLines(plot), ...strips.flatMap((s) => s.strip.items), ...gapItems(gaps, top + 8, floor, strips, axis));
  items.push(...pullBrackets(pulls, axis.x, scale, rows));
  items.push(...limitLabels(plot), ...gapLabels(plot, gaps), ...missingLabel(plot));
  const noted = noteMarkItems(plot, top, height, labels.texts);
  items.push(...noted.items, ...labels.texts, ...noted.texts);
  const leftItems = [...distanceAxis(scale, axis, top, system), ...strips.flatMap((s) => stripAxis(s, axis))];
  items.push(...leftItems, ...dioptreBorder(scale, axis.right, top), ...timeBorder(axis, floor));
  items.push({ type: "path", k: "k-axis", d: strips.map((s) => segment(axis.left, s.bottom, axis.right, s.bottom)).join("") });
  items.push(...cursorItems(summary, cursor, axis, scale, top, height));
  return {
    width,
    height,
    title: ribbonTitle(summary, system),
    description: describe(summary, axis, scale, strips, gaps),
    items,
    plot: {
      left: axis.left,
      right: axis.right,
      frames: take.durationFrames,
      infinityY: scale.infinityY,
      pixelsPerDioptre: scale.pixelsPerDioptre,
      top,
      bottom: height,
      blockSeconds: axis.blockSeconds,
    },
    leftAxis: { width: axis.left, height, title: "Axes", description: "", items: leftItems },
  };
}

/** Nearest distance drawn, in dioptres: the near limits, the line, or what was noted. */
function nearestOf(summary: TakeSummary): number {
  let nearest = summary.focus === null ? 0 : dioptresFromMetres(summary.focus.nearestM);
  const { perFrame } = summary;
  if (perFrame === null) return nearest;
  for (let i = 0; i < perFrame.frames; i++) {
    const near = perFrame.nearDioptres[i] ?? Number.NaN;
    const focus = perFrame.focusDioptres[i] ?? Number.NaN;
    if (near > nearest) nearest = near;
    if (focus > nearest) nearest = focus;
  }
  return nearest;
}

/** Empty runs of a column that has values; a column without any has no gaps, it is absent. */
function partlyEmpty(values: Float64Array): ReturnType<typeof emptyRuns> {
  return values.every(Number.isNaN) ? [] : emptyRuns(values);
}

function placeStrips(summary: TakeSummary, changingOnly: boolean, axis: TimeAxis, from: number): readonly PlacedStrip[] {
  if (summary.take.durationFrames === 0) return [];
  const placed: PlacedStrip[] = [];
  let y = from;
  const { tStop, focal } = summary;
  const makers = [
    ...(changingOnly && tStop !== null && tStop.rangeStops < STEADY_STOPS ? [] : [stopStrip]),
    ...(changingOnly && focal !== null && focal.maxMm - focal.minMm < STEADY_MM ? [] : [focalStrip]),
  ];
  for (const make of makers) {
    const top = y + 20;
    const strip = make(summary, { left: axis.left, right: axis.right, top, x: axis.x });
    if (strip === null) continue;
    placed.push({ strip, top, bottom: top + strip.height });
    y = top + strip.height + 8;
  }
  return placed;
}

/** Hatching through the plot and every strip, each where its own column is empty. */
function gapItems(
  gaps: readonly GapSpan[],
  top: number,
  floor: number,
  strips: readonly PlacedStrip[],
  axis: TimeAxis,
): readonly DrawItem[] {
  let d = gaps.map((gap) => gapEdges(gap, top, floor) + gapHatching(gap, top, floor)).join("");
  for (const { strip, top: from, bottom } of strips) {
    if (strip.values === null) continue;
    for (const gap of gapSpans(partlyEmpty(strip.values), axis.x))
      d += gapEdges(gap, from, bottom) + gapHatching(gap, from, bottom);
  }
  return d === "" ? [] : [{ type: "path", k: "k-gap", d }];
}

function cursorItems(
  summary: TakeSummary,
  cursor: number | null,
  axis: TimeAxis,
  scale: DistanceScale,
  top: number,
  bottom: number,
): readonly DrawItem[] {
  if (cursor === null || cursor < 0 || cursor >= summary.take.durationFrames) return [];
  const x = axis.x(cursor);
  const items: DrawItem[] = [{ type: "line", k: "k-cursor", x1: x, y1: top, x2: x, y2: bottom }];
  const focus = summary.perFrame?.focusDioptres[cursor] ?? Number.NaN;
  if (!Number.isNaN(focus)) items.push({ type: "circle", k: "k-dot", x, y: scale.y(focus), r: 5 });
  return items;
}

function describe(
  summary: TakeSummary,
  axis: TimeAxis,
  scale: DistanceScale,
  strips: readonly PlacedStrip[],
  gaps: readonly GapSpan[],
): string {
  const sentences = [
    `Focus distance over ${summary.timecodeIn === null ? "the take" : `timecode from ${summary.timecodeIn}, ${plural(summary.take.durationFrames, "frame")}`}.`,
    `Height is 1 / distance, infinity on top, down to ${fixed(1 / scale.floorDioptres, 2)} m; one block of the right border is 0.1 dioptre.`,
  ];
  if (axis.blocks.length > 0)
    sentences.push(`One block of the lower border is ${axis.blockSeconds === 1 ? "a second" : `${axis.blockSeconds} seconds`}.`);
  if (summary.perFrame !== null && summary.depthOfField !== null)
    sentences.push("The band is what is acceptably sharp, between the near and the far limit.");
  const missing = missingWords(summary);
  if (missing !== null) sentences.push(`${missing}.`);
  if (gaps.length > 0) sentences.push("Hatching is where nothing was logged; no line is joined across it.");
  for (const { strip } of strips)
    sentences.push(
      strip.title.startsWith("stop")
        ? "Under it the T-stop in whole stops, deeper is higher."
        : "Under it the focal length in mm, on a log scale.",
    );
  return sentences.join(" ");
}
