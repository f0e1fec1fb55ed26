/** A show of sixty days and five cameras: what has to stay on one sheet stays there. */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { copyAssets, renderPages } from "../../src/site/render.ts";
import { showProductionPage } from "../../src/view/show/show-production-page.ts";
import { exampleDaySummary } from "../fixtures/day-summary.ts";
import { digestOf, scheduled } from "../fixtures/show-digests.ts";
import { exampleContext } from "../fixtures/site-context.ts";
import { launchChromium } from "../helpers/chromium.ts";

const summary = exampleDaySummary();
const out = mkdtempSync(join(tmpdir(), "daybook-long-"));
let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(async () => {
  await browser?.close();
  rmSync(out, { recursive: true, force: true });
});

/** Sixty days of 25 set-ups and 200 takes on five cameras, 2 3/8 pages scheduled a day and every second completed. */
const digests = Array.from({ length: 60 }, (_, i) => {
  const scene = String(i + 1);
  const completed = i % 2 === 0 ? [scene] : [];
  return digestOf(new Date(Date.UTC(2031, 4, 1 + i)).toISOString().slice(0, 10), i + 1, {
    scenes: { scheduled: [scheduled(scene, 19)], completed, part: [], notShot: [] },
    totals: {
      ...summary.totals,
      slates: 25,
      takes: 200,
      clips: 320,
      circled: 67,
      mediaSeconds: 10_000,
      circledSeconds: 3000,
      shootingRatio: 3.3,
    },
    cameraSeconds: { A: 3000, B: 3000, C: 2000, D: 1000, E: 1000 },
    findingCounts: { error: 12, check: 220, remark: 3 },
    hours: { call: 420, firstShot: 500, wrap: 1480 },
  });
});

describe("production to date of a long show", () => {
  it.each(["A4", "Letter"] as const)("prints on one sheet of %s, nothing cut off", async (paper) => {
    const folder = join(out, paper);
    const context = exampleContext(summary, { show: { ...summary.show, paper } });
    await renderPages({ "show-production": [showProductionPage(digests, context)] }, folder);
    await copyAssets(folder);
    const page = await browser.newPage();
    await page.goto(pathToFileURL(join(folder, "production.html")).href);
    const pdf = await page.pdf({ preferCSSPageSize: true });
    expect(pdf.toString("latin1").match(/\/Type\s*\/Page\b(?!s)/g)?.length).toBe(1);
    // the paper's width in CSS pixels without its margins of 18 and 12 mm: 297 mm and 11 in, 96 pixels an inch
    const width = Math.floor(((paper === "A4" ? 297 : 279.4) - 30) * (96 / 25.4));
    await page.setViewportSize({ width, height: 700 });
    await page.emulateMedia({ media: "print" });
    const cut = await page.locator("#days-table").evaluate((table) => table.scrollWidth - document.documentElement.clientWidth);
    expect(cut).toBeLessThanOrEqual(0);
    await page.close();
  });
});
