/** The real work on a day: read, join, compute, and write pages and pack. Heavy modules are loaded when the first day needs them. */
import { readDay } from "../ingest/read-day.ts";
import { readShow } from "../ingest/read-show.ts";
import { buildDay } from "../model/build-day.ts";
import { summariseDay } from "../summary/day.ts";
import { digestDay } from "../summary/digest.ts";
import { dayNumber } from "./day-number.ts";
import { packContents } from "./pack.ts";
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
  const pack = await packContents(summary, tool, buildId);
  for (const { name, bytes } of pack) out.write(`${into}/packs/${date}/${name}`, bytes);
  const packFiles = pack.map(({ name, bytes }) => ({ name, bytes: bytes.length }));
  stage("pages");
  const [{ dayPages }, { renderPages }] = await Promise.all([import("../view/day-pages.ts"), import("../site/render.ts")]);
  await renderPages(dayPages(summary, { tool, buildId, show: show.show, days: request.days, packFiles }), out.absolute(into));
  return { digest: digestDay(summary, packFiles), findings: summary.findings, files: input.files };
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
