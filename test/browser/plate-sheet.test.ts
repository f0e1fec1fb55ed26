/** The plate sheet on paper: one sheet with nothing cut off, whatever was written down. */
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { copyAssets, renderPages } from "../../src/site/render.ts";
import type { DaySummary, TakeSummary } from "../../src/summary/types.ts";
import { dayPages } from "../../src/view/day-pages.ts";
import { exampleDaySummary } from "../fixtures/day-summary.ts";
import { exampleContext } from "../fixtures/site-context.ts";
import { launchChromium } from "../helpers/chromium.ts";

/** Paper less its margins in CSS pixels of 1/96 inch: 9, 11, 9 and 18 mm. */
const PAPERS = [
  { paper: "A4", widthPx: Math.floor(((210 - 29) / 25.4) * 96), points: [595, 842] },
  { paper: "Letter", widthPx: Math.floor(((215.9 - 29) / 25.4) * 96), points: [612, 792] },
] as const;

const LONG =
  "The water came up faster than the tide table says and the second mark was under it by the turn, so we moved the board. ";

/** The example day with everything that can be long made long: remarks, filters, slates, clips, two cameras and ten takes. */
function crowded(summary: DaySummary): DaySummary {
  const [hero, plate] = ["a-12-2", "b-12-2"].map((address) => summary.takes.find((t) => t.take.address === address) as TakeSummary);
  if (hero === undefined || plate === undefined) throw new Error("no plates");
  const long = (t: TakeSummary, take: string): TakeSummary => ({
    ...t,
    remarks: LONG.repeat(12),
    filters: `${"Sea Fret 1/4, ".repeat(12)}Haar 1/8`,
    rollDeg: { value: -0.4, source: "noted" },
    take: {
      ...t.take,
      ...{ plate: "hero", take, address: `${t.take.camera.toLowerCase()}-12-${take}`, scene: `12 ${"continued ".repeat(8)}` },
      ...{ clip: "A009C002_310506_R7KQ_WITH_A_LONG_RECORDER_NAME_AND_MORE_OF_IT", roll: "A009" },
    },
  });
  const takes = Array.from({ length: 10 }, (_, i) => [long(hero, String(i + 1)), long(plate, String(i + 1))]).flat();
  return { ...summary, takes };
}

let browser: Browser;
let folder: string;
beforeAll(async () => {
  browser = await launchChromium();
  folder = mkdtempSync(join(tmpdir(), "daybook-plate-"));
});
afterAll(async () => {
  await browser?.close();
  rmSync(folder, { recursive: true, force: true });
});

/** Page objects of a PDF; `Pages` are the tree above them. */
function pageCount(pdf: Buffer): number {
  return pdf.toString("latin1").match(/\/Type\s*\/Page\b(?!s)/g)?.length ?? 0;
}

/** Width and height of the first page in points. */
function pageSize(pdf: Buffer): readonly number[] {
  const box = /\/MediaBox\s*\[([^\]]*)\]/.exec(pdf.toString("latin1"))?.[1] ?? "";
  return box
    .trim()
    .split(/\s+/)
    .slice(2)
    .map((n) => Math.round(Number(n)));
}

describe.each(PAPERS)("a plate sheet on $paper", ({ paper, widthPx, points }) => {
  it.each([
    ["as it usually is", (s: DaySummary) => s],
    ["with long remarks, names and two cameras", crowded],
  ])("is one sheet with nothing cut off, %s", async (name, change) => {
    const base = exampleDaySummary();
    const summary = change({ ...base, show: { ...base.show, paper } });
    const { plate } = dayPages(summary, exampleContext(summary));
    if (plate === undefined || plate.length === 0) throw new Error("no plate sheet");
    const out = join(folder, `${paper}-${name.length}`);
    await renderPages({ plate }, out);
    await copyAssets(out);
    for (const { path } of plate) {
      const page = await browser.newPage({ viewport: { width: widthPx, height: 1000 } });
      await page.goto(pathToFileURL(join(out, path)).href);
      const pdf = await page.pdf({ preferCSSPageSize: true, path: join(folder, "sheet.pdf") });
      expect(pageCount(readFileSync(join(folder, "sheet.pdf"))), path).toBe(1);
      expect(pageSize(pdf)).toEqual(points);
      await page.emulateMedia({ media: "print" });
      const cut = await page.evaluate(() =>
        [...document.querySelectorAll(".plate-sheet, .plate-sheet .look, .plate-sheet td, .plate-sheet .table-box")]
          .filter((box) => box.scrollHeight > box.clientHeight + 1 || box.scrollWidth > box.clientWidth + 1)
          .map((box) => `${box.className} ${box.scrollWidth}x${box.scrollHeight} in ${box.clientWidth}x${box.clientHeight}`),
      );
      expect(cut, path).toEqual([]);
      // room for a sketch: a hand's breadth
      expect((await page.locator(".sketch").boundingBox())?.height ?? 0).toBeGreaterThan(130);
      await page.close();
    }
  });
});
