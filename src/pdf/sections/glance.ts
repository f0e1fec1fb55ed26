/** The first page: the day at a glance. A producer can stop here. */
import type { Report } from "../report.ts";
import { element } from "../tags.ts";
import { glanceHead } from "./glance-head.ts";
import { dayNotes, lensesAndFindings, signatureLines } from "./glance-lower.ts";
import { SCENES_ON_FIRST_PAGE, scenesAndPages } from "./glance-scenes.ts";

export const SCENES_TITLE = "Scenes and pages, all";
export const SCENES_TARGET = "scenes";

/**
 * Draws the page, and a page of all scenes where they do not fit the first; says whether there is one.
 *
 * @param lenses where the lenses that do not fit are listed
 */
export function glance(report: Report, lenses: string): boolean {
  const { doc, flow, root, places } = report;
  report.bookmark.add("The day at a glance", flow.sheet.top - 36);
  const section = element(doc, root, "Sect");
  glanceHead(report, section);
  flow.y += 16;
  const complete = scenesAndPages(report, section, SCENES_ON_FIRST_PAGE);
  flow.y += 16;
  lensesAndFindings(report, section, lenses);
  dayNotes(report, section);
  signatureLines(report, section);
  if (complete) return false;
  flow.newPage();
  places.mark(SCENES_TARGET, flow.y);
  report.bookmark.add(SCENES_TITLE, flow.y);
  scenesAndPages(report, section, Number.POSITIVE_INFINITY);
  return true;
}
