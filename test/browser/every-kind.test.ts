/** A page of every kind, as every reader may see it: light, dark, narrow, in forced colours, with wide spacing, by keyboard. */
import type { Browser, BrowserContextOptions, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { axeFindings } from "../helpers/axe.ts";
import { launchChromium } from "../helpers/chromium.ts";
import { demoUrl, pagesToLookAt } from "../helpers/demo-pages.ts";
import { cutOff, hiddenFocus, sidewaysScroll, spaceText } from "../helpers/page-fit.ts";

const PAGES = pagesToLookAt();

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(async () => {
  await browser?.close();
});

/** Opens every page in one context and gathers what `look` finds wrong, each with its page. */
async function wrongOn(
  options: BrowserContextOptions,
  look: (page: Page) => Promise<readonly string[]>,
): Promise<readonly string[]> {
  // the driver's scripts and styles come past the page's own content policy
  const context = await browser.newContext({ ...options, bypassCSP: true });
  const page = await context.newPage();
  const wrong: string[] = [];
  for (const path of PAGES) {
    await page.goto(demoUrl(path));
    wrong.push(...(await look(page)).map((line) => `${path}: ${line}`));
  }
  await context.close();
  return wrong;
}

const fits = async (page: Page): Promise<readonly string[]> => {
  const wide = await sidewaysScroll(page);
  return [...(wide > 0 ? [`scrolls sideways by ${wide} px`] : []), ...(await cutOff(page))];
};

const NARROW = { viewport: { width: 320, height: 640 } };

describe("a page of every kind", () => {
  it.each([
    ["light", { colorScheme: "light" }],
    ["dark", { colorScheme: "dark" }],
    ["320 pixels", NARROW],
    ["forced colours", { forcedColors: "active" }],
  ] as const)(
    "has no violation that axe finds, and fits: %s",
    async (_, options) => {
      expect(await wrongOn(options, async (page) => [...(await axeFindings(page)), ...(await fits(page))])).toEqual([]);
    },
    180_000,
  );

  it.each([
    ["1,280 pixels", {}],
    ["320 pixels", NARROW],
  ] as const)("fits with the text spacing of SC 1.4.12: %s", async (_, options) => {
    expect(
      await wrongOn(options, async (page) => {
        await spaceText(page);
        return fits(page);
      }),
    ).toEqual([]);
  });

  it.each([
    ["1,280 pixels", {}],
    ["320 pixels", NARROW],
  ] as const)("never hides what has the focus: %s", async (_, options) => {
    expect(await wrongOn(options, hiddenFocus)).toEqual([]);
  });
});
