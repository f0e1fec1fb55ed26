// npm run test:interop: what we compute and write, read by other people's libraries. Needs Python 3.11 or newer and PyPI.
// --install: only their packages, for a run that comes later.
import { spawn, spawnSync } from "node:child_process";
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { availableParallelism } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { findProgram } from "./tools.mjs";

const root = fileURLToPath(new URL("..", import.meta.url));
const tests = join(root, "test/interop");
const venv = join(root, "test/.work/venv");
const demo = join(root, "test/.work/demo");
const python = join(venv, process.platform === "win32" ? "Scripts/python.exe" : "bin/python");
const inCi = process.env.CI === "true";
const totals = { passed: 0, failed: 0 };

const base = ["python3.11", "python3.12", "python3.13", "python3"]
  .map((name) => findProgram([name]))
  .find((path) => path !== null && isNewEnough(path));
if (base === undefined) {
  for (const test of testFiles()) console.log(`skipped: ${test} (no Python 3.11 or newer in PATH)`);
  end(inCi ? 1 : 0);
}
if (!prepareVenv(base)) {
  for (const test of testFiles()) console.log(`skipped: ${test} (its packages could not be installed)`);
  end(inCi ? 1 : 0);
}
if (process.argv.includes("--install")) process.exit(0);

mkdirSync(demo, { recursive: true });
const readers = ["editorial", "vfx", "production"].flatMap((reader) => ["--pdf", reader]);
const options = ["--out", demo, "--quiet", "--map-width", "288", ...readers];
const built = spawnSync(process.execPath, ["dist/cli/main.js", "build", "data", ...options], { cwd: root, encoding: "utf8" });
if (built.status !== 0 && built.status !== 1) {
  console.log(`the demo did not build (exit ${built.status}): ${built.stderr}`);
  totals.failed++;
}
// the longest ones stand last in the alphabet
const waiting = testFiles().reverse();
await Promise.all(Array.from({ length: Math.min(4, availableParallelism()) }, runTests));
end(totals.failed);

function isNewEnough(path) {
  return spawnSync(path, ["-c", "import sys; sys.exit(sys.version_info < (3, 11))"], { stdio: "ignore" }).status === 0;
}

/** A virtual environment with exactly the packages of requirements.txt; made anew when that file changed. */
function prepareVenv(path) {
  const wanted = readFileSync(join(tests, "requirements.txt"), "utf8");
  const stamp = join(venv, "installed.txt");
  if (existsSync(stamp) && readFileSync(stamp, "utf8") === wanted) return true;
  console.log("installing the packages of test/interop/requirements.txt");
  if (spawnSync(path, ["-m", "venv", "--clear", venv], { stdio: "inherit" }).status !== 0) return false;
  const install = ["-m", "pip", "install", "--quiet", "--disable-pip-version-check", "-r", join(tests, "requirements.txt")];
  if (spawnSync(python, install, { stdio: "inherit" }).status !== 0) return false;
  writeFileSync(stamp, wanted);
  return true;
}

function testFiles() {
  return readdirSync(tests)
    .filter((name) => name.endsWith(".py") && name !== "report.py")
    .sort();
}

/** Runs the programs that wait, one after the other, while others of its kind do the same. */
async function runTests() {
  for (let name = waiting.shift(); name !== undefined; name = waiting.shift()) await runTest(name);
}

/** Runs one test program and adds up the "N passed, N failed" that it ends with. */
async function runTest(name) {
  const start = performance.now();
  const run = spawn(python, [join(tests, name), demo], { cwd: tests, env: { ...process.env, PYTHONDONTWRITEBYTECODE: "1" } });
  const said = { stdout: "", stderr: "" };
  for (const stream of ["stdout", "stderr"]) {
    run[stream].setEncoding("utf8").on("data", (text) => {
      said[stream] += text;
    });
  }
  const status = await new Promise((done) => run.on("close", done));
  console.log(`\n${name}, ${((performance.now() - start) / 1000).toFixed(1)} s`);
  process.stdout.write(said.stdout);
  const counts = /(\d+) passed, (\d+) failed\s*$/.exec(said.stdout);
  if (counts === null || (status !== 0 && counts[2] === "0")) {
    console.log(said.stderr);
    totals.failed++;
  }
  totals.passed += Number(counts?.[1] ?? 0);
  totals.failed += Number(counts?.[2] ?? 0);
}

function end(failed) {
  console.log(`\n${totals.passed} passed, ${failed} failed`);
  process.exit(failed === 0 ? 0 : 1);
}
