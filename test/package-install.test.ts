/** What npm would publish, installed into an empty folder, builds a report there. */
import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { expect, it } from "vitest";

const ROOT = resolve(import.meta.dirname, "..");

it("the packed package installs and builds the show that init writes", { timeout: 120_000 }, () => {
  const work = mkdtempSync(join(tmpdir(), "daybook-install-"));
  const home = join(work, "empty");
  const npm = (args: string[], cwd: string) => {
    const env = { ...process.env, npm_config_update_notifier: "false" };
    const run = spawnSync("npm", args, { cwd, encoding: "utf8", env, shell: process.platform === "win32" });
    expect(run.status, `npm ${args[0]}: ${run.stderr}`).toBe(0);
    return run.stdout;
  };
  const daybook = (args: string[]) =>
    spawnSync(process.execPath, [join(home, "node_modules/lens-daybook/dist/cli/main.js"), ...args], {
      cwd: home,
      encoding: "utf8",
    });
  try {
    mkdirSync(home);
    // Scripts are left out: the compiled files are there, and other tests are using them.
    npm(["pack", "--ignore-scripts", "--silent", "--pack-destination", work], ROOT);
    const packed = readdirSync(work).find((name) => name.endsWith(".tgz"));
    writeFileSync(join(home, "package.json"), '{ "private": true, "type": "module" }\n');
    npm(["install", "--prefer-offline", "--ignore-scripts", "--no-audit", "--no-fund", "--silent", join(work, packed ?? "")], home);

    expect(daybook(["init", "ferry"]).status).toBe(0);
    const built = daybook(["build", "ferry", "--out", "report"]);
    expect(built.status, built.stdout + built.stderr).toBe(0);
    for (const file of [
      "index.html",
      "days/2026-03-14/index.html",
      "days/2026-03-14/takes/a-12a-1.html",
      "packs/2026-03-14/day.json",
    ]) {
      expect(existsSync(join(home, "report", file)), file).toBe(true);
    }
    const script =
      'import { readShow } from "lens-daybook"; import * as optics from "lens-daybook/optics"; import * as time from "lens-daybook/time"; console.log(typeof readShow, typeof optics.hyperfocalMm, typeof time.parseTimecode);';
    const library = spawnSync(process.execPath, ["--input-type=module", "-e", script], { cwd: home, encoding: "utf8" });
    expect(library.stdout.trim()).toBe("function function function");
  } finally {
    rmSync(work, { recursive: true, force: true });
  }
});
