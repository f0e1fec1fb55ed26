import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";

const ROOT = fileURLToPath(new URL("../..", import.meta.url));

describe.skipIf(!existsSync(`${ROOT}dist/ingest/read-show.js`))("show folders damaged at random", () => {
  it("are read, joined and summarised without an exception, a hang or a lost row", () => {
    const args = ["scripts/fuzz.mjs", "--runs", "200", "--seed", "7"];
    const { stdout, status } = spawnSync(process.execPath, args, { cwd: ROOT, encoding: "utf8" });
    expect(stdout).toMatch(/^200 runs, seed 7, .*: no fault\n$/);
    expect(status).toBe(0);
  }, 600_000);
  it("go through pages, PDF and every export without a fault, a file outside the report, or a file that its readers refuse", () => {
    const args = ["scripts/fuzz.mjs", "--runs", "8", "--seed", "9", "--through", "2"];
    const { stdout, status } = spawnSync(process.execPath, args, { cwd: ROOT, encoding: "utf8" });
    expect(stdout).toMatch(/^8 runs, seed 9, .*, 4 through everything .*: no fault\n$/);
    expect(status).toBe(0);
  }, 600_000);
});
