/** The built report as a reader opens it from the disk: nothing asked of the network, and everything there without scripts. */
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { launchChromium } from "../helpers/chromium.ts";
import { demoUrl, pagesToLookAt } from "../helpers/demo-pages.ts";

const PAGES = pagesToLookAt();

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
    const { said, asked } = await walked();
    expect(said).toEqual([]);
    expect(asked).toEqual([]);
  });

  it("comes from the home page to a take and its neighbour by links alone, without scripts", async () => {
    const context = await browser.newContext({ javaScriptEnabled: false });
    const page = await context.newPage();
    await page.goto(demoUrl("index.html"));
    await page.locator('a[href*="days/2026-10-06/index.html"]').first().click();
    await page.locator('a[href*="takes/"]').first().click();
    expect(page.url()).toContain("/takes/");
    expect(await page.locator("main svg[role=img]").first().isVisible()).toBe(true);
    expect(await page.locator("h1").textContent()).not.toBe("");
    await context.close();
  });
});

/** Texts and links that a reader sees on the page, controls aside. */
function seenOn(page: Page): Promise<{ readonly texts: readonly string[]; readonly links: readonly string[] }> {
  return page.evaluate(() => {
    // the frame that the scrubber stands on, with further figures of it, and the panel that takes the look off: of any frame they
    // stand in the take's lens.csv
    const controls =
      ".at-frame, .further, .live, .filters summary, button, label, fieldset, legend, dialog, output, [role=status], script, style, .vh";
    const texts: string[] = [];
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
      const parent = node.parentElement;
      const text = (node.textContent ?? "").trim().replace(/\s+/g, " ");
      if (text !== "" && parent !== null && parent.closest(controls) === null && parent.checkVisibility()) texts.push(text);
    }
    const links = [...document.querySelectorAll<HTMLAnchorElement>("a[href]")]
      .filter((link) => link.closest("dialog") === null && link.checkVisibility())
      .map((link) => link.getAttribute("href") ?? "");
    return { texts, links };
  });
}

interface Walked {
  readonly said: readonly string[];
  readonly asked: readonly string[];
  /** Texts and links that are only there with scripts, and pages that say next to nothing without. */
  readonly missing: readonly string[];
}

let walk: Promise<Walked> | undefined;
/** Every page is opened once with scripts and once without. */
function walked(): Promise<Walked> {
  walk ??= (async () => {
    const plain = await (await browser.newContext({ javaScriptEnabled: false })).newPage();
    const full = await browser.newPage();
    const { said, asked } = await watched(full);
    const missing: string[] = [];
    for (const path of PAGES) {
      await plain.goto(demoUrl(path));
      await full.goto(demoUrl(path));
      const [without, withScripts] = await Promise.all([seenOn(plain), seenOn(full)]);
      const texts = new Set(without.texts);
      const links = new Set(without.links);
      missing.push(...withScripts.texts.filter((text) => !texts.has(text)).map((text) => `${path}: the text "${text}"`));
      missing.push(...withScripts.links.filter((href) => !links.has(href)).map((href) => `${path}: the link ${href}`));
      if (without.texts.length <= 10) missing.push(`${path}: has ${without.texts.length} texts`);
    }
    await plain.context().close();
    await full.close();
    return { said, asked, missing };
  })();
  return walk;
}

describe("a page of every kind without scripts", () => {
  it("shows every text and every link that it shows with them", async () => {
    expect((await walked()).missing).toEqual([]);
  });
});
