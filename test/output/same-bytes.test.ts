/** Same input, same bytes: whatever the time zone, the language and the day it is built on. */
import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, inject, it } from "vitest";
import { sha256 } from "../../src/core/hash.ts";
import { filesOf } from "../helpers/built-site.ts";

const ROOT = fileURLToPath(new URL("../..", import.meta.url));
const hashes = (folder: string): Record<string, string> =>
  Object.fromEntries(filesOf(folder).map((file) => [file, sha256(readFileSync(join(folder, file)))]));

describe("a second build of the demo", () => {
  it("writes the same files with the same bytes in another time zone and language", () => {
    const out = join(mkdtempSync(join(tmpdir(), "daybook-again-")), "report");
    const run = spawnSync(
      process.execPath,
      [join(ROOT, "dist/cli/main.js"), "build", join(ROOT, "data"), "--out", out, "--quiet", "--map-width", "96"],
      {
        encoding: "utf8",
        env: { ...process.env, TZ: "Pacific/Kiritimati", LANG: "tr_TR.UTF-8", LC_ALL: "tr_TR.UTF-8" },
      },
    );
    expect([0, 1]).toContain(run.status);
    expect(hashes(out)).toEqual(hashes(inject("demoOut")));
    rmSync(join(out, ".."), { recursive: true, force: true });
  }, 180_000);
});
