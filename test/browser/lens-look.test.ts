/** The lens look panel from file://: the look taken off and put back at the scrubber's frame, by the builder's own maths. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import type { Browser, Page } from "playwright-core";
import { PNG } from "pngjs";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import { looksOf } from "../../src/client/take/look-at.ts";
import { lightOf, paintPixels, placesFor, roomFor, type View } from "../../src/client/take/look-pixels.ts";
import { viewOf } from "../../src/client/take/look-view.ts";
import { readDay } from "../../src/ingest/read-day.ts";
import { readShow } from "../../src/ingest/read-show.ts";
import { buildDay } from "../../src/model/build-day.ts";
import { lookOnArea } from "../../src/still/middle-look.ts";
import { readPng } from "../../src/still/picture.ts";
import { takeOff } from "../../src/still/take-off.ts";
import { summariseDay } from "../../src/summary/day.ts";
import { lensLookFrames } from "../../src/summary/lens-look-frames.ts";
import { takeRecord } from "../../src/view/take/take-data.ts";
import { launchChromium } from "../helpers/chromium.ts";
import { diskFolder } from "../helpers/disk-folder.ts";

const out = inject("demoOut");
const DATA = fileURLToPath(new URL("../../data", import.meta.url));
const DATE = "2026-10-06";
/** A take with a still and a table, and a gap. */
const TAKE = "a-14b-2";
const FRAME = 500;
const url = (address = TAKE): string => pathToFileURL(join(out, `days/${DATE}/takes/${address}.html`)).href;

function built() {
  const folder = diskFolder(DATA);
  const { input: show } = readShow(folder);
  if (show === null) throw new Error("the demo show cannot be read");
  const { input, findings } = readDay(folder, show, DATE);
  const { takes } = summariseDay(buildDay(show, input, findings), show.kit);
  const take = takes.find((t) => t.take.address === TAKE);
  const record = take === undefined ? null : takeRecord(take, "metric");
  const mode = take?.take.sensorMode;
  const still = readPng(readFileSync(join(DATA, take?.take.still?.file ?? "")));
  const frame = take === undefined ? null : (lensLookFrames(take)?.look(FRAME) ?? null);
  if (take === undefined || record?.look == null || mode == null || still === null || frame === null) throw new Error("no look");
  const look = lookOnArea({ widthMm: mode.activeWidthMm, heightMm: mode.activeHeightMm }, 1, frame.distortion, frame.shading);
  if (look === null) throw new Error("no look");
  return { take, record, look, still, view: viewOf(record.look, record.frames, looksOf(record.look, record.frames)) };
}

const demo = built();

let browser: Browser;
let page: Page;
const asked: string[] = [];
beforeAll(async () => {
  browser = await launchChromium();
  page = await browser.newPage({ viewport: { width: 1280, height: 900 } });
  page.on("request", (request) => {
    if (!/^(file|data|blob):/.test(request.url())) asked.push(request.url());
  });
  page.on("console", (message) => asked.push(message.text()));
  page.on("pageerror", (error) => asked.push(error.message));
});
afterAll(async () => {
  await browser?.close();
});

/** Opens the take at the frame with the panel in sight and its still loaded. */
async function open(address = TAKE): Promise<void> {
  await page.goto("about:blank");
  await page.goto(url(address));
  await page.locator("#look-canvas").scrollIntoViewIfNeeded();
  if (address === TAKE) await expect.poll(() => page.locator("#look-words").textContent()).toMatch(/^As recorded/);
  await page.locator("#look-frame").fill(String(FRAME));
}
const click = (id: string): Promise<void> => page.locator(`label[for=${id}]`).click();
const settled = (): Promise<void> => page.evaluate(() => new Promise((done) => requestAnimationFrame(() => setTimeout(done, 50))));

/** Pixels of the page's canvas on a lattice inside the frame, away from its edges and marks. */
async function lattice(): Promise<{ readonly x: number; readonly y: number; readonly rgba: number[] }[]> {
  await settled();
  return page.locator("#look-canvas").evaluate((canvas) => {
    const { width, height } = canvas as HTMLCanvasElement;
    const context = (canvas as HTMLCanvasElement).getContext("2d");
    const found: { x: number; y: number; rgba: number[] }[] = [];
    for (let i = 1; i < 24; i++) {
      for (let j = 1; j < 14; j++) {
        const x = Math.round(width * (0.08 + (0.84 * i) / 24)) + 3;
        const y = Math.round(height * (0.08 + (0.84 * j) / 14)) + 3;
        found.push({ x, y, rgba: Array.from(context?.getImageData(x, y, 1, 1).data ?? []) });
      }
    }
    return found;
  });
}

/** The same pixels from the builder's look of that frame and its still. */
function builderPixels(view: View, distortionOff: boolean, shadingOff: boolean): Uint8Array {
  const places = roomFor(view);
  placesFor(view, demo.still, distortionOff ? demo.look.distortion : null, places);
  const pixels = new Uint32Array(view.columns * view.rows);
  const tone = shadingOff ? "taken off" : "as it is";
  paintPixels(view, lightOf(demo.still), places, demo.look.shading, tone, pixels, 0, view.columns);
  return new Uint8Array(pixels.buffer);
}

function furthest(found: Awaited<ReturnType<typeof lattice>>, expected: Uint8Array): number {
  return Math.max(
    ...found.flatMap(({ x, y, rgba }) =>
      rgba.map((byte, i) => Math.abs(byte - (expected[4 * (y * demo.view.columns + x) + i] ?? 0))),
    ),
  );
}

it("is painted once although nobody has scrolled to it", async () => {
  await page.goto("about:blank");
  await page.goto(url(TAKE));
  await expect.poll(() => page.locator("#look-words").textContent()).toMatch(/^As recorded/);
  expect(await page.evaluate(() => scrollY)).toBe(0);
  expect(new Set((await lattice()).map(({ rgba }) => rgba.join(" "))).size).toBeGreaterThan(50);
});

describe("the lens look panel", () => {
  it("shows the still with each part of the look off and on, as the builder's maths gives it", async () => {
    await open();
    await page.locator("#look-grid").uncheck();
    expect(furthest(await lattice(), builderPixels(demo.view, false, false)), "as recorded").toBeLessThanOrEqual(2);
    await click("distortion-off");
    expect(furthest(await lattice(), builderPixels(demo.view, true, false)), "distortion off").toBeLessThanOrEqual(2);
    await click("shading-off");
    expect(furthest(await lattice(), builderPixels(demo.view, true, true)), "both off").toBeLessThanOrEqual(2);
    await click("distortion-on");
    expect(furthest(await lattice(), builderPixels(demo.view, false, true)), "shading off").toBeLessThanOrEqual(2);
    // two of them are far apart, or the comparison would prove nothing
    expect(furthest(await lattice(), builderPixels(demo.view, true, false))).toBeGreaterThan(20);
  });

  it("keeps the left of the split as recorded, by keyboard and by mouse", async () => {
    await open();
    await page.locator("#look-grid").uncheck();
    await click("distortion-off");
    await page.locator("#look-split").focus();
    await page.keyboard.press("End");
    expect(furthest(await lattice(), builderPixels(demo.view, false, false))).toBeLessThanOrEqual(2);
    const box = await page.locator("#look-canvas").boundingBox();
    if (box === null) throw new Error("no canvas");
    await page.mouse.click(box.x + box.width / 2, box.y + box.height / 2);
    expect(Number(await page.locator("#look-split").inputValue())).toBeCloseTo(50, -1);
    const found = await lattice();
    const middle = demo.view.columns / 2;
    expect(
      furthest(
        found.filter((p) => p.x < middle - 20),
        builderPixels(demo.view, false, false),
      ),
    ).toBeLessThanOrEqual(2);
    expect(
      furthest(
        found.filter((p) => p.x > middle + 20),
        builderPixels(demo.view, true, false),
      ),
    ).toBeLessThanOrEqual(2);
    expect(await page.locator("#look-words").textContent()).toContain("Left of the line: as recorded.");
  });

  it("gives the figures of the frame, and of none in a gap", async () => {
    await open();
    const { distortion } = { distortion: lensLookFrames(demo.take)?.look(FRAME)?.distortionPercent };
    const cell = page.locator("#look-table tbody td").first();
    await expect.poll(() => cell.textContent()).toBe(distortion?.corner.toFixed(2).replace("-", "\u2212"));
    expect(await page.locator("#look-overscan").textContent()).toMatch(
      /^Overscan at this frame: [\d\u202f]+\u00a0×\u00a0[\d\u202f]+\u00a0pixels \(/,
    );
    await page.locator("#look-frame").fill(String(demo.take.gaps[0]?.first));
    await expect.poll(() => cell.textContent()).toBe("not logged");
    expect(await page.locator("#look-words").textContent()).toContain("Not logged at this frame");
  });

  it("moves with the scrubber under the plot, and moves it", async () => {
    await open();
    const timecode = page.locator(".at-tc");
    const before = await timecode.textContent();
    await page.locator("#look-frame").focus();
    await page.keyboard.press("Shift+ArrowLeft");
    expect(await timecode.textContent()).not.toBe(before);
    expect(await page.locator("#scrub").inputValue()).toBe(String(FRAME - 24));
    await settled();
    expect(await page.locator("#look-tc").textContent()).toBe(await timecode.textContent());
    expect(await page.locator("#look ~ p").first().textContent()).toContain(`At ${await timecode.textContent()}`);
  });

  it("draws the grid on a plain card for a take without a still", async () => {
    await open("a-15-1");
    await settled();
    expect(await page.locator("#look-words").textContent()).toContain("A plain card stands for the picture.");
  });
});

describe("a reader's own still", () => {
  const png = (width: number, height: number): Buffer => {
    const picture = new PNG({ width, height });
    for (let i = 0; i < picture.data.length; i++) picture.data[i] = i % 4 === 3 ? 255 : 60 + (((i >> 2) % width) % 120);
    return PNG.sync.write(picture);
  };

  it("is read here, taken for the picture, and saved with the look off at its own size", async () => {
    await open();
    await page.locator("#look-file").setInputFiles({ name: "mine.png", mimeType: "image/png", buffer: png(1280, 720) });
    await expect.poll(() => page.locator("#look-said").textContent()).toContain("goes nowhere");
    await page.locator("#look-save").click();
    await expect.poll(() => page.locator("#look-said").textContent()).toContain("Nothing is taken off");
    await click("distortion-off");
    await settled();
    const [download] = await Promise.all([page.waitForEvent("download"), page.locator("#look-save").click()]);
    expect(download.suggestedFilename()).toMatch(/^a-14b-2-\d\d-\d\d-\d\d-\d\d-distortion-off\.png$/);
    const saved = PNG.sync.read(readFileSync(await download.path()));
    const expected = takeOff(readPng(png(1280, 720)) ?? demo.still, demo.look, { distortion: true, shading: false });
    expect([saved.width, saved.height]).toEqual([expected?.widthPx, expected?.heightPx]);
    let off = 0;
    for (let i = 0; i < saved.data.length; i++) {
      if (saved.data[i | 3] === 255) off = Math.max(off, Math.abs((saved.data[i] ?? 0) - (expected?.rgba[i] ?? 0)));
    }
    expect(off).toBeLessThanOrEqual(2);
    await page.locator("#look-back").click();
    expect(await page.locator("#look-back").isVisible()).toBe(false);
  });

  it("is refused in words when it is a crop or no picture", async () => {
    await open();
    const said = page.locator("#look-said");
    await page.locator("#look-file").setInputFiles({ name: "crop.png", mimeType: "image/png", buffer: png(400, 300) });
    await expect.poll(() => said.textContent()).toContain("1.33 to 1 and the sensor mode 1.78 to 1");
    await page.locator("#look-file").setInputFiles({ name: "notes.png", mimeType: "image/png", buffer: Buffer.from("no picture") });
    await expect.poll(() => said.textContent()).toContain("cannot read that file");
  });

  it("can be dropped on the picture", async () => {
    await open();
    const handed = await page.evaluateHandle(
      (bytes) => {
        const data = new DataTransfer();
        data.items.add(new File([new Uint8Array(bytes)], "mine.png", { type: "image/png" }));
        return data;
      },
      [...png(320, 180)],
    );
    await page.dispatchEvent("#look-canvas", "drop", { dataTransfer: handed });
    await expect.poll(() => page.locator("#look-said").textContent()).toContain("goes nowhere");
  });

  it("asks for nothing outside the page and leaves no word on the console", () => {
    expect(asked).toEqual([]);
  });
});
