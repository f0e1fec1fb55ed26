/** A page of every kind, as every reader may see it: light, dark, narrow, in forced colours, with wide spacing, by keyboard. */
import type { Browser, BrowserContextOptions, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { PAGE_KINDS } from "../../src/view/context.ts";
import { axeColourFindings, axeFindings } from "../helpers/axe.ts";
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

const fits = async (page: Page): Promise<readonly string[]> => {
  const wide = await sidewaysScroll(page);
  return [...(wide > 0 ? [`scrolls sideways by ${wide} px`] : []), ...(await cutOff(page))];
};

/** What is looked for on an open page, in this order: the last one changes the page. */
const LOOKS = {
  axe: axeFindings,
  colours: axeColourFindings,
  fits,
  focus: hiddenFocus,
  spaced: async (page: Page) => {
    await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
    await spaceText(page);
    return fits(page);
  },
} as const;
type Look = keyof typeof LOOKS;

/** How a reader may see the pages, and what is looked for so. Dark and forced colours change nothing but colours. */
const WAYS: Readonly<Record<string, { readonly options: BrowserContextOptions; readonly looks: readonly Look[] }>> = {
  light: { options: { colorScheme: "light" }, looks: ["axe", "fits", "focus", "spaced"] },
  "320 pixels": { options: { viewport: { width: 320, height: 640 } }, looks: ["axe", "fits", "focus", "spaced"] },
  dark: { options: { colorScheme: "dark" }, looks: ["colours", "fits"] },
  "forced colours": { options: { forcedColors: "active" }, looks: ["colours", "fits"] },
};

type Wrong = Readonly<Record<Look, string[]>>;
const walks = new Map<string, Promise<Wrong>>();

/** What is wrong on the pages seen in one way, each line with its page. Every page is opened once for all that is looked for. */
function wrongOn(way: string): Promise<Wrong> {
  const walk = walks.get(way) ?? walked(way);
  walks.set(way, walk);
  return walk;
}

async function walked(way: string): Promise<Wrong> {
  const { options, looks } = WAYS[way] ?? { options: {}, looks: [] };
  // the driver's scripts and styles come past the page's own content policy
  const context = await browser.newContext({ ...options, bypassCSP: true });
  const page = await context.newPage();
  const wrong: Wrong = { axe: [], colours: [], fits: [], focus: [], spaced: [] };
  for (const path of PAGES) {
    await page.goto(demoUrl(path));
    for (const look of looks) wrong[look].push(...(await LOOKS[look](page)).map((line) => `${path}: ${line}`));
  }
  await context.close();
  return wrong;
}

const waysFor = (look: Look): readonly string[] => Object.keys(WAYS).filter((way) => WAYS[way]?.looks.includes(look));

describe("a page of every kind", { timeout: 300_000 }, () => {
  it("is there", () => {
    expect(PAGES.length).toBeGreaterThan(PAGE_KINDS.length);
  });

  it.each(waysFor("axe"))("has no violation that axe finds: %s", async (way) => {
    expect((await wrongOn(way)).axe).toEqual([]);
  });

  it.each(waysFor("colours"))("has no violation in its colours that axe finds: %s", async (way) => {
    expect((await wrongOn(way)).colours).toEqual([]);
  });

  it.each(waysFor("fits"))("fits: %s", async (way) => {
    expect((await wrongOn(way)).fits).toEqual([]);
  });

  it.each(waysFor("spaced"))("fits with the text spacing of SC 1.4.12: %s", async (way) => {
    expect((await wrongOn(way)).spaced).toEqual([]);
  });

  it.each(waysFor("focus"))("never hides what has the focus: %s", async (way) => {
    expect((await wrongOn(way)).focus).toEqual([]);
  });
});
