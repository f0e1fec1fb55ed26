/** Notes that would be markup, a formula or a trick of direction somewhere: they show as text everywhere. */
import { spawnSync } from "node:child_process";
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { pagesOf } from "../helpers/built-site.ts";
import { launchChromium } from "../helpers/chromium.ts";

const ROOT = fileURLToPath(new URL("../..", import.meta.url));
const SCRIPT = "<script>alert(1)</script>";
const IMAGE = '"><img src=x onerror=alert(2)>';
const FORMULA = '=HYPERLINK("x")';
const OVERRIDE = "\u202egnp.exe";
const DATE = "2030-02-03";

let browser: Browser;
let work: string;
let out: string;
beforeAll(async () => {
  browser = await launchChromium();
  work = mkdtempSync(join(tmpdir(), "daybook-odd-"));
  const show = join(work, "show");
  out = join(work, "report");
  cpSync(join(ROOT, "test/golden/tiny/in"), show, { recursive: true });
  const quoted = (text: string): string => `"${text.replaceAll('"', '""')}"`;
  writeFileSync(
    join(show, "days", DATE, "notes.csv"),
    "slate,take,camera,scene,roll,clip,tc_in,tc_out,lens,stop,focus,circled,status,plate,remarks\n" +
      `1,1,A,1,A001,A001C001,10:00:00:00,10:00:04:00,P50,2.8,3 m,,good,,${quoted(SCRIPT)}\n` +
      `1,2,A,1,A001,A001C002,10:05:00:00,10:05:04:00,P50,2.8,3-1.5 m,y,good,hero,${quoted(FORMULA)}\n` +
      `${quoted(IMAGE)},1,A,${quoted(SCRIPT)},${quoted(OVERRIDE)},../../etc/passwd,10:20:00:00,10:20:02:00,P35,4,2 m,,good,,${quoted(OVERRIDE)}\n`,
  );
  writeFileSync(join(show, "show.yaml"), `title: 'Ampersand & <b>bold</b> "quoted"'\ncode: ODD\nrate: 24\n`);
  const run = spawnSync(
    process.execPath,
    [join(ROOT, "dist/cli/main.js"), "build", show, "--out", out, "--quiet", "--map-width", "96"],
    { encoding: "utf8" },
  );
  expect([0, 1], run.stderr).toContain(run.status);
});
afterAll(async () => {
  await browser?.close();
  rmSync(work, { recursive: true, force: true });
});

describe("text that would be something else", () => {
  it("runs nothing on any page, and asks for nothing", async () => {
    const page = await browser.newPage();
    const wrong: string[] = [];
    page.on("dialog", (dialog) => {
      wrong.push(dialog.message());
      void dialog.dismiss();
    });
    page.on("pageerror", (error) => wrong.push(error.message));
    page.on("request", (request) => {
      if (/\/x$/.test(request.url())) wrong.push(request.url());
    });
    for (const { path } of pagesOf(out)) {
      await page.goto(pathToFileURL(join(out, path)).href);
      expect(await page.locator("img[onerror]").count(), path).toBe(0);
      expect(
        await page.locator("script").evaluateAll((all) => all.filter((s) => s.textContent?.includes("alert(")).length),
        path,
      ).toBe(0);
    }
    expect(wrong).toEqual([]);
    await page.close();
  });

  it("stands on the pages as it was written", async () => {
    const page = await browser.newPage();
    await page.goto(pathToFileURL(join(out, "days", DATE, "index.html")).href);
    const text = (await page.locator("main").textContent()) ?? "";
    expect(text).toContain(SCRIPT);
    expect(text).toContain(FORMULA);
    await page.goto(pathToFileURL(join(out, "days", DATE, "takes/a-1-1.html")).href);
    expect(await page.locator("main").textContent()).toContain(SCRIPT);
    await page.close();
  });

  it("stays inside the output folder, whatever a clip or a slate is called", () => {
    expect(readdirSync(work).sort()).toEqual(["report", "show"]);
    expect(
      readdirSync(join(out, "days", DATE, "takes"))
        .filter((name) => name.endsWith(".html"))
        .sort(),
    ).toEqual(["a-1-1.html", "a-1-2.html", "a-img-src-x-onerror-alert-2-1.html"]);
  });

  it("is no formula in the tables, and no markup in the timeline or the edit list", () => {
    const pack = join(out, "packs", DATE);
    expect(readFileSync(join(pack, "takes.csv"), "utf8")).toContain(`"'=HYPERLINK(""x"")"`);
    for (const name of readdirSync(join(pack, "editorial"))) {
      const text = readFileSync(join(pack, "editorial", name), "utf8");
      if (name.endsWith(".otio")) expect(() => JSON.parse(text), name).not.toThrow();
      if (name.endsWith(".csv")) expect(text, name).not.toMatch(/(^|,)"?=HYPERLINK/m);
    }
    for (const name of readdirSync(join(pack, "ascmhl"))) {
      if (spawnSync("xmllint", ["--version"]).error !== undefined) continue;
      expect(spawnSync("xmllint", ["--noout", join(pack, "ascmhl", name)]).status, name).toBe(0);
    }
  });
});
