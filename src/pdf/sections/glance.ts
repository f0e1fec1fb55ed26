/** The first page: the day at a glance. A producer can stop here. */
import type { Element } from "../document.ts";
import { lineHeight } from "../ink.ts";
import { type Report, TYPE } from "../report.ts";
import { element } from "../tags.ts";
import { glanceHead } from "./glance-head.ts";
import { dayNotes, lensesAndFindings, signatureLines } from "./glance-lower.ts";
import { SCENES_ON_FIRST_PAGE, scenesAndPages } from "./glance-scenes.ts";

/** Room for the list of contents, which is written when the page numbers are known. */
export interface ContentsPlace {
  readonly element: Element;
  readonly page: number;
  readonly baseline: number;
}

export function glance(report: Report): ContentsPlace {
  const { doc, flow, root } = report;
  report.bookmark.add("The day at a glance", flow.sheet.top - 36);
  const section = element(doc, root, "Sect");
  glanceHead(report, section);
  flow.y += 16;
  const complete = scenesAndPages(report, section, SCENES_ON_FIRST_PAGE);
  flow.y += 16;
  lensesAndFindings(report, section);
  dayNotes(report, section);
  flow.need(24);
  const contents = { element: element(doc, section, "P"), page: flow.page(), baseline: flow.y + 9 };
  flow.y += 24;
  signatureLines(report, section);
  if (!complete) {
    flow.newPage();
    report.begins("Scenes and pages, all", flow.y);
    scenesAndPages(report, section, Number.POSITIVE_INFINITY);
  }
  return contents;
}

/** Writes the contents with page numbers (from 0-based pages) and comes back to the last page. */
export function fillContents(report: Report, place: ContentsPlace, entries: readonly (readonly [string, number])[]): void {
  const { doc, ink, flow } = report;
  const text = `In this report: ${entries.map(([title, page]) => `${title}, page ${page + 1}`).join("; ")}.`;
  doc.switchToPage(place.page);
  place.element.add(() => {
    ink.lines(text, TYPE.label, flow.sheet.width).forEach((line, i) => {
      ink.text(`${line} `, flow.sheet.left, place.baseline + i * lineHeight(TYPE.label), TYPE.label);
    });
  });
  doc.switchToPage(flow.page());
}
