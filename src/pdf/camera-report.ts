/** The camera report of a day as a PDF: a page for the producer, then the takes, the lenses, the findings and the methods. */
import type { Finding } from "../core/finding.ts";
import { dateLong, dateMiddle } from "../format/time.ts";
import type { DaySummary } from "../summary/types.ts";
import { dayHeading } from "../view/names.ts";
import { type Attachment, attachFiles, documentBytes, newDocument } from "./document.ts";
import { newFlow } from "./flow.ts";
import { newInk } from "./ink.ts";
import { addBookmark, finishOutline } from "./outline.ts";
import { finishPages, sheetOf } from "./page.ts";
import type { Report } from "./report.ts";
import { findingsSection } from "./sections/findings.ts";
import { fillContents, glance } from "./sections/glance.ts";
import { lensSection } from "./sections/lenses.ts";
import { CLAIM, methodsSection } from "./sections/methods.ts";
import { takeSheets } from "./sections/take-sheets.ts";
import { takeTable } from "./sections/take-table.ts";
import { rootElement } from "./tags.ts";

export interface CameraReportOptions {
  readonly tool: { readonly name: string; readonly version: string };
  /** Content id of the build; never a time. */
  readonly buildId: string;
  /** Files inside the PDF, with the relationship Data. */
  readonly attachments?: readonly Attachment[];
  /** What was found in show.yaml and the kit, said after the day's own findings. */
  readonly showFindings?: readonly Finding[];
}

/**
 * The bytes of a tagged PDF 1.7, written to PDF/A-3b, on the show's paper. The same summary and options give the same
 * bytes: all dates in it are midnight UTC of the shooting date.
 */
export async function cameraReport(summary: DaySummary, options: CameraReportOptions): Promise<Uint8Array> {
  const { show, day, date } = summary;
  const heading = dayHeading({ date, day: day.record.day });
  const program = `${options.tool.name} ${options.tool.version}`;
  const shootingDate = new Date(`${date}T00:00:00Z`);
  const doc = newDocument({
    title: `Camera report, ${show.title}, ${day.record.day === null ? "" : `${heading}, `}${dateMiddle(date)}`,
    subject: `Camera report of ${dateLong(date)}, ${CLAIM}`,
    creator: program,
    date: shootingDate,
    paper: show.paper,
  });
  const ink = newInk(doc);
  const sheet = sheetOf(show.paper);
  const flow = newFlow(doc, sheet);
  const root = rootElement(doc);
  flow.newPage();
  const dayName = day.record.day === null ? dateLong(date) : `${heading}, ${dateLong(date)}`;
  const bookmark = addBookmark(doc, dayName, 0);
  const places: [string, number][] = [];
  const begins = (title: string, top: number): void => {
    bookmark.add(title, top);
    places.push([title, flow.page()]);
  };
  const report: Report = { doc, ink, flow, root, bookmark, begins, summary, showFindings: options.showFindings ?? [], program };

  const contents = glance(report);
  const writers = takeTable(report);
  const pages = takeSheets(report);
  for (const [target, page] of pages) writers.get(target)?.(String(page + 1));
  doc.switchToPage(flow.page());
  lensSection(report);
  findingsSection(report);
  methodsSection(report);
  fillContents(report, contents, places);

  finishPages(doc, ink, sheet, {
    show: show.title,
    day: dayName,
    program: `Camera report, ${program}, build ${options.buildId}`,
    claim: CLAIM,
  });
  finishOutline(doc);
  attachFiles(doc, options.attachments ?? [], shootingDate);
  return documentBytes(doc);
}
