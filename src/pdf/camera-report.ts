/** The camera report of a day as a PDF: a page for the producer, then set-up by set-up, plates, lenses, findings and methods. */
import type { DaySummary } from "../summary/types.ts";
import { contents } from "./sections/contents.ts";
import { contentsEntries } from "./sections/contents-entries.ts";
import { findingsSection } from "./sections/findings.ts";
import { glance } from "./sections/glance.ts";
import { lensSection } from "./sections/lenses.ts";
import { methodsSection } from "./sections/methods.ts";
import { plateSheets } from "./sections/plate-sheets.ts";
import { platesTableHere } from "./sections/plates-table.ts";
import { setupSections } from "./sections/take-sheets.ts";
import { type ReportOptions, writeReport } from "./write-report.ts";

/** The bytes of the report: see `writeReport` for what holds of them. */
export function cameraReport(summary: DaySummary, options: ReportOptions): Promise<Uint8Array> {
  return writeReport(summary, options, "Camera report", (report) => {
    const allScenes = glance(report, "see Lenses");
    report.flow.newPage();
    contents(report, contentsEntries(summary, allScenes));
    setupSections(report);
    platesTableHere(report);
    plateSheets(report);
    lensSection(report);
    findingsSection(report);
    methodsSection(report);
  });
}
