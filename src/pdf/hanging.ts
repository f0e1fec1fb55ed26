/** Lines with a word in the margin and a text that hangs beside it: measured first, so that what belongs together stays on one page. */
import type { Element } from "./document.ts";
import { linesHere } from "./flow.ts";
import { lineHeight, type TextStyle } from "./ink.ts";
import { type Report, TYPE } from "./report.ts";
import { element, link } from "./tags.ts";

/** Width of the margin in points. */
export const MARGIN_WIDTH = 66;
const AFTER = 0.8;
const STEP = lineHeight(TYPE.table);

export interface HangingLine {
  readonly label: string;
  readonly text: string;
  /** Of the label; that of sources if not given. */
  readonly style?: TextStyle;
  /** A named place that the text links to, whose page number ends it. */
  readonly link?: { readonly target: string; readonly label: string };
}

/** Points that the lines take. */
export function hangingHeight(report: Report, lines: readonly HangingLine[]): number {
  return lines.reduce((sum, line) => sum + textLines(report, line.text).length * STEP + AFTER, 0);
}

/** Draws the lines at the cursor; a text that is longer than the page goes on on the next one. */
export function drawHanging(report: Report, parent: Element, lines: readonly HangingLine[]): void {
  for (const line of lines) {
    if (line.link === undefined) drawLine(report, parent, line);
    else drawLinked(report, parent, line, line.link);
  }
}

function textLines(report: Report, text: string): readonly string[] {
  return report.ink.lines(text, TYPE.table, report.flow.sheet.width - MARGIN_WIDTH);
}

function drawLine(report: Report, parent: Element, { label, text, style = TYPE.source }: HangingLine): void {
  const { doc, ink, flow } = report;
  const x = flow.sheet.left + MARGIN_WIDTH;
  let lines = textLines(report, text);
  const made = element(doc, parent, "P");
  let first = true;
  while (lines.length > 0) {
    let count = linesHere(lines.length, Math.floor((flow.left() + 0.01) / STEP));
    if (count === 0) {
      flow.newPage();
      count = linesHere(lines.length, Math.floor((flow.left() + 0.01) / STEP));
    }
    const here = lines.slice(0, count);
    const top = flow.y;
    const withLabel = first;
    made.add(() => {
      if (withLabel) ink.text(`${label} `, flow.sheet.left, top + 8, style);
      here.forEach((line, i) => {
        ink.text(`${line} `, x, top + 8 + i * STEP, TYPE.table);
      });
    });
    flow.y += here.length * STEP;
    lines = lines.slice(here.length);
    first = false;
  }
  flow.y += AFTER;
}

/** One line whose text leads to a place and ends with the number of its page. */
function drawLinked(report: Report, parent: Element, line: HangingLine, to: NonNullable<HangingLine["link"]>): void {
  const { doc, ink, flow, places } = report;
  const x = flow.sheet.left + MARGIN_WIDTH;
  const baseline = flow.y + 8;
  const [text = ""] = textLines(report, line.text);
  const width = ink.width(`${text} `, TYPE.table);
  const made = element(doc, parent, "P", {}, () => {
    ink.text(`${line.label} `, flow.sheet.left, baseline, line.style ?? TYPE.source);
  });
  const area = { x, y: flow.y, width: width + 20, height: STEP };
  const anchor = link(doc, made, area, to.target, to.label, () => {
    ink.text(`${text} `, x, baseline, TYPE.table);
  });
  places.whenKnown(to.target, (page) => {
    anchor.add(() => {
      ink.text(`${page}.`, x + width, baseline, TYPE.table);
    });
  });
  flow.y += STEP + AFTER;
}
