/** The real work on a day: read, join, compute, and write pages and pack. Heavy modules are loaded when the first day needs them. */
import { dayDataPackage } from "../export/datapackage.ts";
import { dayJson } from "../export/day-json.ts";
import { findingsCsv } from "../export/findings-csv.ts";
import { takesCsv } from "../export/takes-csv.ts";
import { readDay } from "../ingest/read-day.ts";
import { readShow } from "../ingest/read-show.ts";
import { buildDay } from "../model/build-day.ts";
import { summariseDay } from "../summary/day.ts";
import { digestDay } from "../summary/digest.ts";
import type { DaySummary } from "../summary/types.ts";
import { dayNumber } from "./day-number.ts";
import type { OutFolder } from "./effects.ts";
import type { DayRequest, DayWork, Pipeline, ShowRequest } from "./pipeline.ts";

/** The pipeline that the command runs. */
export async function loadPipeline(): Promise<Pipeline> {
  return { readShow, dayNumber, makeDay, makeShow };
}

async function makeDay(request: DayRequest): Promise<DayWork> {
  const { folder, show, date, tool, buildId, out, into, stage } = request;
  stage("read");
  const { input, findings } = readDay(folder, show, date);
  stage("figures");
  const summary = summariseDay(buildDay(show, input, findings), show.kit);
  stage("pack");
  const packFiles = await writePack(summary, request);
  stage("pages");
  const [{ dayPages }, { renderPages }] = await Promise.all([import("../view/day-pages.ts"), import("../site/render.ts")]);
  await renderPages(dayPages(summary, { tool, buildId, show: show.show, days: request.days, packFiles }), out.absolute(into));
  return { digest: digestDay(summary, packFiles), findings: summary.findings, files: input.files };
}

async function writePack(summary: DaySummary, request: DayRequest): Promise<readonly { name: string; bytes: number }[]> {
  const { tool, buildId } = request;
  const { cameraReport } = await import("../pdf/camera-report.ts");
  const files: readonly (readonly [string, Uint8Array | string])[] = [
    [`${summary.show.code}-${summary.date}-camera-report.pdf`, await cameraReport(summary, { tool, buildId })],
    ["day.json", dayJson(summary, tool)],
    ["takes.csv", takesCsv(summary)],
    ["findings.csv", findingsCsv(summary.findings)],
    ["datapackage.json", dayDataPackage(summary)],
  ];
  return files.map(([name, content]) => ({
    name,
    bytes: writeFile(request.out, `${request.into}/packs/${summary.date}/${name}`, content),
  }));
}

async function makeShow(request: ShowRequest): Promise<void> {
  const { digests, show, showFindings, tool, buildId, out, into } = request;
  const [{ showPages }, { copyAssets, renderPages }] = await Promise.all([
    import("../view/show-pages.ts"),
    import("../site/render.ts"),
  ]);
  const days = digests.map(({ date, day }) => ({ date, day }));
  const pages = showPages(digests, show, { tool, buildId, show: show.show, days, packFiles: [], showFindings });
  await renderPages(pages, out.absolute(into));
  await copyAssets(out.absolute(into));
}

function writeFile(out: OutFolder, file: string, content: Uint8Array | string): number {
  const bytes = typeof content === "string" ? new TextEncoder().encode(content) : content;
  out.write(file, bytes);
  return bytes.length;
}
