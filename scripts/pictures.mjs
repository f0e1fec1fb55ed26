// Makes the pictures that test/browser/pictures.test.ts compares the pages with, in test/golden/pictures. Compile first.
import { spawnSync } from "node:child_process";
import { readdirSync, statSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

const root = fileURLToPath(new URL("..", import.meta.url));
const folder = join(root, "test/golden/pictures");
const vitest = [join(root, "node_modules/vitest/vitest.mjs"), "run", "--config", "test/browser/vitest.config.ts"];
const run = spawnSync(process.execPath, [...vitest, "test/browser/pictures.test.ts", "-t", "beside its picture"], {
  cwd: root,
  stdio: "inherit",
  env: { ...process.env, TZ: "UTC", PICTURES: "make" },
});
if (run.status !== 0) process.exit(run.status ?? 1);
const names = readdirSync(folder);
const bytes = names.reduce((sum, name) => sum + statSync(join(folder, name)).size, 0);
console.log(`${names.length} pictures, ${Math.round(bytes / 1000)} KB together: look at what changed before you keep them`);
