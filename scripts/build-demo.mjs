/**
 * Builds the demo show into site/. Its notes and logs have mistakes on purpose, so that the findings pages have something to
 * show: exit 1 of the command ("errors in the data, everything that could be built is built") is right here. Its maps are narrower
 * than the default, which would make them 800 MB: `npm run demo -- --map-width 1152` builds those.
 */
import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";

const root = fileURLToPath(new URL("..", import.meta.url));
const command = ["dist/cli/main.js", "build", "data", "--out", "site", "--map-width", "288", ...process.argv.slice(2)];
const built = spawnSync(process.execPath, command, {
  cwd: root,
  stdio: "inherit",
});
if (built.status === 1) console.log("The errors above are the demo's own: mistakes that people make, for the findings pages.");
process.exit(built.status === 1 ? 0 : (built.status ?? 70));
