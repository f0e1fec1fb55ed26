/**
 * What three readers come for, from the first page on and by what they can see alone: how many clicks and keys each errand takes.
 * Only the number of clicks is a limit; the seconds are those of a script and are said for comparison.
 */
import type { Browser, BrowserContext, Page } from "playwright-core";
import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { launchChromium } from "../helpers/chromium.ts";
import { demoUrl } from "../helpers/demo-pages.ts";
import { Reader } from "../helpers/reader.ts";

/** A hero plate of the demo's notes.csv: 33B take 2 of camera A, lens KZ31-87, in 11:18:40:14, out 11:19:09:14. */
const PLATE = { slate: "33B", take: "2", lens: "KZ31-87", timecode: "11:18:50:10" };
const DAY = "2026-10-07";

let browser: Browser;
let context: BrowserContext;
let page: Page;
beforeAll(async () => {
  browser = await launchChromium();
  context = await browser.newContext({ viewport: { width: 1280, height: 900 } });
  await context.grantPermissions(["clipboard-read", "clipboard-write"]);
  page = await context.newPage();
});
afterAll(async () => {
  await browser?.close();
});
beforeEach(async () => {
  await page.goto("about:blank");
  await page.goto(demoUrl("index.html"));
  await page.evaluate(() => navigator.clipboard.writeText("nothing yet"));
});

const copied = (): Promise<string> => page.evaluate(() => navigator.clipboard.readText());

/** What the camera's own log, data/days/2026-10-07/logs/a-33b-2.csv, says at that timecode: 6.128 m. */
const FOCUS_M = 6.128;

async function expectTheFrame(): Promise<void> {
  await expect.poll(copied).toMatch(/^take\t/);
  const [names = [], values = []] = (await copied()).split("\n").map((line) => line.split("\t"));
  const cell = (name: string): string | undefined => values[names.indexOf(name)];
  expect(cell("timecode")).toBe(PLATE.timecode);
  expect(cell("lens")).toBe(PLATE.lens);
  expect(Number(cell("focus_m"))).toBeCloseTo(FOCUS_M, 3);
}

describe("VFX: lens and focus distance of a plate at a timecode, to paste", () => {
  it("by search, with the timecode alone", async () => {
    const reader = new Reader(page);
    await reader.press("Control+k");
    await reader.type(PLATE.timecode);
    await page.locator("#find-list [role=option]").first().waitFor();
    await reader.press("Enter");
    await page.waitForURL(/a-33b-2\.html/);
    await reader.click(page.getByRole("button", { name: "Copy as TSV" }).first());
    await expectTheFrame();
    expect(reader.cost("plate by timecode").clicks).toBeLessThanOrEqual(1);
  });

  it("by search, with slate and take", async () => {
    const reader = new Reader(page);
    await reader.click(page.getByRole("button", { name: /^Find a take/ }));
    await reader.type(`${PLATE.slate} ${PLATE.take}`);
    await page.locator("#find-list [role=option]").first().waitFor();
    await reader.press("Enter");
    await page.waitForURL(/a-33b-2\.html/);
    await reader.click(page.getByLabel("Timecode", { exact: true }));
    await reader.type(PLATE.timecode);
    await reader.press("Enter");
    await reader.click(page.getByRole("button", { name: "Copy as TSV" }).first());
    await expectTheFrame();
    expect(reader.cost("plate by search").clicks).toBeLessThanOrEqual(3);
  });

  it("by browsing: VFX page of the day, plate", async () => {
    const reader = new Reader(page);
    await reader.click(page.locator(`a[href="days/${DAY}/vfx.html"]`).first());
    await reader.click(page.locator('a[href="takes/a-33b-2.html"]').first());
    await reader.click(page.getByLabel("Timecode", { exact: true }));
    await reader.type(PLATE.timecode);
    await reader.press("Enter");
    await reader.click(page.getByRole("button", { name: "Copy as TSV" }).first());
    await expectTheFrame();
    expect(reader.cost("plate by browsing").clicks).toBeLessThanOrEqual(4);
  });
});

/** Circled clips of scene 33 in data/days/2026-10-07/notes.csv, column circled "y". */
const CIRCLED_33 = ["A022C003", "A022C005", "A022C008", "A022C009", "B015C003", "B015C005"];
const SCENE = "33";

describe("editorial: circled takes of a scene, to paste", () => {
  it("from the editorial page, by the chip of the scene", async () => {
    const reader = new Reader(page);
    await reader.click(page.locator(`a[href="days/${DAY}/editorial.html"]`).first());
    const circled = page.locator("section", { has: page.locator("#circled") });
    const all = await circled.locator("tbody tr:visible").count();
    await reader.click(page.getByRole("button", { name: new RegExp(`^Scene ${SCENE}\\b`) }));
    await reader.click(circled.getByRole("button", { name: "Copy rows as TSV" }));
    await expect.poll(copied).toContain("\t");
    const [names = [], ...rows] = (await copied())
      .trim()
      .split("\n")
      .map((line) => line.split("\t"));
    const cells = (name: string): (string | undefined)[] => rows.map((row) => row[names.indexOf(name)]);
    expect(cells("Clip").sort()).toEqual(CIRCLED_33);
    expect(new Set(cells("Scene"))).toEqual(new Set([SCENE]));
    expect(new Set(cells("Circled"))).toEqual(new Set(["yes"]));
    // the day has circled takes of other scenes: the chip did something
    expect(all).toBeGreaterThan(CIRCLED_33.length);
    await page.waitForURL(/[?]scene=33$/);
    expect(reader.cost("circled takes of a scene").clicks).toBeLessThanOrEqual(3);
  });
});

describe("production: the day on one sheet", () => {
  it("from the first page, printed", async () => {
    const reader = new Reader(page);
    await reader.click(page.locator(`a[href="days/${DAY}/production.html"]`).first());
    await reader.press("Control+p");
    const pdf = (await page.pdf({ preferCSSPageSize: true })).toString("latin1");
    expect(pdf.match(/\/Type\s*\/Page\b(?!s)/g)?.length).toBe(1);
    expect(reader.cost("production page").clicks).toBeLessThanOrEqual(1);
  });
});
