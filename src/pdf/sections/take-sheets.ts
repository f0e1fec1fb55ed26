/** Take by take: head, main figures, focus through the take, pulls, and the rest by where it comes from. */
import type { Drawing } from "../../chart/drawing.ts";
import { focusRibbon } from "../../chart/ribbon/focus-ribbon.ts";
import { ROW_GUTTER, rowRibbon } from "../../chart/ribbon/row-ribbon.ts";
import { plural } from "../../format/words.ts";
import type { TakeSummary } from "../../summary/types.ts";
import { standing } from "../../view/names.ts";
import { sectionHead } from "../block.ts";
import type { Element } from "../document.ts";
import { drawDrawing } from "../drawing.ts";
import { lineHeight } from "../ink.ts";
import type { Bookmark } from "../outline.ts";
import { PRINT } from "../palette.ts";
import { type Report, TYPE } from "../report.ts";
import { artifact, element } from "../tags.ts";
import { type NumberedTake, takesBySlate } from "../totals.ts";
import { drawStrip, layStrip, type Strip } from "./figure-strip.ts";
import { isShort, isThick, largeRibbons } from "./ribbon-size.ts";
import { pullsTable, shortNotes, takeNotes } from "./take-notes.ts";

/** Points a pixel of the large ribbon: its 12 pixel labels print at 7.5 points. */
const LARGE_SCALE = 0.625;
const ROW_SCALE = 0.68;
/** Points of the line with slate, take and camera. */
const HEAD_HEIGHT = 27;
const ROW_HEIGHT_PX = 46;
/** Right of a row ribbon may stand the distance that leaves its scale. */
const ROW_LABELS_PX = ROW_GUTTER + 84;

/** Draws all takes; returns the page (0-based) of each by the name of its place. */
export function takeSheets(report: Report): ReadonlyMap<string, number> {
  const pages = new Map<string, number>();
  const slates = takesBySlate(report.summary);
  if (slates.length === 0) return pages;
  report.flow.newPage();
  report.begins("Take by take", report.flow.y);
  const says = isThick(report.summary)
    ? "Circled takes and plates in full, the others short; day.json has every figure."
    : "Every figure says where it comes from.";
  const section = sectionHead(report, "Take by take", `${says} Height of a ribbon is 1 / distance, infinity on top.`);
  const large = largeRibbons(report.summary);
  const longest = Math.max(1, ...report.summary.takes.map((t) => t.durationSeconds));
  const pixelsPerSecond = (report.flow.sheet.width / ROW_SCALE - ROW_LABELS_PX) / longest;
  for (const { slate, takes } of slates) {
    let mark: Bookmark | null = null;
    for (const take of takes) {
      const ribbon = ribbonOf(report, take.summary, large.has(take.target), pixelsPerSecond);
      const strip = isShort(report.summary, take.summary) ? null : layStrip(report, take.summary);
      report.flow.need(HEAD_HEIGHT + (strip?.height ?? 24) + (ribbon?.height ?? 0));
      mark ??= report.bookmark.add(`${slate}, ${plural(takes.length, "clip")}`, report.flow.y);
      pages.set(take.target, report.flow.page());
      takeSheet(report, section, take, mark, ribbon, strip);
    }
  }
  return pages;
}

interface Ribbon {
  readonly drawing: Drawing;
  readonly scale: number;
  /** Points, with the space around it. */
  readonly height: number;
}

/** The large ribbon, the row ribbon, or `null` for a take of which neither log nor note has a focus. */
function ribbonOf(report: Report, t: TakeSummary, large: boolean, pixelsPerSecond: number): Ribbon | null {
  const { distances } = report.summary.show;
  if (t.take.durationFrames === 0 || (t.perFrame === null && t.focus === null)) return null;
  const scale = large ? LARGE_SCALE : ROW_SCALE;
  const drawing = large
    ? focusRibbon(t, { width: Math.floor(report.flow.sheet.width / LARGE_SCALE), distances })
    : rowRibbon(t, { pixelsPerSecond, height: ROW_HEIGHT_PX, firstRow: true, distances });
  return { drawing, scale, height: drawing.height * scale + 8 };
}

function takeSheet(
  report: Report,
  parent: Element,
  take: NumberedTake,
  mark: Bookmark,
  ribbon: Ribbon | null,
  strip: Strip | null,
): void {
  const { doc, flow } = report;
  const t = take.summary;
  const section = element(doc, parent, "Sect");
  doc.addNamedDestination(take.target, "XYZ", 0, flow.y, null);
  mark.add(`Take ${t.take.take} ${t.take.camera}`, flow.y);
  takeHead(report, section, take);
  if (strip !== null) drawStrip(report, section, strip);
  if (ribbon !== null) {
    drawDrawing(report, section, ribbon.drawing, flow.sheet.left, flow.y + 3, ribbon.scale);
    flow.y += ribbon.height;
  }
  if (strip === null) shortNotes(report, section, t);
  else {
    pullsTable(report, section, t);
    takeNotes(report, section, t);
  }
  flow.y += 8;
}

/** "24B take 3 camera A", as it is said on set, with the ring of a circled take. */
function takeHead(report: Report, parent: Element, { summary: t }: NumberedTake): void {
  const { doc, ink, flow } = report;
  const { left, right } = flow.sheet;
  const top = flow.y;
  const baseline = top + 19;
  if (top > flow.sheet.top) artifact(doc, () => ink.line(left, top, right, top, PRINT.ink, 0.75));
  let x = left;
  let ring = { x: 0, width: 0 };
  element(doc, parent, "H3", {}, () => {
    const [slate = ""] = ink.lines(t.take.slate, TYPE.address, 150);
    x += ink.text(`${slate} `, x, baseline, TYPE.address) + 2;
    x += ink.text("take ", x, baseline, TYPE.label) + 3;
    const [number = ""] = ink.lines(t.take.take, TYPE.address, 90);
    if (t.take.circled) x += 4;
    ring = { x, width: ink.width(number, TYPE.address) };
    x += ink.text(`${number} `, x, baseline, TYPE.address) + 4;
    x += ink.text("camera ", x, baseline, TYPE.label) + 1;
    x += ink.text(`${t.take.camera} `, x, baseline, TYPE.address) + 10;
  });
  if (t.take.circled) {
    const { x: from, width } = ring;
    artifact(doc, () =>
      ink.doc
        .lineWidth(0.8)
        .roundedRect(from - 4, baseline - 15.5, width + 8, 19, 9.5)
        .stroke(PRINT.ink),
    );
  }
  const scene = t.take.scene === null ? "Scene not recorded." : `Scene ${t.take.scene}.`;
  const duplicate = t.take.duplicate ? "Repeats an address: counted in no total." : "";
  const words = [scene, standing(t.take), duplicate].filter((text) => text !== "").join(" ");
  const lines = ink.lines(words, TYPE.body, right - x).slice(0, 2);
  const first = lines.length > 1 ? baseline - 9 : baseline;
  element(doc, parent, "P", {}, () => {
    lines.forEach((line, i) => {
      ink.text(`${line} `, x, first + i * lineHeight(TYPE.body), TYPE.body);
    });
  });
  flow.y = top + HEAD_HEIGHT;
}
