/** The focus line with its band and limits; broken where nothing was logged. */
import { runsOfNumbers } from "../../stats/runs.ts";
import type { FrameFigures } from "../../summary/types.ts";
import type { DrawItem } from "../drawing.ts";
import { polyline } from "../path.ts";
import type { DistanceScale } from "../scales.ts";
import { ROW_BAND_TOLERANCE, TOLERANCE, trace, traceRow } from "../series.ts";
import type { Envelope } from "./envelope.ts";

export interface FocusLine {
  /** Bands and limits. Drawn first, so that the line lies on top. */
  readonly band: readonly DrawItem[];
  readonly line: readonly DrawItem[];
}

/**
 * Paths of one take on a scale. The band is cut flat at infinity and at the floor. `thin` draws the line as rows have it and
 * leaves the limits out.
 */
export function focusLine(figures: FrameFigures, scale: DistanceScale, x: (frame: number) => number, thin: boolean): FocusLine {
  const { focusDioptres, nearDioptres, farDioptres } = figures;
  const traced = thin ? traceRow : trace;
  const edge = thin ? ROW_BAND_TOLERANCE : TOLERANCE;
  let band = "";
  let limits = "";
  for (const run of runsOfNumbers(nearDioptres)) {
    const far = traced(farDioptres, run, x, scale.y, edge);
    const near = traced(nearDioptres, run, x, scale.y, edge);
    band += polyline([...far.xs, ...near.xs.reverse()], [...far.ys, ...near.ys.reverse()], true);
    near.xs.reverse();
    near.ys.reverse();
    limits += polyline(far.xs, far.ys) + polyline(near.xs, near.ys);
  }
  let line = "";
  for (const run of runsOfNumbers(focusDioptres)) {
    const points = traced(focusDioptres, run, x, scale.y);
    line += polyline(points.xs, points.ys);
  }
  const bands: DrawItem[] = [];
  if (band !== "") bands.push({ type: "path", k: "k-band", d: band });
  if (limits !== "" && !thin) bands.push({ type: "path", k: "k-limit", d: limits });
  const lines: DrawItem[] = [];
  if (line !== "") lines.push(thin ? { type: "path", k: "k-focus", d: line, thin } : { type: "path", k: "k-focus", d: line });
  return { band: bands, line: lines };
}

/** Marks what the paths of `focusLine` cover. */
export function coverFocus(figures: FrameFigures, scale: DistanceScale, x: (frame: number) => number, cover: Envelope): void {
  for (let i = 0; i < figures.frames; i++) {
    const focus = figures.focusDioptres[i] ?? Number.NaN;
    if (Number.isNaN(focus)) continue;
    const near = figures.nearDioptres[i] ?? Number.NaN;
    const far = figures.farDioptres[i] ?? Number.NaN;
    cover.add(x(i), x(i + 1), scale.y(Number.isNaN(far) ? focus : far) - 1, scale.y(Number.isNaN(near) ? focus : near) + 1);
  }
}
