/**
 * The pages beside pictures of how they looked when they were reviewed. `npm run pictures` makes the pictures anew; look at what
 * changed before you keep them. A page that differs is written beside its picture as NAME-changed.png, except in CI.
 */
import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import type { Browser } from "playwright-core";
import { PNG } from "pngjs";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { launchChromium } from "../helpers/chromium.ts";
import { demoUrl, fullestOfEachKind } from "../helpers/demo-pages.ts";
import { differenceOf, PICTURES, pictureOf, type View, written } from "../helpers/pictures.ts";

const PAGES = [...fullestOfEachKind()];
const view = (kind: string, path: string, dark: boolean, widthPx: number): View => ({
  name: `${kind}${dark ? "-dark" : ""}${widthPx < 600 ? "-narrow" : ""}`,
  url: demoUrl(path),
  dark,
  widthPx,
});
/** Every kind in light; the two that people look at longest also in the dark and on a telephone. */
const VIEWS: readonly View[] = PAGES.flatMap(([kind, path]) => [
  view(kind, path, false, 1000),
  ...(kind === "take" || kind === "day" ? [view(kind, path, true, 1000), view(kind, path, false, 360)] : []),
]);

const MAKE = process.env.PICTURES === "make";
const fileOf = (name: string): string => join(PICTURES, `${name}.png`);

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
  if (MAKE) {
    rmSync(PICTURES, { recursive: true, force: true });
    mkdirSync(PICTURES, { recursive: true });
  }
});
afterAll(async () => {
  await browser?.close();
});

describe("a page beside its picture", () => {
  it.each(VIEWS.map((one) => [one.name, one] as const))("looks as it was reviewed: %s", async (name, one) => {
    const got = await pictureOf(browser, one);
    if (MAKE) writeFileSync(fileOf(name), written(got));
    expect(
      existsSync(fileOf(name)),
      `test/golden/pictures/${name}.png is missing: npm run pictures makes it; look at it, then keep it`,
    ).toBe(true);
    const difference = differenceOf(PNG.sync.read(readFileSync(fileOf(name))), got);
    if (difference !== null && process.env.CI !== "true") writeFileSync(join(PICTURES, `${name}-changed.png`), written(got));
    expect(difference, `${name} ${difference}; see test/golden/pictures/${name}.png`).toBeNull();
  });
});

describe("the comparison of pictures", () => {
  const take = VIEWS.find(({ name }) => name === "take") as View;
  let before: Promise<PNG> | null = null;
  const changed = async (css: string): Promise<string | null> => {
    before ??= pictureOf(browser, take);
    return differenceOf(await before, await pictureOf(browser, take, css));
  };

  it("sees nothing between two pictures of one page", async () => {
    expect(await changed("")).toBeNull();
  });

  it.each([
    ["a line that moved by six pixels", ".sec > header { padding-top: 14px !important }"],
    ["another colour of the focus line", "svg .k-focus { stroke: #a0522d !important }"],
    [
      "a word that is gone",
      ".take-facts dt:first-child { visibility: hidden !important } .strip > div:first-child dt { visibility: hidden !important }",
    ],
    ["a heading in other letters", "h2 { font-family: var(--sans) !important }"],
    ["paper a little darker", ":root, body { background: #e6dfd0 !important }"],
  ])("sees %s", async (_, css) => {
    expect(await changed(css)).not.toBeNull();
  });
});
