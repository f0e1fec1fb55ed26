/** The report in a folder with a name that addresses do not like: everything works as before. */
import { cpSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { launchChromium } from "../helpers/chromium.ts";
import { DEMO_OUT, demoUrl, pagesToLookAt } from "../helpers/demo-pages.ts";

const TAKE = "days/2026-10-06/takes/a-14b-2.html";

let browser: Browser;
let page: Page;
let moved: string;
const said: string[] = [];
beforeAll(async () => {
  browser = await launchChromium();
  moved = join(mkdtempSync(join(tmpdir(), "daybook moved ")), "Tag 1 ü Größe #50% & 'x'");
  cpSync(DEMO_OUT, moved, { recursive: true });
  page = await browser.newPage();
  page.on("console", (message) => said.push(`${page.url()}: ${message.text()}`));
  page.on("pageerror", (error) => said.push(`${page.url()}: ${error.message}`));
  page.on("requestfailed", (request) => {
    // a page that is left before it is loaded gives up on its scripts
    const why = request.failure()?.errorText;
    if (why !== "net::ERR_ABORTED") said.push(`${request.url()}: ${why}`);
  });
});
afterAll(async () => {
  await browser?.close();
  rmSync(join(moved, ".."), { recursive: true, force: true });
});

const open = (path: string): Promise<unknown> => page.goto(demoUrl(path, moved));

describe("a report in a folder with spaces, umlauts, # and %", () => {
  it("opens a page of every kind with its styles, and says nothing on the console", async () => {
    for (const path of pagesToLookAt()) {
      await open(path);
      expect(await page.evaluate(() => [...document.styleSheets].every((sheet) => sheet.href?.startsWith("file:"))), path).toBe(
        true,
      );
      expect(await page.locator("body").evaluate((body) => getComputedStyle(body).marginTop), path).toBe("0px");
    }
    expect(said).toEqual([]);
  });

  it("is walked by its links", async () => {
    await open("index.html");
    await page.locator('a[href*="days/"]').first().click();
    await page.locator('a[href*="takes/"]').first().click();
    expect(fileURLToPath(page.url().replace(/[?#].*$/, ""))).toContain(join(moved, "days"));
    expect(said).toEqual([]);
  });

  it("finds a take and opens it", async () => {
    await open("index.html");
    await page.keyboard.press("Control+k");
    await page.keyboard.type("14b 2");
    await page.locator("#find-list [role=option]").first().waitFor();
    await page.keyboard.press("Enter");
    await page.waitForURL(/a-14b-2\.html$/);
    expect(await page.locator("h1").textContent()).toContain("14B");
  });

  it("moves the scrubber, draws the lens look, and hands over files", async () => {
    await open(TAKE);
    const before = await page.locator(".at-tc").textContent();
    await page.locator("#scrub").focus();
    await page.keyboard.press("ArrowRight");
    expect(await page.locator(".at-tc").textContent()).not.toBe(before);

    await page.locator("#look-canvas").scrollIntoViewIfNeeded();
    await expect.poll(() => page.locator("#look-words").textContent()).toMatch(/^As recorded/);
    await page.locator("label[for=distortion-off]").click();
    const [saved] = await Promise.all([page.waitForEvent("download"), page.locator("#look-save").click()]);
    expect(
      readFileSync(await saved.path())
        .subarray(1, 4)
        .toString("latin1"),
    ).toBe("PNG");

    const hrefs = await page
      .locator('main a[href*="packs/"]')
      .evaluateAll((links) => links.map((link) => (link as HTMLAnchorElement).href));
    expect(hrefs.length).toBeGreaterThan(0);
    for (const href of hrefs) expect(readFileSync(fileURLToPath(href)).length, href).toBeGreaterThan(0);
    expect(said).toEqual([]);
  });
});
