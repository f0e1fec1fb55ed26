/** Shows at the edges: nothing shot yet, one frame, 400 takes in a day, texts that are very long or run from right to left. */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { axeFindings } from "../helpers/axe.ts";
import { pagesOf } from "../helpers/built-site.ts";
import { launchChromium } from "../helpers/chromium.ts";
import { LONG_LENS, LONG_REMARK, LONG_SLATE, NO_TAKES, ODD_DAYS, RIGHT_TO_LEFT, writeShow } from "../helpers/odd-shows.ts";
import { cutOff, hiddenFocus, sidewaysScroll } from "../helpers/page-fit.ts";
import { buildReport } from "../helpers/run-command.ts";

let browser: Browser;
const work = mkdtempSync(join(tmpdir(), "daybook-odd-shows-"));
const NONE = join(work, "none");
const ODD = join(work, "odd");
beforeAll(async () => {
  writeShow(NO_TAKES, join(work, "show-none"));
  writeShow(ODD_DAYS, join(work, "show-odd"));
  [browser] = await Promise.all([
    launchChromium(),
    buildReport(join(work, "show-none"), NONE),
    buildReport(join(work, "show-odd"), ODD),
  ]);
}, 180_000);
afterAll(async () => {
  await browser?.close();
  rmSync(work, { recursive: true, force: true });
});

/** The day of 400 takes: its pages are looked at for their width alone, they hold nothing that the other days do not. */
const MANY = "days/2030-02-04/";
/** Lists of all those takes, and the page that is the same for every show. */
const WIDTH_ALONE = ["takes.html", "clips.html", "methods.html"];

function pagesToSee(out: string, many: boolean): readonly string[] {
  return pagesOf(out)
    .map(({ path }) => path)
    .filter((path) => (many ? !/2030-02-04\/takes/.test(path) : !path.startsWith(MANY) && !WIDTH_ALONE.includes(path)));
}

interface Wrong {
  readonly fits: string[];
  readonly focus: string[];
  readonly axe: string[];
}
const walks = new Map<string, Promise<Wrong>>();

/** What is wrong on the pages of a report at one width; each page is opened once, and only the narrow ones are looked at in full. */
function wrongOn(out: string, width: number): Promise<Wrong> {
  const key = `${out} ${width}`;
  const walk = walks.get(key) ?? walked(out, width);
  walks.set(key, walk);
  return walk;
}

async function walked(out: string, width: number): Promise<Wrong> {
  const context = await browser.newContext({ viewport: { width, height: 800 }, bypassCSP: true });
  const page = await context.newPage();
  const wrong: Wrong = { fits: [], focus: [], axe: [] };
  page.on("pageerror", (error) => wrong.fits.push(`${page.url()}: ${error.message}`));
  const inFull = new Set(width === NARROW ? pagesToSee(out, false) : []);
  for (const path of pagesToSee(out, true)) {
    const add = (to: string[], lines: readonly string[]) => to.push(...lines.map((line) => `${path}: ${line}`));
    await page.goto(pathToFileURL(join(out, path)).href);
    const wide = await sidewaysScroll(page);
    add(wrong.fits, [...(wide > 0 ? [`scrolls sideways by ${wide} px`] : []), ...(await cutOff(page))]);
    if (!inFull.has(path)) continue;
    add(wrong.axe, await axeFindings(page));
    add(wrong.focus, await hiddenFocus(page));
  }
  await context.close();
  return wrong;
}

const NARROW = 320;

describe.each([
  ["without a take", NONE],
  ["with one frame, 400 takes, long and right-to-left texts", ODD],
])("a show %s", { timeout: 300_000 }, (_, out) => {
  it("has pages to look at", () => {
    expect(pagesToSee(out, false).length).toBeGreaterThan(10);
  });

  it.each([NARROW, 1280])("fits at %i pixels", async (width) => {
    expect((await wrongOn(out, width)).fits).toEqual([]);
  });

  it("never hides what has the focus, on a narrow screen", async () => {
    expect((await wrongOn(out, NARROW)).focus).toEqual([]);
  });

  it("has no violation that axe finds", async () => {
    expect((await wrongOn(out, NARROW)).axe).toEqual([]);
  });

  it("gives every page a title of its own", () => {
    const titles = pagesOf(out).map(({ html }) => /<title>([^<]*)<\/title>/.exec(html)?.[1] ?? "");
    expect(titles.filter((title, i) => title === "" || titles.indexOf(title) !== i)).toEqual([]);
  });
});

describe("odd shows in words", () => {
  const text = async (path: string, out = ODD): Promise<string> => {
    const page = await browser.newPage();
    await page.goto(pathToFileURL(join(out, path)).href);
    const said = ((await page.locator("main").textContent()) ?? "").replace(/\s+/g, " ");
    await page.close();
    return said;
  };

  it("keep every letter of a long remark, a long slate and a long lens", async () => {
    const takes = pagesToSee(ODD, false).filter((path) => path.startsWith("days/2030-02-05/takes/"));
    expect(takes).toHaveLength(3);
    const all = (await Promise.all(takes.map((path) => text(path)))).join(" ");
    for (const said of [LONG_REMARK, LONG_SLATE, LONG_LENS, RIGHT_TO_LEFT]) expect(all).toContain(said);
  });

  it.each([
    ["index.html", "#takes-table .c-rem"],
    ["editorial.html", "#circled-table td"],
  ])("show the beginning of a remark of 5,000 characters on %s, and the whole in place, without a script", async (name, cell) => {
    const context = await browser.newContext({ javaScriptEnabled: false });
    const page = await context.newPage();
    await page.goto(pathToFileURL(join(ODD, "days/2030-02-05", name)).href);
    const long = page.locator(`${cell} details`);
    expect(await long.count()).toBe(1);
    const seen = ((await long.locator("summary").textContent()) ?? "").trim();
    // 240 characters at most, and no half of a word
    expect(seen.length).toBeGreaterThan(200);
    expect(seen.length).toBeLessThanOrEqual(240);
    expect(LONG_REMARK).toContain(`${seen.replace(/^Good\. /, "")} `);
    const low = (await long.boundingBox())?.height ?? 0;
    await long.locator("summary").click();
    expect(await long.evaluate((details) => (details as HTMLDetailsElement).open)).toBe(true);
    expect((await long.boundingBox())?.height ?? 0).toBeGreaterThan(4 * low);
    expect((await long.textContent()) ?? "").toContain(LONG_REMARK);
    await context.close();
  });

  it("say on paper where a folded remark goes on, and print one that was opened", async () => {
    const page = await browser.newPage();
    await page.goto(pathToFileURL(join(ODD, "days/2030-02-05/editorial.html")).href);
    await page.emulateMedia({ media: "print" });
    const summary = page.locator("#circled-table details > summary");
    const said = () => summary.evaluate((line) => getComputedStyle(line, "::after").content);
    expect(await said()).toContain("goes on on the sheet of the take");
    await summary.evaluate((line) => line.parentElement?.setAttribute("open", ""));
    expect(await said()).toBe("none");
    await page.close();
  });

  it("copy, filter and search a folded remark by its last words", async () => {
    const context = await browser.newContext({ permissions: ["clipboard-read", "clipboard-write"] });
    const page = await context.newPage();
    await page.goto(pathToFileURL(join(ODD, "days/2030-02-05/editorial.html")).href);
    const last = LONG_REMARK.slice(-30);
    await page.locator("#filter-words").fill(`boat ${last}`);
    await expect.poll(() => page.locator(".filters .shown").textContent()).toMatch(/^1 of 3 clips shown/);
    await page.locator('.take-away[data-table="circled-table"]').getByText("Copy rows as TSV").click();
    await expect.poll(() => page.evaluate(() => navigator.clipboard.readText())).toContain(LONG_REMARK);
    await page.goto(`${pathToFileURL(join(ODD, "clips.html")).href}`);
    await page.locator('.take-away[data-table="clips-table"]').getByText("Copy rows as TSV").click();
    await expect.poll(() => page.evaluate(() => navigator.clipboard.readText())).toContain(LONG_REMARK);
    await context.close();
  });

  it("find a take by right-to-left words", async () => {
    const page = await browser.newPage();
    await page.goto(pathToFileURL(join(ODD, "index.html")).href);
    await page.keyboard.press("Control+k");
    await page.keyboard.type("המזח");
    await expect.poll(() => page.locator("#find-list [role=option]").count()).toBe(2);
    await page.close();
  });

  it("say that nothing is shot yet", async () => {
    expect(await text("index.html", NONE)).toMatch(/\bno take|\b0 takes|nothing/i);
    const page = await browser.newPage();
    await page.goto(pathToFileURL(join(NONE, "index.html")).href);
    await page.keyboard.press("Control+k");
    await expect.poll(() => page.locator("#find-help").textContent()).toContain("There is no take in this report yet.");
    await page.close();
  });
});
