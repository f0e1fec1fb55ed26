/** A PDF of the day for one reader only: what the cutting room, VFX or the production office asks of it. */
import type { DaySummary } from "../summary/types.ts";
import type { Reader } from "./readers.ts";
import { editorialReport } from "./sections/editorial.ts";
import { productionReport } from "./sections/production.ts";
import { vfxReport } from "./sections/vfx.ts";
import { type ReportOptions, writeReport } from "./write-report.ts";

const REPORTS = {
  editorial: { title: "Editorial report", write: editorialReport },
  vfx: { title: "VFX report", write: vfxReport },
  production: { title: "Production report", write: productionReport },
} as const;

/** The bytes of the report: see `writeReport` for what holds of them. */
export function readerReport(summary: DaySummary, reader: Reader, options: ReportOptions): Promise<Uint8Array> {
  const { title, write } = REPORTS[reader];
  return writeReport(summary, options, title, write);
}
