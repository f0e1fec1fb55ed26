// Builds one day of 3,000 takes (or as many as asked for) with a log each, and prints seconds, memory and the size of the report.
// Run after `npm run prepare`: node bench/large-day.mjs [takes] [frames]
import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readdirSync, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const TAKES = Number(process.argv[2] ?? 3000);
const FRAMES = Number(process.argv[3] ?? 240);
const RATE = 24;
const DATE = "2026-03-14";
/** From one take to the next, so that the day ends before midnight. */
const SPACING = Math.max(FRAMES, Math.floor((16 * 3600 * RATE) / TAKES));
const main = fileURLToPath(new URL("../dist/cli/main.js", import.meta.url));
const memory = `data:text/javascript,process.on("exit",()=>process.stderr.write("\\nmaxRSS "+process.resourceUsage().maxRSS+"\\n"))`;

const root = mkdtempSync(join(tmpdir(), "daybook-large-"));
try {
  writeShow(join(root, "show"));
  const out = join(root, "out");
  const start = performance.now();
  const command = [`--import=${memory}`, main, "build", join(root, "show"), "--out", out];
  const { status, stdout, stderr } = spawnSync(process.execPath, command, { encoding: "utf8", maxBuffer: 1 << 28 });
  const seconds = (performance.now() - start) / 1000;
  if (status !== 0) throw new Error(`the build ended with exit ${status}\n${stdout.slice(-2000)}${stderr.slice(-2000)}`);
  const peak = Number(/maxRSS (\d+)/.exec(stderr)?.[1]) / 1024;
  const files = readdirSync(out, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
  const bytes = files.reduce((sum, file) => sum + statSync(join(file.parentPath, file.name)).size, 0);
  console.log(`${TAKES} takes, ${FRAMES} frames each: ${seconds.toFixed(1)} s, ${(TAKES / seconds).toFixed(1)} takes a second`);
  console.log(`memory at most ${peak.toFixed(0)} MB; report of ${files.length} files, ${(bytes / 1e6).toFixed(0)} MB`);
} finally {
  rmSync(root, { recursive: true, force: true });
}

function writeShow(show) {
  const notes = ["slate,take,camera,scene,roll,clip,tc_in,tc_out,lens,stop,circled,status,remarks"];
  const files = new Map([
    ["show.yaml", "title: Large day\ncode: LARGE\nrate: 24\n"],
    ["kit/cameras.csv", "camera,sensor_mode,active_width_mm,active_height_mm\nA,FULL,28.16,15.84\n"],
    ["kit/lenses.csv", "lens,kind,focal_mm,widest_t,transmittance,close_focus_m\nL50,prime,50,2,0.85,0.4\n"],
    [`days/${DATE}/day.yaml`, `day: 1\ndate: ${DATE}\ncall: "05:00"\n`],
  ]);
  for (let i = 0; i < TAKES; i++) {
    const clip = `A001C${String(i + 1).padStart(4, "0")}`;
    const first = 5 * 3600 * RATE + i * SPACING;
    const slate = `${1 + Math.floor(i / 40)}${"ABCDEFGH"[Math.floor(i / 5) % 8]}`;
    notes.push(
      `${slate},${(i % 5) + 1},A,${1 + Math.floor(i / 40)},A001,${clip},${label(first)},${label(first + FRAMES)},L50,2.8,${i % 5 === 4 ? "y" : ""},good,Take ${i + 1}`,
    );
    const rows = Array.from({ length: FRAMES }, (_, frame) => {
      const way = Math.min(1, Math.max(0, (frame - FRAMES / 3) / (FRAMES / 6)));
      return `${label(first + frame)},${(1 / (0.3 + 0.3 * way)).toFixed(3)},2.8`;
    });
    files.set(
      `days/${DATE}/logs/${clip}.csv`,
      `# camera: A\n# clip: ${clip}\n# lens: L50\ntimecode,focus_m,t\n${rows.join("\n")}\n`,
    );
  }
  files.set(`days/${DATE}/notes.csv`, `${notes.join("\n")}\n`);
  for (const [name, text] of files) {
    mkdirSync(dirname(join(show, name)), { recursive: true });
    writeFileSync(join(show, name), text);
  }
}

function label(frame) {
  const two = (number) => String(number).padStart(2, "0");
  const seconds = Math.floor(frame / RATE);
  return [Math.floor(seconds / 3600), Math.floor(seconds / 60) % 60, seconds % 60, frame % RATE].map(two).join(":");
}
