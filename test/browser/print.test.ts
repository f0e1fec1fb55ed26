/** Pages on paper: printed by the browser to PDF, light whatever the screen is, heads on every sheet, figures in one piece. */
import { spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser, Page } from "playwright-core";
import { PNG } from "pngjs";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import { launchChromium } from "../helpers/chromium.ts";
import { demoUrl, fullestOfEachKind, pagesToLookAt } from "../helpers/demo-pages.ts";

const poppler = spawnSync("pdftoppm", ["-v"]).error === undefined;
const withPoppler = it.skipIf(!poppler && process.env.CI !== "true");

let browser: Browser;
const work = mkdtempSync(join(tmpdir(), "daybook-print-"));
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(async () => {
  await browser?.close();
  rmSync(work, { recursive: true, force: true });
});

const print = (page: Page): Promise<Buffer> => page.pdf({ preferCSSPageSize: true, printBackground: true });
const sheetsOf = (pdf: Buffer): number => pdf.toString("latin1").match(/\/Type\s*\/Page\b(?!s)/g)?.length ?? 0;

/** The sheets of a PDF as small pictures, 20 pixels an inch. */
function picturesOf(pdf: Buffer): readonly PNG[] {
  const folder = mkdtempSync(join(work, "sheets-"));
  writeFileSync(join(folder, "in.pdf"), pdf);
  const run = spawnSync("pdftoppm", ["-r", "20", "-png", join(folder, "in.pdf"), join(folder, "sheet")], { encoding: "utf8" });
  expect(run.status, run.stderr).toBe(0);
  const names = readdirSync(folder).filter((name) => name.endsWith(".png"));
  return names.sort().map((name) => PNG.sync.read(readFileSync(join(folder, name))));
}

/** Luma of the four corners, and the share of the sheet that is nearly white. */
function paperOf({ data, width, height }: PNG): { readonly corners: readonly number[]; readonly white: number } {
  const luma = (x: number, y: number): number => {
    const at = 4 * (y * width + x);
    return 0.2126 * (data[at] ?? 0) + 0.7152 * (data[at + 1] ?? 0) + 0.0722 * (data[at + 2] ?? 0);
  };
  let white = 0;
  for (let y = 0; y < height; y++) for (let x = 0; x < width; x++) if (luma(x, y) > 235) white++;
  const [right, bottom] = [width - 3, height - 3];
  return { corners: [luma(2, 2), luma(right, 2), luma(2, bottom), luma(right, bottom)], white: white / (width * height) };
}

function wrongPaper(pdf: Buffer, name: string): readonly string[] {
  return picturesOf(pdf).flatMap((sheet, i) => {
    const { corners, white } = paperOf(sheet);
    return Math.min(...corners) > 250 && white > 0.5
      ? []
      : [`${name}, sheet ${i + 1}: corners ${corners.map(Math.round).join(" ")}, ${Math.round(100 * white)} % white`];
  });
}

interface Walked {
  /** Sheets that are not on white paper. */
  readonly paper: readonly string[];
  /** What is not laid out for paper. */
  readonly layout: readonly string[];
}

let walk: Promise<Walked> | undefined;
/** Every page is opened once: on a dark screen as wide as a sheet. */
function walked(): Promise<Walked> {
  walk ??= (async () => {
    const context = await browser.newContext({ colorScheme: "dark", viewport: { width: 690, height: 1000 } });
    const page = await context.newPage();
    const [paper, layout]: [string[], string[]] = [[], []];
    for (const path of pagesToLookAt()) {
      await page.goto(demoUrl(path));
      await page.emulateMedia({ media: "print" });
      layout.push(...[...new Set(await wrongLayout(page))].map((line) => `${path}: ${line}`));
      await page.emulateMedia({ media: null });
      if (poppler) paper.push(...wrongPaper(await print(page), path));
    }
    await context.close();
    return { paper, layout };
  })();
  return walk;
}

function wrongLayout(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const all = (selector: string): Element[] => [...document.querySelectorAll(selector)].filter((e) => e.checkVisibility());
    const styled = (selector: string, fits: (style: CSSStyleDeclaration) => boolean): string[] =>
      all(selector).flatMap((e) => (fits(getComputedStyle(e)) ? [] : [`${selector} #${e.id} .${e.className}`]));
    return [
      ...styled("main .table-box", (style) => style.overflowY === "visible" && style.maxHeight === "none"),
      ...styled("main thead", (style) => style.display === "table-header-group"),
      ...styled("main thead th", (style) => style.position === "static"),
      // the figure of the ribbons holds the readout too and may break between the two; a drawing is one piece anyway
      ...styled("main tbody tr, main figure:not(.through)", (style) => style.breakInside === "avoid"),
      // what is higher than a sheet is broken whatever is asked for; A4 without margins is 1,017 pixels high
      ...all("main figure:not(.through), main svg").flatMap((e) =>
        e.getBoundingClientRect().height < 1000 ? [] : [`${e.tagName} of ${e.getAttribute("class")} is too high`],
      ),
      ...all("button:not(.sort), .find-link, dialog").map((e) => `${e.tagName} ${e.textContent} is printed`),
    ];
  });
}

describe("printing", () => {
  withPoppler(
    "is on white paper on every page of every kind, although the screen is dark",
    async () => {
      expect((await walked()).paper).toEqual([]);
    },
    180_000,
  );

  withPoppler("is on white paper although the reader chose Dark", async () => {
    const context = await browser.newContext();
    const page = await context.newPage();
    await page.goto(demoUrl(fullestOfEachKind().get("take") ?? ""));
    await page.locator("label[for=theme-dark]").click();
    // the choice holds on the screen, or the test proves nothing
    expect(await page.evaluate(() => getComputedStyle(document.body).backgroundColor)).not.toMatch(/rgb\(2[345]\d/);
    expect(wrongPaper(await print(page), "take")).toEqual([]);
    await context.close();
  });

  it("opens every box that scrolls, repeats heads of tables, and breaks no row and no figure", async () => {
    expect((await walked()).layout).toEqual([]);
  });

  withPoppler("puts the head of a long table on each of its sheets", async () => {
    const page = await browser.newPage();
    await page.goto(demoUrl(fullestOfEachKind().get("editorial") ?? ""));
    await page.evaluate(() => {
      const body = document.querySelector("main table tbody");
      const rows = [...(body?.children ?? [])];
      for (let i = 0; i < 8; i++) body?.append(...rows.map((row) => row.cloneNode(true)));
    });
    const file = join(work, "long.pdf");
    writeFileSync(file, await print(page));
    const sheets = spawnSync("pdftotext", ["-layout", file, "-"], { encoding: "utf8" }).stdout.split("\f").slice(0, -1);
    const withRows = sheets.filter((text) => /\b[AB]0\d\dC\d{3}\b/.test(text));
    expect(withRows.length).toBeGreaterThan(2);
    for (const text of withRows) expect(text).toMatch(/\bClip\b/);
    await page.close();
  });

  it.each([
    ["A4", "", "paper-a4", [595, 842]],
    ["Letter", "paper-letter", "paper-a4", [612, 792]],
  ] as const)("puts the production page of each day on one sheet of %s", async (_, other, paper, [width, height]) => {
    const paths = inject("demoPages").production ?? [];
    expect(paths).not.toEqual([]);
    const page = await browser.newPage();
    for (const path of paths) {
      await page.goto(demoUrl(path));
      if (other !== "") {
        await page.evaluate(
          ([from, to]) =>
            new Promise((resolve, reject) => {
              const link = document.querySelector<HTMLLinkElement>(`link[href*="${from}"]`);
              if (link === null) return reject(new Error(`no ${from}`));
              link.addEventListener("load", resolve);
              link.href = link.href.replace(from, to);
            }),
          [paper, other] as const,
        );
      }
      const pdf = await print(page);
      expect(sheetsOf(pdf), path).toBe(1);
      const box = /\/MediaBox\s*\[\s*0 0 ([\d.]+) ([\d.]+)/.exec(pdf.toString("latin1")) ?? [];
      expect([Math.round(Number(box[1])), Math.round(Number(box[2]))], path).toEqual([width, height]);
    }
    await page.close();
  });
});
