/** What every PDF of a day has in common: document, sheet, running head, bookmarks, page numbers, attachments. */
import type { Finding } from "../core/finding.ts";
import { dateLong, dateMiddle } from "../format/time.ts";
import type { DaySummary } from "../summary/types.ts";
import { dayHeading } from "../view/names.ts";
import { type Attachment, attachFiles, documentBytes, newDocument } from "./document.ts";
import { newFlow } from "./flow.ts";
import { newInk } from "./ink.ts";
import { addBookmark, finishOutline } from "./outline.ts";
import { finishPages, sheetOf } from "./page.ts";
import { newPlaces } from "./places.ts";
import type { Report } from "./report.ts";
import { handNotes } from "./sections/hand-notes.ts";
import { CLAIM } from "./sections/methods.ts";
import type { Still } from "./still-picture.ts";
import { rootElement } from "./tags.ts";

export interface ReportOptions {
  readonly tool: { readonly name: string; readonly version: string };
  /** Content id of the build; never a time. */
  readonly buildId: string;
  /** Files inside the PDF, with the relationship Data. */
  readonly attachments?: readonly Attachment[];
  /** What was found in show.yaml and the kit, said after the day's own findings. */
  readonly showFindings?: readonly Finding[];
  /** Stills of takes by their address. */
  readonly stills?: ReadonlyMap<string, Still>;
}

/**
 * The bytes of a tagged PDF 1.7, written to PDF/A-3b and PDF/UA-1, on the show's paper. The same summary and options give the
 * same bytes: all dates in it are midnight UTC of the shooting date.
 * @param title what the report is, such as "Camera report"
 */
export async function writeReport(
  summary: DaySummary,
  options: ReportOptions,
  title: string,
  write: (report: Report) => void,
): Promise<Uint8Array> {
  const { show, day, date } = summary;
  const heading = dayHeading({ date, day: day.record.day });
  const program = `${options.tool.name} ${options.tool.version}`;
  const shootingDate = new Date(`${date}T00:00:00Z`);
  const doc = newDocument({
    title: `${title}, ${show.title}, ${day.record.day === null ? "" : `${heading}, `}${dateMiddle(date)}`,
    subject: `${title} of ${dateLong(date)}, ${CLAIM}`,
    creator: program,
    date: shootingDate,
    paper: show.paper,
  });
  const ink = newInk(doc);
  const sheet = sheetOf(show.paper);
  const flow = newFlow(doc, sheet);
  const root = rootElement(doc);
  const places = newPlaces(doc, flow);
  flow.newPage();
  const dayName = day.record.day === null ? dateLong(date) : `${heading}, ${dateLong(date)}`;
  const bookmark = addBookmark(doc, dayName, 0);
  const report: Report = {
    doc,
    ink,
    flow,
    root,
    bookmark,
    places,
    summary,
    showFindings: options.showFindings ?? [],
    program,
    title,
    stills: options.stills ?? new Map(),
  };
  write(report);
  handNotes(report);
  places.finish();
  finishPages(doc, ink, sheet, {
    show: show.title,
    day: dayName,
    program: `${title}, ${program}, build ${options.buildId}`,
    claim: CLAIM,
  });
  finishOutline(doc);
  attachFiles(doc, options.attachments ?? [], shootingDate);
  return documentBytes(doc);
}
