/** Table of contents: a line a section, its slates in short lines below it, all of them links with page numbers. */
import { sectionHead } from "../block.ts";
import type { Element } from "../document.ts";
import type { TextStyle } from "../ink.ts";
import { PRINT } from "../palette.ts";
import { type Report, TYPE } from "../report.ts";
import { artifact, element, link } from "../tags.ts";
import type { ContentsEntry } from "./contents-entries.ts";

const LINE = 13;
const PART_LINE = 12;
/** Slates beside each other. */
const COLUMNS = 6;
const GUTTER = 16;
const NUMBER_WIDTH = 20;
const INDENT = 12;

export function contents(report: Report, entries: readonly ContentsEntry[]): void {
  const { doc, flow } = report;
  const section = sectionHead(report, "Contents");
  report.bookmark.add("Contents", flow.y - 24);
  const list = element(doc, section, "TOC");
  for (const entry of entries) {
    flow.need(LINE + (entry.parts.length > 0 ? PART_LINE : 0));
    const { left, width } = flow.sheet;
    contentsLine(report, list, entry, { x: left, width, top: flow.y, style: TYPE.strong });
    flow.y += LINE;
    if (entry.parts.length > 0) slateLines(report, element(doc, list, "TOC"), entry);
  }
  flow.y += 4;
}

function slateLines(report: Report, list: Element, { parts }: ContentsEntry): void {
  const { flow } = report;
  const column = (flow.sheet.width - INDENT - (COLUMNS - 1) * GUTTER) / COLUMNS;
  parts.forEach((part, i) => {
    if (i % COLUMNS === 0) {
      if (i > 0) flow.y += PART_LINE;
      flow.need(PART_LINE);
    }
    const x = flow.sheet.left + INDENT + (i % COLUMNS) * (column + GUTTER);
    contentsLine(report, list, part, { x, width: column, top: flow.y, style: TYPE.table });
  });
  flow.y += PART_LINE + 3;
}

interface Line {
  readonly x: number;
  readonly width: number;
  readonly top: number;
  readonly style: TextStyle;
}

function contentsLine(report: Report, list: Element, entry: { readonly title: string; readonly target: string }, line: Line): void {
  const { doc, ink, places } = report;
  const { x, width, top, style } = line;
  const baseline = top + 9;
  const title = ink.fitted(entry.title, style, width - NUMBER_WIDTH);
  const used = ink.width(`${title} `, style);
  const reference = element(doc, element(doc, list, "TOCI"), "Reference");
  const area = { x: x - 1, y: top, width: width + 2, height: 11.5 };
  const made = link(doc, reference, area, entry.target, `${entry.title}: go to its page`, () => {
    ink.text(`${title} `, x, baseline, style);
  });
  artifact(doc, () => {
    doc.dash(0.6, { space: 2.4 });
    ink.line(x + used + 2, baseline - 0.5, x + width - NUMBER_WIDTH + 2, baseline - 0.5, PRINT.edge, 0.6);
    doc.undash();
  });
  places.whenKnown(entry.target, (page) => {
    made.add(() => {
      ink.text(page, x + width, baseline, style, "end");
    });
  });
}
