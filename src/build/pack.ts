/** The files of a day's pack: what leaves the set at the end of the day. */
import { dayDataPackage } from "../export/datapackage.ts";
import { dayJson } from "../export/day-json.ts";
import { findingsCsv } from "../export/findings-csv.ts";
import { takesCsv } from "../export/takes-csv.ts";
import type { DaySummary } from "../summary/types.ts";
import type { Tool } from "./pipeline.ts";

export interface PackContent {
  /** Relative to `packs/<date>/`. */
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** What lies in the pack and inside the PDF too: name, media type, and what it is in words. */
const TEXTS = [
  { name: "day.json", mime: "application/json", description: "Every figure of the day", text: dayJson },
  { name: "takes.csv", mime: "text/csv", description: "A row per take", text: takesCsv },
  {
    name: "findings.csv",
    mime: "text/csv",
    description: "A row per finding",
    text: (summary: DaySummary) => findingsCsv(summary.findings),
  },
] as const;

/** All files of the pack, the PDF first; the PDF holds the tables and the JSON, so that it can travel alone. */
export async function packContents(summary: DaySummary, tool: Tool, buildId: string): Promise<readonly PackContent[]> {
  const { cameraReport } = await import("../pdf/camera-report.ts");
  const texts = TEXTS.map(({ name, mime, description, text }) => ({
    name,
    mime,
    description,
    bytes: Buffer.from(text(summary, tool)),
  }));
  const report = await cameraReport(summary, { tool, buildId, attachments: texts });
  return [
    { name: `${summary.show.code}-${summary.date}-camera-report.pdf`, bytes: report },
    ...texts.map(({ name, bytes }) => ({ name, bytes })),
    { name: "datapackage.json", bytes: Buffer.from(dayDataPackage(summary)) },
  ];
}
