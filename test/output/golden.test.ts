/**
 * A whole tiny show and the whole site that belongs to it. An output that is missing is written here for review, never when CI
 * is set; an output that differs is left beside it as `out-changed`.
 */
import { spawnSync } from "node:child_process";
import { cpSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { filesOf } from "../helpers/built-site.ts";

const ROOT = fileURLToPath(new URL("../..", import.meta.url));
const GOLDEN = join(ROOT, "test/golden");

/** What is compared: pages and machine files; the PDF and the assets have tests of their own. The build id changes with the code, so it is folded. */
function content(folder: string): Record<string, string> {
  return Object.fromEntries(
    filesOf(folder)
      .filter((file) => /\.(html|json|csv)$/.test(file) && !file.startsWith(".") && !file.includes("manifest"))
      .map((file) => [file, fold(readFileSync(join(folder, file), "utf8"))]),
  );
}

function fold(text: string): string {
  return text
    .replace(/[0-9a-f]{8,64}/g, (hash) => (/[a-f]/.test(hash) && /\d/.test(hash) ? "#".repeat(8) : hash))
    .replace(/\d+(\.\d+)?[\s\u00a0\u202f](bytes|kB|KB|MB|B)\b/g, "(size)");
}

describe.each(readdirSync(GOLDEN).filter((name) => existsSync(join(GOLDEN, name, "in"))))("the golden show %s", (name) => {
  it("builds into the pages and files that were reviewed", () => {
    const built = join(mkdtempSync(join(tmpdir(), "daybook-golden-")), "report");
    const run = spawnSync(
      process.execPath,
      [join(ROOT, "dist/cli/main.js"), "build", join(GOLDEN, name, "in"), "--out", built, "--quiet"],
      { encoding: "utf8" },
    );
    expect([0, 1], run.stderr).toContain(run.status);
    const expected = join(GOLDEN, name, "out");
    if (!existsSync(expected)) {
      expect(process.env.CI, `${expected} is missing; run the test without CI and review what it writes`).not.toBe("true");
      for (const file of Object.keys(content(built))) cpSync(join(built, file), join(expected, file), { recursive: true });
    }
    const got = content(built);
    const want = content(expected);
    if (JSON.stringify(got) !== JSON.stringify(want) && process.env.CI !== "true") {
      rmSync(join(GOLDEN, name, "out-changed"), { recursive: true, force: true });
      for (const file of Object.keys(got)) cpSync(join(built, file), join(GOLDEN, name, "out-changed", file), { recursive: true });
    }
    expect(Object.keys(got)).toEqual(Object.keys(want));
    for (const file of Object.keys(want)) expect(got[file], file).toBe(want[file]);
    rmSync(join(built, ".."), { recursive: true, force: true });
  });
});
