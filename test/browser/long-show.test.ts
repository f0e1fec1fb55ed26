/** A show of sixty days and five cameras: what has to stay on one sheet stays there. */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { copyAssets, renderPages } from "../../src/site/render.ts";
import { progress } from "../../src/summary/progress.ts";
import { productionPage } from "../../src/view/readers/production-page.ts";
import { showProductionPage } from "../../src/view/show/show-production-page.ts";
import { exampleDaySummary } from "../fixtures/day-summary.ts";
import { digestOf, scheduled, takeOf } from "../fixtures/show-digests.ts";
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
    record: { scheduled: [scheduled(scene, 19)], completed, call: 420, firstShot: 500, wrap: 1480 },
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

describe("production of a full day", () => {
  const [lastDay] = digests.slice(-1);
  if (lastDay === undefined) throw new Error("the show has days");
  const [finding] = lastDay.findings.length > 0 ? lastDay.findings : summary.findings;
  const [use] = lastDay.lensUse;
  if (finding === undefined || use === undefined) throw new Error("the example day has findings and lenses");
  const lenses = Array.from({ length: 12 }, (_, i) => `L${i + 1}`);
  const scenes = Array.from({ length: 8 }, (_, i) => String(i + 1));
  const fullDay = {
    ...lastDay,
    record: { ...lastDay.record, scheduled: scenes.map((scene) => scheduled(scene, 7)), remarks: "Rain from noon on. ".repeat(15) },
    findings: Array.from({ length: 12 }, () => ({
      ...finding,
      severity: "check" as const,
      message: "word ".repeat(25),
      hint: "word ".repeat(25),
    })),
    lensUse: lenses.map((lens) => ({ ...use, lens })),
    takes: lenses.flatMap((lens, i) => [takeOf(`${i + 1} 1 ${"ABCDE"[i % 5]}`, { lens, roll: `${"ABCDE"[i % 5]}00${i}` })]),
  };

  it.each(["A4", "Letter"] as const)("prints on one sheet of %s: 8 scenes, 12 lenses, 5 cameras, 12 questions", async (paper) => {
    const folder = join(out, `day-${paper}`);
    const context = exampleContext(summary, { show: { ...summary.show, paper } });
    const model = productionPage(fullDay, progress([...digests.slice(0, -1), fullDay]), summary.kit, context);
    await renderPages({ production: [model] }, folder);
    await copyAssets(folder);
    const page = await browser.newPage();
    await page.goto(pathToFileURL(join(folder, model.path)).href);
    const pdf = await page.pdf({ preferCSSPageSize: true });
    expect(pdf.toString("latin1").match(/\/Type\s*\/Page\b(?!s)/g)?.length).toBe(1);
    await page.close();
  });
});
