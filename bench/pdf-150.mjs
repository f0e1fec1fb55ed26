// Makes the camera report of a day of 150 takes with 1,440 logged frames each, and prints how long the PDF alone takes: in a
// new process each time (its modules are loaded in that time too), and again in one that has made it before. Medians, by the
// clock and of the processor: a machine with other work makes the first longer.
// Run after `npm run prepare`: node bench/pdf-150.mjs [takes]
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { DATE, FRAMES, writeShow } from "./show.mjs";

const COLD = 5;
const WARM = 5;
const [first, show] = process.argv.slice(2);

if (first === "--one") await makeReports(show);
else measure(Number(first ?? 150));

function measure(takes) {
  const root = mkdtempSync(join(tmpdir(), "daybook-bench-"));
  try {
    const folder = join(root, "show");
    writeShow(folder, takes);
    const runs = Array.from({ length: COLD }, () => oneProcess(folder));
    const [{ pages, bytes, version }] = runs;
    console.log(`${takes} takes, ${FRAMES} frames each: ${pages} pages, ${(bytes / 1e6).toFixed(2)} MB (Node ${version})`);
    const kinds = [
      ["cold", runs.map((run) => run.cold)],
      ["warm", runs.flatMap((run) => run.warm)],
    ];
    for (const [kind, times] of kinds) {
      const [clock, processor] = ["clock", "processor"].map((key) => seconds(median(times.map((time) => time[key]))));
      console.log(`${kind}: ${clock}, of the processor ${processor}`);
    }
  } finally {
    rmSync(root, { recursive: true, force: true });
  }
}

function oneProcess(folder) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [fileURLToPath(import.meta.url), "--one", folder], {
    encoding: "utf8",
  });
  if (status !== 0) throw new Error(`no report was made\n${stdout}${stderr}`);
  return JSON.parse(stdout);
}

/** Prints the milliseconds of the first report and of the following ones. */
async function makeReports(folder) {
  const { buildDay, dayJson, readDay, readShow, showFiles, summariseDay, takesCsv, thisTool } = await import("../dist/index.js");
  const files = showFiles(folder);
  const { input } = readShow(files);
  const summary = summariseDay(buildDay(input, readDay(files, input, DATE).input, []), input.kit);
  const tool = thisTool();
  const attachments = [
    {
      name: "day.json",
      mime: "application/json",
      description: "Every figure of the day",
      bytes: Buffer.from(dayJson(summary, tool)),
    },
    { name: "takes.csv", mime: "text/csv", description: "A row per take", bytes: Buffer.from(takesCsv(summary, tool)) },
  ];
  const times = [];
  let report = new Uint8Array();
  for (let run = 0; run <= WARM; run++) {
    const [start, used] = [performance.now(), process.cpuUsage()];
    const { cameraReport } = await import("../dist/pdf/camera-report.js");
    report = await cameraReport(summary, { tool, buildId: "bench", attachments });
    const { user, system } = process.cpuUsage(used);
    times.push({ clock: performance.now() - start, processor: (user + system) / 1000 });
  }
  const pages =
    Buffer.from(report)
      .toString("latin1")
      .match(/\/Type \/Page\n/g)?.length ?? 0;
  const [cold, ...warm] = times;
  console.log(JSON.stringify({ cold, warm, pages, bytes: report.length, version: process.version }));
}

function median(values) {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];
}

function seconds(milliseconds) {
  return `${(milliseconds / 1000).toFixed(2)} s`;
}
