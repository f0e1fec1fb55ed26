/** A band that is too thin to see in a row: drawn at a least height, with the depth it stands for in figures. */
import { numberFromDistance } from "../../core/quantity.ts";
import { distance } from "../../format/length.ts";
import { oneSystem, type PageDistances } from "../../format/units.ts";
import { runsOfNumbers } from "../../stats/runs.ts";
import { lowerMiddle } from "../../stats/summary.ts";
import type { FrameFigures, TakeSummary } from "../../summary/types.ts";
import type { DrawItem } from "../drawing.ts";
import { PAINT } from "../paint.ts";
import { polyline } from "../path.ts";
import type { DistanceScale } from "../scales.ts";
import { traceRow } from "../series.ts";

/** "0.12 m deep" for a take whose band is mostly thinner than it is drawn at least; `null` for any other. The figure is its shallowest frame's. */
export function thinDepth(summary: TakeSummary, scale: DistanceScale, distances: PageDistances): string | null {
  const { perFrame, depthOfField } = summary;
  const shallowest = depthOfField?.shallowest ?? null;
  if (perFrame === null || shallowest === null) return null;
  const heights = perFrame.nearDioptres.map((near, i) => (near - (perFrame.farDioptres[i] ?? Number.NaN)) * scale.pixelsPerDioptre);
  const middle = lowerMiddle(heights.filter((height) => !Number.isNaN(height)));
  if (middle === null || middle >= PAINT["k-band-least"].width) return null;
  const total = numberFromDistance(shallowest.totalM);
  return Number.isFinite(total) ? `${distance(total, oneSystem(distances))} deep` : null;
}

/** The least height of the band, along the focus line where its limits are known. */
export function leastBand(figures: FrameFigures, scale: DistanceScale, x: (frame: number) => number): readonly DrawItem[] {
  const limited = figures.focusDioptres.map((focus, i) =>
    Number.isNaN(figures.nearDioptres[i] ?? Number.NaN) ? Number.NaN : focus,
  );
  const d = runsOfNumbers(limited)
    .map((run) => traceRow(limited, run, x, scale.y))
    .map(({ xs, ys }) => polyline(xs, ys))
    .join("");
  return d === "" ? [] : [{ type: "path", k: "k-band-least", d }];
}
