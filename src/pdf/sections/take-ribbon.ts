/** The focus of a take as a drawing: wide with its scales, or a row beside the take's number. */
import type { Drawing } from "../../chart/drawing.ts";
import { focusRibbon } from "../../chart/ribbon/focus-ribbon.ts";
import { ROW_GUTTER, rowRibbon } from "../../chart/ribbon/row-ribbon.ts";
import type { DaySummary, TakeSummary } from "../../summary/types.ts";
import { takeName } from "../../view/names.ts";
import type { Element } from "../document.ts";
import { drawDrawing } from "../drawing.ts";
import { MARGIN_WIDTH } from "../hanging.ts";
import type { Report } from "../report.ts";

/** Points a pixel of the wide ribbon: its 12 pixel labels print at 8 points. */
const WIDE_SCALE = 2 / 3;
const ROW_SCALE = 0.68;
const WIDE_HEIGHT_PX = 92;
/** Where a page ends and the height above is too much. */
export const LOW_HEIGHT_PX = 64;
const ROW_HEIGHT_PX = 42;
/** Right of a row ribbon may stand the distance that leaves its scale. */
const ROW_LABELS_PX = ROW_GUTTER + 84;

export interface Ribbon {
  readonly drawing: Drawing;
  /** Points a pixel. */
  readonly scale: number;
  /** Across the sheet; else beside the number of the take. */
  readonly wide: boolean;
  /** Points, with the space below. */
  readonly height: number;
}

/** Seconds of the longest take: a second is as long in every row. */
export function longestSeconds(summary: DaySummary): number {
  return Math.max(1, ...summary.takes.map((t) => t.durationSeconds));
}

/** `null` for a take of which neither log nor note has a focus. */
export function rowRibbonOf(report: Report, t: TakeSummary, longest: number): Ribbon | null {
  if (!hasFocus(t)) return null;
  const pixelsPerSecond = ((report.flow.sheet.width - MARGIN_WIDTH) / ROW_SCALE - ROW_LABELS_PX) / longest;
  const { distances } = report.summary.show;
  const drawing = rowRibbon(t, { pixelsPerSecond, height: ROW_HEIGHT_PX, firstRow: true, distances });
  return { drawing: named(drawing, t), scale: ROW_SCALE, wide: false, height: drawing.height * ROW_SCALE + 3 };
}

/** As `rowRibbonOf`, across the sheet; `heightPx` from infinity to the nearest distance. */
export function wideRibbonOf(report: Report, t: TakeSummary, heightPx = WIDE_HEIGHT_PX): Ribbon | null {
  if (!hasFocus(t)) return null;
  const { distances } = report.summary.show;
  const width = Math.floor(report.flow.sheet.width / WIDE_SCALE);
  const drawing = focusRibbon(t, { width, distances, scaleHeight: heightPx, changingOnly: true });
  return { drawing: named(drawing, t), scale: WIDE_SCALE, wide: true, height: drawing.height * WIDE_SCALE + 4 };
}

/** Draws it with its top at `top` and moves the cursor below it. */
export function drawRibbon(report: Report, parent: Element, ribbon: Ribbon, top: number): void {
  const { flow } = report;
  const x = flow.sheet.left + (ribbon.wide ? 0 : MARGIN_WIDTH);
  drawDrawing(report, parent, ribbon.drawing, x, top, ribbon.scale);
  flow.y = Math.max(flow.y, top + ribbon.height);
}

function hasFocus(t: TakeSummary): boolean {
  return t.take.durationFrames > 0 && (t.perFrame !== null || t.focus !== null);
}

/** Read out away from its heading, a drawing says which take it is of. */
function named(drawing: Drawing, t: TakeSummary): Drawing {
  return { ...drawing, title: `${takeName(t.take)}. ${drawing.title}` };
}
