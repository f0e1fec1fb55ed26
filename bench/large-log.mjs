// Peak memory and rows a second of reading one log of 250, 500, 1000 and 2000 MB (or the sizes given, in MB), each in a process of
// its own. Run after `npm run prepare`: node bench/large-log.mjs [MB...]
import { spawnSync } from "node:child_process";
import { closeSync, mkdirSync, mkdtempSync, openSync, rmSync, statSync, writeFileSync, writeSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

const DATE = "2031-05-06";
const RATE = 100;

if (process.argv[2] === "--read") await read(process.argv[3]);
else measure(process.argv.length > 2 ? process.argv.slice(2).map(Number) : [250, 500, 1000, 2000]);

function measure(sizes) {
  for (const megabytes of sizes) {
    const show = mkdtempSync(join(tmpdir(), "large-log-"));
    try {
      mkdirSync(join(show, "days", DATE, "logs"), { recursive: true });
      writeFileSync(join(show, "show.yaml"), `title: Large log\ncode: LARGE\nrate: ${RATE}\n`);
      writeLog(join(show, "days", DATE, "logs", "a.csv"), megabytes * 1e6);
      const child = spawnSync(process.execPath, [fileURLToPath(import.meta.url), "--read", show], { stdio: "inherit" });
      if (child.status !== 0) process.exit(child.status ?? 1);
    } finally {
      rmSync(show, { recursive: true });
    }
  }
}

/** A day of one camera with an unknown column of text, which makes the rows long. */
function writeLog(path, size) {
  const file = openSync(path, "w");
  const two = (n) => String(n).padStart(2, "0");
  const remark = `"operator, focus ${"x".repeat(120)}"`;
  let text = "# camera: A\ntimecode,focus_m,t,focal_mm,entrance_pupil_mm,remark\n";
  for (let written = 0, frame = 0; written < size; frame++) {
    const second = Math.floor(frame / RATE) % 86_400;
    const label = [second / 3600, (second / 60) % 60, second % 60, frame % RATE].map((n) => two(Math.floor(n))).join(":");
    text += `${label},${(2 + Math.sin(frame / 500)).toFixed(4)},2.8,50.0,112.${frame % 10},${remark}\n`;
    if (text.length < 1 << 20) continue;
    written += writeSync(file, text);
    text = "";
  }
  closeSync(file);
}

async function read(show) {
  const { readDay, readShow, showFiles } = await import("../dist/index.js");
  const folder = showFiles(show);
  const { input } = readShow(folder);
  const start = process.cpuUsage();
  const { input: day } = readDay(folder, input, DATE);
  const { user, system } = process.cpuUsage(start);
  const rows = day.logs[0].rows;
  const text = day.logs[0].unknown[0].text(rows - 1);
  const megabytes = (bytes) => `${Math.round(bytes / 1e6)} MB`;
  const size = statSync(join(show, "days", DATE, "logs", "a.csv")).size;
  const peak = process.resourceUsage().maxRSS * 1024;
  console.log(
    `${megabytes(size)}: ${rows} rows, peak ${megabytes(peak)}, ${(rows / (user + system)).toFixed(2)} million rows a second of processor time; last remark has ${text.length} characters`,
  );
}
