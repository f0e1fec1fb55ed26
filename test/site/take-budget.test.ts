/** Sizes of a take sheet of a minute, so that a day of them opens from a slow disk. */
import { mkdtempSync, rmSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, it } from "vitest";
import { renderPages } from "../../src/site/render.ts";
import { dayPages } from "../../src/view/day-pages.ts";
import { takeDataScript } from "../../src/view/take/take-data.ts";
import { exampleContext } from "../fixtures/site-context.ts";
import { lensShow } from "../summary/lens-show.ts";

const FRAMES = 1440;
const folder = mkdtempSync(join(tmpdir(), "daybook-budget-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Focus that never stands still, with the jitter of an encoder; stop and look move as well. No frame is like another. */
const restless = (i: number): string => {
  const focus = 1 / (0.35 + 0.3 * Math.sin(i / 90) + 0.004 * Math.sin(i * 12.9898));
  return `${focus.toFixed(4)},${(4 + Math.sin(i / 200) + 0.01 * Math.sin(i * 78.233)).toFixed(3)}`;
};

it("a take of 1440 restless frames keeps to 90 KB for the page and 60 KB for its data", async () => {
  const table = { header: "focal_mm,focus_m,k1,a1", rows: ["50,inf,0.0002,0.0004", "50,0.5,0.0003,0.0005"] };
  const { summary } = lensShow({
    ...{ keys: ["model: brown-conrady", "direction: undistort", "radius: mm", "shading_radius: mm"] },
    ...{ table, frames: FRAMES, cells: restless, noteHeader: ",plate,remarks", note: ",hero,Slate 10:00:02:00" },
  });
  const [take] = summary.takes;
  if (take === undefined) throw new Error("no take");
  expect([take.framesLogged, take.distortionPercent === null, take.shadingStops === null]).toEqual([FRAMES, false, false]);
  const { take: sheets } = dayPages(summary, exampleContext(summary, { dataScripts: true }));
  if (sheets === undefined) throw new Error("no sheet");
  const [path = ""] = await renderPages({ take: sheets }, folder);
  const script = takeDataScript(summary.date, take, "metric");
  const sizes = { page: statSync(join(folder, path)).size, data: Buffer.byteLength(script?.text ?? "") };
  expect(sizes.page).toBeGreaterThan(10_000);
  expect(sizes.data).toBeGreaterThan(1000);
  expect(sizes.page, JSON.stringify(sizes)).toBeLessThan(90_000);
  expect(sizes.data, JSON.stringify(sizes)).toBeLessThan(60_000);
});
