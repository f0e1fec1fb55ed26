/** `--pdf` of build and pack. */
import { existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, it, vi } from "vitest";
import { runIn } from "./fake-io.ts";

vi.setConfig({ testTimeout: 120_000, hookTimeout: 60_000 });
const PACK = "ferry-report/packs/2026-03-14";
let root: string;
const run = (...args: string[]) => runIn(root, args);
const has = (reader: string) => existsSync(join(root, PACK, `FERRY-2026-03-14-${reader}.pdf`));

beforeAll(async () => {
  root = mkdtempSync(join(tmpdir(), "daybook-pdf-option-"));
  await run("init", "ferry");
});
afterAll(() => rmSync(root, { recursive: true, force: true }));

it("build --pdf writes a PDF for each reader that is named, links it, and takes it away when it is no longer asked for", async () => {
  expect((await run("build", "ferry", "--pdf", "editorial", "--pdf", "vfx", "--pdf", "editorial")).status).toBe(0);
  expect(["editorial", "vfx", "production", "camera-report"].map(has)).toEqual([true, true, false, true]);
  const page = readFileSync(join(root, "ferry-report/days/2026-03-14/editorial.html"), "utf8");
  expect(page).toContain("FERRY-2026-03-14-editorial.pdf");
  const again = await run("build", "ferry", "--pdf", "vfx", "--pdf", "editorial", "--verbose");
  expect(again.stdout + again.stderr).toContain("unchanged");
  expect((await run("pack", "ferry", "--day", "2026-03-14", "--pdf", "production")).status).toBe(0);
  expect(["editorial", "vfx", "production", "camera-report"].map(has)).toEqual([false, false, true, true]);
});

it("refuses a reader that it does not know, and says which there are", async () => {
  const { status, stderr } = await run("build", "ferry", "--pdf", "gaffer");
  expect(status).toBe(2);
  expect(stderr).toContain("Write one of editorial, vfx, production.");
  for (const command of ["build", "pack"]) expect((await run(command, "--help")).stdout).toMatch(/--pdf <reader>/);
});
