/** How fast the lens look panel paints. */
import { availableParallelism, loadavg } from "node:os";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { launchChromium } from "../helpers/chromium.ts";
import { demoUrl } from "../helpers/demo-pages.ts";

/** A take with a still and a table. */
const TAKE = "days/2026-10-06/takes/a-14b-2.html";

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(async () => {
  await browser?.close();
});

describe("the lens look panel", () => {
  it("paints 20 frames a second or better, 960 pixels wide, both parts off", async () => {
    const page = await browser.newPage({ viewport: { width: 1280, height: 900 } });
    await page.goto(demoUrl(TAKE));
    await page.locator("#look-canvas").scrollIntoViewIfNeeded();
    await expect.poll(() => page.locator("#look-words").textContent()).toMatch(/^As recorded/);
    await page.locator("label[for=distortion-off]").click();
    await page.locator("label[for=shading-off]").click();
    const run = () =>
      page.evaluate(async () => {
        const slider = document.querySelector<HTMLInputElement>("#look-frame");
        const canvas = document.querySelector<HTMLCanvasElement>("#look-canvas");
        const painted: number[] = [];
        const start = performance.now();
        for (let i = 0; i < 90; i++) {
          if (slider !== null) slider.value = String(Math.round((i * Number(slider.max)) / 90));
          slider?.dispatchEvent(new Event("input", { bubbles: true }));
          await new Promise((done) => requestAnimationFrame(done));
          painted.push(Number(canvas?.dataset.ms));
        }
        painted.sort((a, b) => a - b);
        return { fps: (1000 * 90) / (performance.now() - start), median: painted[45] ?? 0, width: canvas?.width ?? 0 };
      });
    // other work on the machine is no fault of the page: the best of three runs counts
    const runs = [await run(), await run(), await run()];
    const best = runs.reduce((a, b) => (b.fps > a.fps ? b : a));
    console.log(`lens look: ${best.fps.toFixed(0)} frames a second, ${best.median} ms to paint ${best.width} pixels across`);
    expect(best.width).toBe(960);
    expect(best.median).toBeLessThan(50);
    // a machine with more than twice the work it has cores for says nothing of the page's frames a second
    if ((loadavg()[0] ?? 0) < 2 * availableParallelism()) expect(best.fps).toBeGreaterThanOrEqual(20);
  });
});
