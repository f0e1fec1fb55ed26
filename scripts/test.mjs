// npm test: finds or installs the programs that tests need, compiles, runs every test, and ends with one line of counts.
import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync, readFileSync, rmSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { findChromium, findOrInstall, PROGRAMS } from "./tools.mjs";

const root = fileURLToPath(new URL("..", import.meta.url));
const work = join(root, "test/.work");
mkdirSync(work, { recursive: true });
process.chdir(root);
const inCi = process.env.CI === "true";
const skips = [];

const chromium = await findChromium();
console.log(`Chromium: ${chromium ?? "missing"}`);
if (chromium === null) skips.push("Chromium is missing: the browser tests in test/browser are skipped (set CHROMIUM to its path)");
for (const tool of PROGRAMS) {
  const path = findOrInstall(tool);
  console.log(`${tool.program}: ${path ?? "missing"}`);
  if (path === null) skips.push(`${tool.program} is missing (package ${tool.package}): ${tool.tests} is skipped`);
}

// the browser tests leave the built demo to the walk in Firefox
const env = { ...process.env, TZ: "UTC", DEMO_REPORT: join(work, "report"), ...(chromium === null ? {} : { CHROMIUM: chromium }) };
const compiled =
  spawnSync("npm", ["run", "--silent", "prepare"], { stdio: "inherit", env, shell: process.platform === "win32" }).status === 0;
const totals = { passed: 0, failed: compiled ? 0 : 1, skipped: 0 };
if (!compiled) console.log("compiling failed");

runVitest("unit tests", []);
if (chromium !== null && existsSync("test/browser/vitest.config.ts"))
  runVitest("browser tests", ["--config", "test/browser/vitest.config.ts"]);

for (const skip of skips) console.log(`skipped: ${skip}`);
if (totals.skipped > 0) console.log(`skipped: ${totals.skipped} tests, see above`);
// the example shows and published schemas lie beside the project; a clone without them skips those tests by name, and passes
const withoutShared = !existsSync("../shared");
if (withoutShared) console.log("../shared is not there: the tests that read it are skipped by name");
const failed = totals.failed + (inCi ? skips.length + (withoutShared ? 0 : totals.skipped) : 0);
console.log(`${totals.passed} passed, ${failed} failed`);
process.exitCode = failed === 0 ? 0 : 1;

/** Runs one configuration and adds up what its report says; a run without a report counts as one failure. */
function runVitest(name, args) {
  const report = join(work, `${name.replaceAll(" ", "-")}.json`);
  rmSync(report, { force: true });
  const vitest = join(root, "node_modules/vitest/vitest.mjs");
  const reporters = ["--reporter=default", "--reporter=json", `--outputFile.json=${report}`];
  const { status } = spawnSync(process.execPath, [vitest, "run", ...args, ...reporters], { stdio: "inherit", env });
  if (!existsSync(report)) {
    console.log(`${name}: no report was written (exit ${status})`);
    totals.failed++;
    return;
  }
  const result = JSON.parse(readFileSync(report, "utf8"));
  const brokenFiles = result.testResults.filter(
    (file) => file.status === "failed" && file.assertionResults.every((t) => t.status !== "failed"),
  );
  for (const file of brokenFiles) console.log(`${file.name}: ${file.message.split("\n")[0]}`);
  totals.passed += result.numPassedTests;
  totals.failed += result.numFailedTests + brokenFiles.length;
  totals.skipped += result.numPendingTests;
  if (status !== 0 && result.numFailedTests + brokenFiles.length === 0) totals.failed++;
}
