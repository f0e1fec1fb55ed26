/** The day for VFX: which plates belong together, the lenses, a sheet a plate set-up, findings and methods. */
import type { Report } from "../report.ts";
import { element } from "../tags.ts";
import { findingsSection } from "./findings.ts";
import { reportHead } from "./glance-head.ts";
import { usedLensSection } from "./lenses.ts";
import { lensMethodsSection } from "./methods.ts";
import { plateSheets } from "./plate-sheets.ts";
import { platesTable } from "./plates-table.ts";

export function vfxReport(report: Report): void {
  const head = element(report.doc, report.root, "Sect");
  reportHead(report, head);
  platesTable(report);
  usedLensSection(report);
  plateSheets(report);
  const plates = new Set(report.summary.takes.filter((t) => t.take.plate !== null).map((t) => t.take.address));
  findingsSection(report, (finding) => finding.take === null || plates.has(finding.take));
  lensMethodsSection(report);
}
