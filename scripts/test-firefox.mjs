// npm run test:firefox: builds what changed of the demo, walks it from the disk in Firefox, and ends with one line of counts. Compile first.
// The browser is FIREFOX in the environment, one in PATH, else Debian's firefox-esr where packages can be installed.
import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { findOrInstall, findProgram } from "./tools.mjs";

const root = fileURLToPath(new URL("..", import.meta.url));
const report = join(root, "test/.work/report");
const firefox =
  process.env.FIREFOX ??
  findProgram(["firefox", "firefox-esr"]) ??
  findOrInstall({ program: "firefox-esr", package: "firefox-esr" });

if (firefox === null) {
  // what is skipped in CI has failed
  const failed = process.env.CI === "true" ? 1 : 0;
  console.log("skipped: Firefox is missing and could not be installed; set FIREFOX to its path");
  console.log(`0 passed, ${failed} failed`);
  process.exitCode = failed;
} else {
  // the browser tests left it there: then nothing of it is built again
  const command = [join(root, "dist/cli/main.js"), "build", join(root, "data"), "--out", report, "--quiet", "--map-width", "96"];
  const built = spawnSync(process.execPath, command, { encoding: "utf8" });
  // 1 is right as well: the demo has deliberate mistakes
  if (built.status !== 0 && built.status !== 1) throw new Error(`the demo did not build (exit ${built.status}): ${built.stderr}`);
  // Node has a WebSocket of its own from 22 on, and behind a flag before
  const flags = typeof WebSocket === "undefined" ? ["--experimental-websocket"] : [];
  const walk = spawnSync(process.execPath, [...flags, join(root, "test/firefox/walk.mjs"), report, firefox], { stdio: "inherit" });
  process.exitCode = walk.status ?? 1;
}
