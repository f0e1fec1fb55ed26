/** The real work on a day: read, join, compute, and write pages and pack. Heavy modules are loaded when the first day needs them. */
import { historySettings } from "../export/mhl/settings.ts";
import { PACK_GUIDE, packGuide } from "../export/pack-guide.ts";
import { readDay } from "../ingest/read-day.ts";
import { readShow } from "../ingest/read-show.ts";
import { buildDay } from "../model/build-day.ts";
import { checkAcrossDays } from "../model/checks/across-days.ts";
import { summariseDay } from "../summary/day.ts";
import { digestDay } from "../summary/digest.ts";
import { dayNumber } from "./day-number.ts";
import { packContents, packVfx } from "./pack.ts";
import { writePackHistory } from "./pack-history.ts";
import type { DayRequest, DayWork, Pipeline, ShowRequest } from "./pipeline.ts";
import { findingFrames } from "./source-lines.ts";

/** The pipeline that the command runs. */
export async function loadPipeline(): Promise<Pipeline> {
  return {
    readShow: (folder) => readShow(folder),
    dayNumber,
    makeDay,
    checkDays: ({ show }, digests) => checkAcrossDays(digests, show.accepted),
    makeShow,
  };
}

async function makeDay(request: DayRequest): Promise<DayWork> {
  const { folder, show, date, tool, buildId, out, into, stage } = request;
  stage("read");
  const { input, findings } = readDay(folder, show, date);
  stage("figures");
  const summary = summariseDay(buildDay(show, input, findings), show.kit);
  stage("pack");
  const pack = await packContents(summary, request.showFindings, tool, request.packId, request.vfx, {
    readers: request.pdf,
    read: (file) => folder.read(file),
  });
  for (const { name, bytes } of pack) out.write(`${into}/packs/${date}/${name}`, bytes);
  stage("vfx");
  const write = (name: string, bytes: Uint8Array) => out.write(`${into}/packs/${date}/${name}`, bytes);
  const vfx = await packVfx(summary, request.vfx, { write, say: request.say, now: request.now });
  const made = [...pack.map(({ name, bytes }) => ({ name, bytes: bytes.length })), ...vfx];
  const guide = Buffer.from(
    packGuide(
      summary,
      made.map((file) => file.name),
      tool,
    ),
  );
  write(PACK_GUIDE, guide);
  const packFiles = [{ name: PACK_GUIDE, bytes: guide.length }, ...made];
  stage("stills");
  const { dayStills } = await import("./stills.ts");
  const stills = dayStills(date, summary.takes, folder);
  for (const { path, bytes } of stills.files) out.write(`${into}/${path}`, bytes);
  stage("pages");
  const [{ dayPages }, { renderPages }] = await Promise.all([import("../view/day-pages.ts"), import("../site/render.ts")]);
  const { takeDataFiles } = await import("./take-data-files.ts");
  for (const { path, bytes } of takeDataFiles(summary, show.show.distances, stills.byTake)) out.write(`${into}/${path}`, bytes);
  const frames = findingFrames([...summary.findings, ...summary.takes.flatMap((t) => t.findings)], folder);
  const site = { tool, buildId, show: show.show, days: request.days, packFiles, stills: stills.byTake, dataScripts: true, frames };
  const { tableFiles } = await import("../view/table-files.ts");
  const pages = dayPages(summary, site);
  for (const { path, text } of tableFiles(pages)) out.write(`${into}/${path}`, Buffer.from(text));
  await renderPages(pages, out.absolute(into));
  stage("hash list");
  const history = writePackHistory(out, into, date, historySettings(summary, tool));
  return { digest: digestDay(summary, packFiles), findings: [...summary.findings, ...history], files: input.files };
}

async function makeShow(request: ShowRequest): Promise<void> {
  const { digests, show, showFindings, tool, buildId, out, into, lastChange, packs } = request;
  const [{ showPages }, { showTexts }, { copyAssets, renderPages }, { tableFiles }] = await Promise.all([
    import("../view/show-pages.ts"),
    import("./show-texts.ts"),
    import("../site/render.ts"),
    import("../view/table-files.ts"),
  ]);
  const texts = showTexts(digests, show);
  const showTables = texts.map(({ path, text }) => ({ name: path, bytes: Buffer.byteLength(text) }));
  const days = digests.map(({ date, day }) => ({ date, day }));
  const site = { tool, buildId, show: show.show, days, packFiles: [], showFindings, showTables, lastChange, packs };
  const pages = showPages(digests, show, site);
  for (const { path, text } of [...texts, ...tableFiles(pages)]) out.write(`${into}/${path}`, text);
  await renderPages(pages, out.absolute(into));
  await copyAssets(out.absolute(into));
}
