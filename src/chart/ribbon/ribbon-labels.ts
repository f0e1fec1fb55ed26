/** Words inside the plot: limits of the longest hold, gaps, noted distances, and what is missing. */
import { dioptresFromMetres } from "../../core/quantity.ts";
import type { PageDistances } from "../../format/units.ts";
import { plural } from "../../format/words.ts";
import type { TakeSummary } from "../../summary/types.ts";
import type { DrawItem } from "../drawing.ts";
import { type Board, type TextItem, text } from "../labels.ts";
import { segment } from "../path.ts";
import type { DistanceScale } from "../scales.ts";
import { toneWidth } from "../text-width.ts";
import type { TimeAxis } from "../time-axis.ts";
import type { Envelope } from "./envelope.ts";
import type { GapSpan } from "./gaps.ts";
import { namedDistance } from "./pull-brackets.ts";
import { shortDistance } from "./ribbon-words.ts";

export interface Plot {
  readonly summary: TakeSummary;
  readonly system: PageDistances;
  readonly axis: TimeAxis;
  readonly scale: DistanceScale;
  readonly board: Board;
  readonly cover: Envelope;
}

const IN_PLOT = "t-fine halo";
const FOCUS = "t-fine t-focus halo";
/** A limit is written this close to the band, or not at all. */
const CLOSE = 34;

/** Frames between pulls that were logged throughout, longest first. */
function holds(summary: TakeSummary): readonly { readonly first: number; readonly last: number }[] {
  const edges = (summary.pulls ?? []).flatMap((p) => [p.startFrame, p.endFrame]);
  const bounds = [0, ...edges, summary.take.durationFrames - 1];
  const found: { first: number; last: number }[] = [];
  for (let i = 0; i + 1 < bounds.length; i += 2) {
    let first = bounds[i] ?? 0;
    for (const gap of summary.gaps) {
      if (gap.last < first || gap.first > (bounds[i + 1] ?? 0)) continue;
      if (gap.first > first) found.push({ first, last: gap.first - 1 });
      first = gap.last + 1;
    }
    const last = bounds[i + 1] ?? 0;
    if (last > first) found.push({ first, last });
  }
  return found.sort((a, b) => b.last - b.first - (a.last - a.first) || a.first - b.first);
}

/** Near and far once, where the band is held longest; for infinity the distance that it is sharp from. */
export function limitLabels(plot: Plot): readonly DrawItem[] {
  const figures = plot.summary.perFrame;
  if (figures === null) return [];
  const items: DrawItem[] = [];
  const done = { finite: false, infinite: false };
  for (const hold of holds(plot.summary)) {
    const middle = Math.floor((hold.first + hold.last) / 2);
    const near = figures.nearDioptres[middle] ?? Number.NaN;
    const far = figures.farDioptres[middle] ?? Number.NaN;
    if (Number.isNaN(near) || Number.isNaN(far)) continue;
    const left = plot.axis.x(hold.first) + 6;
    const right = plot.axis.x(hold.last + 1) - 6;
    if (far <= 1e-9 && !done.infinite) {
      done.infinite = true;
      items.push(...outwardLabel(plot, near, left, right));
    } else if (far > 1e-9 && !done.finite) {
      done.finite = true;
      // Limits that read alike (a close-up) say nothing: the band is thinner than the figures.
      if (namedDistance("", far, plot.system) === namedDistance("", near, plot.system)) continue;
      items.push(...besideBand(plot, namedDistance("far limit", far, plot.system), left, right, far, -1));
      items.push(...besideBand(plot, namedDistance("near limit", near, plot.system), left, right, near, 1));
    }
  }
  return items;
}

/** Inside the band where it is high enough, else right under it. */
function outwardLabel(plot: Plot, near: number, left: number, right: number): readonly TextItem[] {
  const words = `sharp from ${namedDistance("", near, plot.system).trim()} outward`;
  const y = plot.scale.y(near);
  if (y - plot.scale.infinityY >= 24) {
    const inside = text(right - 2, y - 7, words, "end", "t-fine t-focus halo-band");
    if (right - left > toneWidth(words, inside.tone) + 8) {
      plot.board.reserve({ left: right - toneWidth(words, inside.tone) - 2, right, top: y - 20, bottom: y });
      return [inside];
    }
  }
  return plot.board.place(along(left, right, words).map((x) => [text(x, y + 15, words, "start", FOCUS)])) ?? [];
}

/** A label above (-1) or below (+1) the band, clear of whatever the band does within the label's width. */
function besideBand(plot: Plot, words: string, left: number, right: number, limit: number, side: -1 | 1): readonly TextItem[] {
  const own = plot.scale.y(limit);
  const candidates = along(left, right, words).flatMap((x) => {
    const data = plot.cover.between(x - 2, x + toneWidth(words, FOCUS) + 2);
    if (data === null) return [];
    const y = side < 0 ? data.top - 8 : data.bottom + 15;
    return Math.abs(y - own) <= CLOSE ? [[text(x, y, words, "start", FOCUS)]] : [];
  });
  return plot.board.place(candidates) ?? [];
}

/** Left edges to try: the middle of the hold first, then outward. */
function along(left: number, right: number, words: string): readonly number[] {
  const width = toneWidth(words, FOCUS);
  const middle = (left + right - width) / 2;
  const reach = Math.max(0, (right - left - width) / 2);
  const steps = [0, -0.25, 0.25, -0.5, 0.5, -0.75, 0.75, -1, 1];
  return [...new Set(steps.map((s) => middle + s * reach))];
}

/** The count of missing frames beside the hatching: widest gaps first, as many as find room. */
export function gapLabels(plot: Plot, spans: readonly GapSpan[]): readonly TextItem[] {
  const items: TextItem[] = [];
  const order = [...spans].sort((a, b) => b.frames - a.frames || a.left - b.left);
  for (const span of order.slice(0, 6)) {
    const count = plural(span.frames, "frame");
    const candidates: TextItem[][] = [];
    for (const y of heights(plot.scale)) {
      candidates.push([
        text(span.right + 6, y, count, "start", IN_PLOT),
        text(span.right + 6, y + 15, "not logged", "start", IN_PLOT),
      ]);
      candidates.push([text(span.left - 6, y, count, "end", IN_PLOT), text(span.left - 6, y + 15, "not logged", "end", IN_PLOT)]);
    }
    items.push(...(plot.board.place(candidates) ?? []));
  }
  return items;
}

/** Baselines to try, from the middle of the plot outward. */
function heights(scale: DistanceScale): readonly number[] {
  const middle = (scale.infinityY + scale.floorY) / 2;
  const steps = Math.floor((scale.floorY - scale.infinityY) / 2 / 12);
  return Array.from({ length: 2 * steps + 1 }, (_, i) => middle + (i % 2 === 0 ? -1 : 1) * Math.ceil(i / 2) * 12);
}

/** Noted distances where no focus was logged: dotted lines with their words. */
export function notedLines(plot: Plot): readonly DrawItem[] {
  const { summary, axis, scale } = plot;
  const focus = summary.focus;
  if (focus === null || focus.source !== "noted") return [];
  const ends = focus.startM === focus.endM ? [focus.startM] : [focus.startM, focus.endM];
  const items: DrawItem[] = [];
  for (const end of ends) {
    const y = scale.y(dioptresFromMetres(end));
    items.push({ type: "path", k: "k-noted", d: segment(axis.left + 1, y, axis.right, y) });
    plot.cover.add(axis.left, axis.right, y - 2, y + 2);
  }
  for (const end of ends) {
    const y = scale.y(dioptresFromMetres(end));
    const words = `noted ${shortDistance(end, plot.system)}`;
    const tries = [y - 8, y + 17].map((at) => [text(axis.left + 8, at, words, "start", FOCUS)]);
    items.push(...(plot.board.place(tries) ?? []));
  }
  return items;
}

/** One sentence on what could not be drawn; `null` where nothing is missing. */
export function missingWords(summary: TakeSummary): string | null {
  const { perFrame, take, tStop } = summary;
  if (take.durationFrames === 0) return "No timecode in the notes and no log: length not recorded";
  if (perFrame === null) return "No log for this clip";
  if (perFrame.focusDioptres.every(Number.isNaN)) {
    return take.track?.focusUnconverted ? "Focus logged from the front of the lens, not converted" : "No focus logged";
  }
  if (!perFrame.nearDioptres.every(Number.isNaN)) return null;
  if (!perFrame.fStop.every(Number.isNaN) || tStop?.source === "logged") return "Limits not calculated";
  return tStop === null ? "No stop: limits not calculated" : "No stop logged: limits not calculated";
}

/** The sentence, in the plot's free middle. */
export function missingLabel(plot: Plot): readonly TextItem[] {
  const words = missingWords(plot.summary);
  if (words === null) return [];
  const { left, right } = plot.axis;
  const candidates = heights(plot.scale).flatMap((y) =>
    [0.5, 0.35, 0.65, 0.2, 0.8].map((part) => [text(left + part * (right - left), y, words, "middle", "halo")]),
  );
  return plot.board.place(candidates) ?? [];
}
