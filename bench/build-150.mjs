// Builds one day of 150 takes with 1,440 logged frames each on one core and prints takes a second, the median of three.
// Run after `npm run prepare`: node bench/build-150.mjs [takes]
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { FRAMES, writeShow } from "./show.mjs";

const TAKES = Number(process.argv[2] ?? 150);
const main = fileURLToPath(new URL("../dist/cli/main.js", import.meta.url));
const hasTaskset = spawnSync("taskset", ["--version"], { stdio: "ignore" }).status === 0;

const root = mkdtempSync(join(tmpdir(), "daybook-bench-"));
try {
  const show = join(root, "show");
  const bytes = writeShow(show, TAKES);
  const seconds = [0, 1, 2].map((run) => timeOneBuild(show, join(root, `out-${run}`)));
  const median = [...seconds].sort((a, b) => a - b)[1];
  console.log(`${TAKES} takes, ${FRAMES} frames each, ${(bytes / 1e6).toFixed(1)} MB of logs${hasTaskset ? ", one core" : ""}`);
  console.log(`runs: ${seconds.map((s) => `${s.toFixed(2)} s`).join(", ")}`);
  console.log(`${(TAKES / median).toFixed(1)} takes a second (median of ${seconds.length})`);
} finally {
  rmSync(root, { recursive: true, force: true });
}

function timeOneBuild(show, out) {
  const command = [...(hasTaskset ? ["taskset", "-c", "0"] : []), process.execPath, main, "build", show, "--out", out, "--quiet"];
  const start = performance.now();
  const { status, stdout, stderr } = spawnSync(command[0], command.slice(1), { encoding: "utf8" });
  if (status !== 0) throw new Error(`the build ended with exit ${status}\n${stdout}${stderr}`);
  return (performance.now() - start) / 1000;
}
