/** The built report as a reader opens it: from the disk, with and without scripts, light, dark, narrow, on paper. */
import { cpSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import { pagesOf } from "../helpers/built-site.ts";
import { launchChromium } from "../helpers/chromium.ts";

const out = inject("demoOut");
const url = (path: string): string => pathToFileURL(join(out, path)).href;
const takes = pagesOf(out)
  .filter((page) => page.path.includes("/takes/"))
  .map((page) => page.path);
const noLog = pagesOf(out).find((page) => page.path.includes("/takes/") && page.html.includes("noted, no log"))?.path;
const ONE_OF_EACH = [
  "index.html",
  "kit.html",
  "methods.html",
  "findings.html",
  "takes.html",
  "scenes.html",
  "plates.html",
  "clips.html",
  "production.html",
  "about.html",
  pagesOf(out).find((page) => page.path.startsWith("lenses/"))?.path ?? "",
  "days/2026-10-06/index.html",
  "days/2026-10-06/editorial.html",
  "days/2026-10-06/vfx.html",
  "days/2026-10-06/production.html",
  "days/2026-10-06/findings.html",
  takes[0] ?? "",
  ...(noLog === undefined ? [] : [noLog]),
];

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(async () => {
  await browser?.close();
});

/** Opens pages and keeps what the console says and what is asked for. */
async function watched(page: Page): Promise<{ readonly said: string[]; readonly asked: string[] }> {
  const said: string[] = [];
  const asked: string[] = [];
  page.on("console", (message) => said.push(`${page.url()}: ${message.text()}`));
  page.on("pageerror", (error) => said.push(`${page.url()}: ${error.message}`));
  page.on("request", (request) => {
    if (!request.url().startsWith("file:") && !request.url().startsWith("data:")) asked.push(request.url());
  });
  return { said, asked };
}

describe("a reader walking from file://", () => {
  it("meets no console message and no request but to files, on any kind of page", async () => {
    const page = await browser.newPage();
    const { said, asked } = await watched(page);
    for (const path of ONE_OF_EACH) await page.goto(url(path));
    expect(said).toEqual([]);
    expect(asked).toEqual([]);
    await page.close();
  });

  it("comes from the home page to a take and its neighbour by links alone, without scripts", async () => {
    const context = await browser.newContext({ javaScriptEnabled: false });
    const page = await context.newPage();
    await page.goto(url("index.html"));
    await page.locator('a[href*="days/2026-10-06/index.html"]').first().click();
    await page.locator('a[href*="takes/"]').first().click();
    expect(page.url()).toContain("/takes/");
    expect(await page.locator("main svg[role=img]").first().isVisible()).toBe(true);
    expect(await page.locator("h1").innerText()).not.toBe("");
    await context.close();
  });

  it("can move the folder to a path with spaces, umlauts, # and %", async () => {
    const moved = join(mkdtempSync(join(tmpdir(), "daybook moved ")), "Tag 1 ü#50%");
    cpSync(out, moved, { recursive: true });
    const page = await browser.newPage();
    const { said } = await watched(page);
    await page.goto(pathToFileURL(join(moved, "index.html")).href);
    await page.locator('a[href*="days/"]').first().click();
    await page.locator('a[href*="takes/"]').first().click();
    expect(page.url()).toContain("/takes/");
    expect(said).toEqual([]);
    await page.close();
    rmSync(moved, { recursive: true });
  });
});

describe("one page of each kind", () => {
  const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
  for (const scheme of ["light", "dark"] as const) {
    it(`has no accessibility violation that axe finds, in ${scheme}`, async () => {
      // the scripts of axe are put in by the driver, past the page's own content policy
      const context = await browser.newContext({ colorScheme: scheme, bypassCSP: true });
      const page = await context.newPage();
      const wrong: string[] = [];
      for (const path of ONE_OF_EACH) {
        await page.goto(url(path));
        await page.evaluate(axe);
        const found = await page.evaluate(async () => {
          const run = (
            globalThis as unknown as {
              axe: {
                run(o: unknown): Promise<{ violations: { id: string; nodes: { target: unknown[]; failureSummary?: string }[] }[] }>;
              };
            }
          ).axe;
          const result = await run.run({ runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"] });
          return result.violations.map(
            (v) =>
              `${v.id}: ${v.nodes
                .slice(0, 2)
                .map((n) => `${n.target.join(" ")} ${n.failureSummary ?? ""}`)
                .join(" | ")}`,
          );
        });
        wrong.push(...found.map((text) => `${path}: ${text}`));
      }
      expect(wrong).toEqual([]);
      await context.close();
    });
  }

  it("never scrolls sideways at 320 pixels", async () => {
    const page = await browser.newPage({ viewport: { width: 320, height: 800 } });
    for (const path of ONE_OF_EACH) {
      await page.goto(url(path));
      const wide = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
      expect(wide, path).toBeLessThanOrEqual(0);
    }
    await page.close();
  });

  it("shows its main text without scripts as with them", async () => {
    const plain = await (await browser.newContext({ javaScriptEnabled: false })).newPage();
    const full = await browser.newPage();
    for (const path of ONE_OF_EACH) {
      await plain.goto(url(path));
      await full.goto(url(path));
      const withoutScript = await plain.locator("main").innerText();
      const withScript = await full.locator("main").innerText();
      expect(
        withScript.includes(withoutScript.slice(0, 200).trim()) || withoutScript.length >= withScript.length * 0.95,
        path,
      ).toBe(true);
    }
    await plain.context().close();
    await full.close();
  });

  it("prints in the light palette although the screen is dark", async () => {
    const context = await browser.newContext({ colorScheme: "dark" });
    const page = await context.newPage();
    await page.goto(url("days/2026-10-06/index.html"));
    await page.emulateMedia({ media: "print", colorScheme: "dark" });
    expect(await page.evaluate(() => getComputedStyle(document.body).backgroundColor)).toBe("rgb(255, 255, 255)");
    await context.close();
  });

  it("prints the production page on one sheet", async () => {
    const page = await browser.newPage();
    for (const date of ["2026-10-06", "2026-10-07", "2026-10-08"]) {
      await page.goto(url(`days/${date}/production.html`));
      const pdf = await page.pdf({ preferCSSPageSize: true });
      expect(pdf.toString("latin1").match(/\/Type\s*\/Page\b(?!s)/g)?.length, date).toBe(1);
    }
    await page.goto(url("production.html"));
    const pdf = await page.pdf({ preferCSSPageSize: true });
    expect(pdf.toString("latin1").match(/\/Type\s*\/Page\b(?!s)/g)?.length, "to date").toBe(1);
    await page.close();
  });
});
