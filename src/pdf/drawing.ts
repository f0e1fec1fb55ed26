/** Draws a chart with the print palette, from the same geometry that the page prints as SVG. */
import type { DrawItem, Drawing } from "../chart/drawing.ts";
import { PAINT } from "../chart/paint.ts";
import { toneSize } from "../chart/text-width.ts";
import type { Doc, Element } from "./document.ts";
import type { Ink, TextStyle } from "./ink.ts";
import type { Sheet } from "./page.ts";
import { PRINT, PRINT_ROLES } from "./palette.ts";
import type { Report } from "./report.ts";
import { element } from "./tags.ts";

/** Axis labels are never smaller, however small the drawing is printed. */
const SMALLEST_LABEL = 8;
/** Share of its own width that a line keeps where the drawing asks for a finer one. */
const THIN = 0.75;

/**
 * Draws at left `x` and top `y` with `scale` points a pixel, as one figure whose alternative text is the drawing's title
 * and description. Returns the height in points.
 */
export function drawDrawing(report: Report, parent: Element, drawing: Drawing, x: number, y: number, scale: number): number {
  const { doc, ink } = report;
  const width = drawing.width * scale;
  const height = drawing.height * scale;
  const alt = [drawing.title, drawing.description].filter((text) => text !== "").join(". ");
  element(doc, parent, "Figure", { alt, bbox: [x, y, x + width, y + height], placement: "Block" }, () => {
    doc.save();
    doc.translate(x, y).scale(scale);
    doc.lineJoin("round");
    for (const item of drawing.items) if (item.type !== "text" && item.type !== "picture") drawShape(doc, item);
    doc.restore();
    for (const item of drawing.items) if (item.type === "text") drawLabel(ink, item, x, y, scale, report.flow.sheet);
  });
  return height;
}

type Shape = Exclude<DrawItem, { type: "text" | "picture" }>;

function drawShape(doc: Doc, item: Shape): void {
  switch (item.type) {
    case "path":
      doc.path(item.d);
      break;
    case "line":
      doc.moveTo(item.x1, item.y1).lineTo(item.x2, item.y2);
      break;
    case "rect":
      doc.rect(item.x, item.y, item.width, item.height);
      break;
    case "circle":
      doc.circle(item.x, item.y, item.r);
      break;
  }
  paint(doc, item);
}

function paint(doc: Doc, item: Shape): void {
  const style = PAINT[item.k];
  const fill = style.fill === null ? null : PRINT_ROLES[style.fill];
  const stroke = style.stroke === null ? null : PRINT_ROLES[style.stroke];
  if (stroke === null) {
    doc.fill(fill ?? PRINT.ink);
    return;
  }
  doc.lineWidth(style.width * (item.type === "path" && item.thin === true ? THIN : 1));
  doc.lineCap(style.cap);
  if (style.dash !== null) doc.dash(style.dash[0], { space: style.dash[1] });
  if (fill === null) doc.stroke(stroke);
  else doc.fillAndStroke(fill, stroke);
  if (style.dash !== null) doc.undash();
}

function drawLabel(ink: Ink, item: Extract<DrawItem, { type: "text" }>, x: number, y: number, scale: number, sheet: Sheet): void {
  const tones = new Set(item.tone.split(" "));
  const style = labelStyle(tones, Math.max(SMALLEST_LABEL, toneSize(item.tone) * scale));
  const at = x + item.x * scale;
  const baseline = y + item.y * scale;
  const width = ink.width(item.text, style);
  const left = item.anchor === "start" ? at : item.anchor === "end" ? at - width : at - width / 2;
  // A label that does not fit the sheet stands in the table only: it is never shortened.
  if (left < sheet.left - 2 || left + width > sheet.right + 2) return;
  const ground = GROUNDS.find(([tone]) => tones.has(tone))?.[1] ?? null;
  if (ground !== null && item.text !== "") ink.box(left - 1, baseline - style.size * 0.8, width + 2, style.size, { fill: ground });
  ink.text(item.text, at, baseline, style, item.anchor);
}

/** What lies behind a label: the ground that the halo of the page has. */
const GROUNDS = [
  ["halo", PRINT.paper],
  ["halo-p", PRINT.paper],
  ["halo-band", PRINT.focusBand],
  ["halo-plate", PRINT.plate],
] as const;

function labelStyle(tones: ReadonlySet<string>, size: number): TextStyle {
  if (tones.has("t-ring")) return { face: "bold", size, color: PRINT.plateStop };
  if (tones.has("t-mark")) return { face: "bold", size, color: PRINT.plateInk };
  const dark = tones.has("t-ink") || tones.has("t-b") || tones.has("t-cam");
  const color = tones.has("t-focus") ? PRINT.focus : tones.has("t-stop") ? PRINT.stop : dark ? PRINT.ink : PRINT.ink2;
  return { face: tones.has("t-b") ? "bold" : tones.has("t-cam") ? "serif" : "sans", size, color };
}
