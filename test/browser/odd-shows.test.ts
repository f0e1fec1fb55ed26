/** Shows at the edges: nothing shot yet, one frame, 400 takes in a day, texts that are very long or run from right to left. */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import type { Browser, Page } from "playwright-core";
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

async function wrongOn(
  paths: readonly string[],
  out: string,
  width: number,
  look: (page: Page) => Promise<readonly string[]>,
): Promise<readonly string[]> {
  const context = await browser.newContext({ viewport: { width, height: 800 }, bypassCSP: true });
  const page = await context.newPage();
  const wrong: string[] = [];
  page.on("pageerror", (error) => wrong.push(`${page.url()}: ${error.message}`));
  for (const path of paths) {
    await page.goto(pathToFileURL(join(out, path)).href);
    wrong.push(...(await look(page)).map((line) => `${path}: ${line}`));
  }
  await context.close();
  return wrong;
}

describe.each([
  ["without a take", NONE],
  ["with one frame, 400 takes, long and right-to-left texts", ODD],
])("a show %s", (_, out) => {
  it.each([320, 1280])("fits at %i pixels", async (width) => {
    expect(
      await wrongOn(pagesToSee(out, true), out, width, async (page) => {
        const wide = await sidewaysScroll(page);
        return [...(wide > 0 ? [`scrolls sideways by ${wide} px`] : []), ...(await cutOff(page))];
      }),
    ).toEqual([]);
  });

  it("never hides what has the focus, on a narrow screen", async () => {
    expect(await wrongOn(pagesToSee(out, false), out, 320, hiddenFocus)).toEqual([]);
  });

  it("has no violation that axe finds", async () => {
    expect(await wrongOn(pagesToSee(out, false), out, 320, axeFindings)).toEqual([]);
  }, 180_000);

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
