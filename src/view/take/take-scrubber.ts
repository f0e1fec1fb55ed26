/** What the take sheet needs so that a script can move through its frames. */
import type { FocusRibbon } from "../../chart/ribbon/focus-ribbon.ts";
import type { TakeSummary } from "../../summary/types.ts";
import { hrefTo, takeDataPath } from "../links.ts";

/** Texts for attributes and addresses; empty when there is nothing to move through. */
export interface ScrubberView {
  readonly has: boolean;
  readonly frame: string;
  readonly last: string;
  /** Left, right, infinity, pixels a dioptre and whole width of the drawing, for the script. */
  readonly plot: string;
  readonly data: string;
  readonly script: string;
}

export function scrubberView(t: TakeSummary, ribbon: FocusRibbon, path: string, has: boolean): ScrubberView {
  const { plot } = ribbon;
  if (!has) return { has: false, frame: "", last: "", plot: "", data: "", script: "" };
  const [, date = ""] = path.split("/");
  return {
    has,
    frame: String(t.middleFrame ?? 0),
    last: String(plot.frames - 1),
    plot: [plot.left, plot.right, plot.infinityY, plot.pixelsPerDioptre, ribbon.width].join(" "),
    data: hrefTo(path, takeDataPath(date, t.take.address)),
    script: hrefTo(path, "assets/take.js"),
  };
}
