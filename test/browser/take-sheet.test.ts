/** A take sheet as the VFX reader uses it, from file://: moving through the take, reading a frame, taking it away. */
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import type { Browser, BrowserContext, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import { type ReadoutEntry, readout } from "../../src/format/readout.ts";
import { readDay } from "../../src/ingest/read-day.ts";
import { readShow } from "../../src/ingest/read-show.ts";
import { buildDay } from "../../src/model/build-day.ts";
import { summariseDay } from "../../src/summary/day.ts";
import { frameValues, readoutSources } from "../../src/view/frame-values.ts";
import { axeFindings } from "../helpers/axe.ts";
import { launchChromium } from "../helpers/chromium.ts";
import { diskFolder } from "../helpers/disk-folder.ts";

const out = inject("demoOut");
const DATE = "2026-10-07";
/** A zoom, three pulls, and 17 frames that were not logged. */
const TAKE = "a-33b-3";
const PATH = `days/${DATE}/takes/${TAKE}.html`;
const url = (hash = "", path = PATH): string => pathToFileURL(join(out, path)).href + hash;

/** The figures of the take as the builder has them. */
function builtTake() {
  const folder = diskFolder(fileURLToPath(new URL("../../data", import.meta.url)));
  const { input: show } = readShow(folder);
  if (show === null) throw new Error("the demo show cannot be read");
  const { input, findings } = readDay(folder, show, DATE);
  const { takes } = summariseDay(buildDay(show, input, findings), show.kit);
  const take = takes.find((t) => t.take.address === TAKE);
  if (take?.perFrame == null) throw new Error(`no log of ${TAKE}`);
  return { take, frames: take.perFrame.frames, logged: take.perFrame.logged, distances: show.show.distances };
}

const { take, frames, logged, distances } = builtTake();
const gap = take.gaps[0]?.first ?? -1;
const builtReadout = (frame: number): readonly ReadoutEntry[] => {
  const values = frameValues(take, frame);
  if (values === null) throw new Error("no values");
  return readout(values, readoutSources(take), distances);
};

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

/** Opens the take afresh: going from one fragment to another would keep the page. */
const open = async (hash = "", path = PATH): Promise<void> => {
  await page.goto("about:blank");
  await page.goto(url(hash, path));
};
const timecode = (p: Page = page): Promise<string | null> => p.locator(".at-tc").textContent();
const cells = (p: Page = page): Promise<string[][]> =>
  p.locator(".readout > div").evaluateAll((boxes) => {
    // a distance stands there in both units, of which one is shown
    const shown = (figure: Element | null) =>
      [...(figure?.childNodes ?? [])]
        .filter((node) => !(node instanceof Element) || getComputedStyle(node).display !== "none")
        .map((node) => node.textContent)
        .join("");
    return boxes.map((box) => [
      box.querySelector("dt")?.textContent ?? "",
      shown(box.querySelector("dd span:not(.src)")),
      box.querySelector("dd .src")?.textContent ?? "",
    ]);
  });
const toFrame = async (frame: number, p: Page = page): Promise<void> => {
  await p.locator("#scrub").evaluate((slider, value) => {
    (slider as HTMLInputElement).value = String(value);
    slider.dispatchEvent(new Event("input", { bubbles: true }));
  }, frame);
};
const clipboard = (): Promise<string> => page.evaluate(() => navigator.clipboard.readText());

describe("moving through a take", () => {
  it("begins at the middle logged frame, with what the page says without scripts", async () => {
    const plain = await (await browser.newContext({ javaScriptEnabled: false })).newPage();
    await plain.goto(url());
    await open();
    expect(await timecode()).toBe(await timecode(plain));
    expect(await cells()).toEqual(await cells(plain));
    expect(await plain.locator(".moves, .slide").evaluateAll((all) => all.filter((e) => e.checkVisibility()).length)).toBe(0);
    await plain.context().close();
  });

  it("goes a frame with an arrow, a second with Shift and an arrow, to the ends with Home and End", async () => {
    await open("#tc=11:31:28:05");
    await page.locator("#scrub").focus();
    const press = async (key: string): Promise<string | null> => {
      await page.keyboard.press(key);
      return timecode();
    };
    expect(await press("ArrowRight")).toBe("11:31:28:06");
    expect(await press("Shift+ArrowRight")).toBe("11:31:29:06");
    expect(await press("ArrowLeft")).toBe("11:31:29:05");
    expect(await press("Shift+ArrowLeft")).toBe("11:31:28:05");
    expect(await press("Home")).toBe(take.timecodeIn);
    expect(await press("ArrowLeft")).toBe(take.timecodeIn);
    await press("End");
    expect(await page.locator(".at-frame").textContent()).toBe(`frame ${frames} of ${frames}`);
    expect(await page.locator("#scrub").getAttribute("aria-valuetext")).toBe(await timecode());
  });

  it("says whether the calibration served at the frame it stands on, and its own sentence back at the middle", async () => {
    await open();
    const own = await page.locator("#look-state").textContent();
    await toFrame(gap);
    expect(await page.locator("#look-state").textContent()).toBe(`At ${await timecode()}: The lens is not logged.`);
    expect(await page.locator("#look-state").locator("..").getAttribute("class")).toBe("box");
    await toFrame(0);
    const values = frameValues(take, 0);
    const expected = values?.calibration === "inside the table" ? "Inside the table." : "Outside the table";
    expect(await page.locator("#look-state").textContent()).toContain(`At ${take.timecodeIn}: ${expected}`);
    await toFrame(take.middleFrame ?? 0);
    expect(await page.locator("#look-state").textContent()).toBe(own);
  });

  it("goes a frame and a second with the buttons", async () => {
    await open("#tc=11:31:28:05");
    for (const [name, expected] of [
      ["+ 1 frame", "11:31:28:06"],
      ["+ 1 s", "11:31:29:06"],
      ["− 1 frame", "11:31:29:05"],
      ["− 1 s", "11:31:28:05"],
    ] as const) {
      await page.getByRole("button", { name }).click();
      expect(await timecode(), name).toBe(expected);
    }
  });

  it("goes to a typed timecode, and says what it cannot use", async () => {
    await open();
    const field = page.getByLabel("Timecode", { exact: true });
    await field.fill("11312805");
    await field.press("Enter");
    expect(await timecode()).toBe("11:31:28:05");
    await field.fill("12:00:00:00");
    await field.press("Enter");
    expect(await page.locator("#go-said").textContent()).toBe(
      `12:00:00:00 is not in the take. It runs from ${take.timecodeIn} to 11:31:38:03.`,
    );
    expect(await field.getAttribute("aria-invalid")).toBe("true");
    expect(await timecode()).toBe("11:31:28:05");
  });

  it("follows the mouse on the slider and on the plot", async () => {
    await open();
    await page.locator("#scrub").scrollIntoViewIfNeeded();
    const box = await page.locator("#scrub").boundingBox();
    if (box === null) throw new Error("no slider");
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
    await page.mouse.down();
    await page.mouse.move(box.x + 10, box.y + box.height / 2, { steps: 5 });
    await page.mouse.up();
    expect(await timecode()).toBe(take.timecodeIn);
    const plot = await page.locator(".ribbon > svg").boundingBox();
    if (plot === null) throw new Error("no plot");
    await page.mouse.move(plot.x + plot.width * 0.3, plot.y + plot.height * 0.7);
    await page.mouse.down();
    await page.mouse.move(plot.x + plot.width * 0.6, plot.y + plot.height * 0.7, { steps: 5 });
    await page.mouse.up();
    const share = Number(await page.locator("#scrub").inputValue()) / frames;
    expect(share).toBeGreaterThan(0.55);
    expect(share).toBeLessThan(0.62);
  });

  it("keeps the thumb's centre under the cursor to half a pixel, and the ring on the focus line", async () => {
    for (const width of [1280, 500]) {
      await page.setViewportSize({ width, height: 900 });
      await open();
      for (const frame of [0, 1, Math.floor(frames / 3), frames - 2, frames - 1]) {
        await toFrame(frame);
        const { thumb, line, ring } = await page.evaluate(() => {
          const middle = (element: Element | null) => {
            const box = element?.getBoundingClientRect() ?? new DOMRect();
            return box.left + box.width / 2;
          };
          const slider = document.querySelector<HTMLInputElement>("#scrub");
          const box = slider?.getBoundingClientRect() ?? new DOMRect();
          const share = Number(slider?.value) / Number(slider?.max);
          return {
            thumb: box.left + 10 + share * (box.width - 20),
            line: middle(document.querySelector(".ribbon > svg .k-cursor")),
            ring: middle(document.querySelector(".ribbon > svg .k-dot")),
          };
        });
        expect(Math.abs(thumb - line), `frame ${frame} at ${width}`).toBeLessThan(0.5);
        expect(Math.abs(ring - line), `frame ${frame} at ${width}`).toBeLessThan(0.5);
      }
    }
    await page.setViewportSize({ width: 1280, height: 900 });
  });

  it("scrolls a narrow plot so that the cursor is seen", async () => {
    await page.setViewportSize({ width: 320, height: 800 });
    await open("#tc=11:31:35:00");
    const place = await page.evaluate(() => {
      const box = document.querySelector(".ribbon")?.getBoundingClientRect() ?? new DOMRect();
      const line = document.querySelector(".ribbon > svg .k-cursor")?.getBoundingClientRect() ?? new DOMRect();
      return { line: line.left, left: box.left, right: box.right };
    });
    expect(place.line).toBeGreaterThan(place.left);
    expect(place.line).toBeLessThan(place.right);
    await page.setViewportSize({ width: 1280, height: 900 });
  });
});

describe("the readout", () => {
  it("reads at 20 frames as the builder's own formatting reads", async () => {
    await open();
    for (let i = 0; i < 20; i++) {
      const frame = Math.floor((i * (frames - 1)) / 19);
      await toFrame(frame);
      expect(await cells(), `frame ${frame}`).toEqual(builtReadout(frame).map((e) => [e.term, e.value, e.source]));
    }
  });

  it("says of each of its figures in a gap that it is not logged", async () => {
    expect(logged[gap]).toBe(0);
    await toFrame(gap);
    expect((await cells()).map(([, value, source]) => [value, source])).toEqual(new Array(12).fill(["not logged", ""]));
    expect(await page.locator(".further dd").allInnerTexts()).toEqual(new Array(4).fill("not logged"));
    expect(await page.locator(".ribbon > svg .k-dot").getAttribute("visibility")).toBe("hidden");
    await toFrame(gap - 1);
    expect((await cells())[0]?.[1]).not.toBe("not logged");
  });
});

describe("a frame's address", () => {
  it("is read on load and when it changes, and brings the plot into view", async () => {
    await open("#tc=11:31:28:05");
    expect(await timecode()).toBe("11:31:28:05");
    expect(await page.locator("#focus").evaluate((e) => e.getBoundingClientRect().top)).toBeLessThan(200);
    await page.evaluate(() => {
      location.hash = "#tc=11:31:10:00";
    });
    await expect.poll(() => timecode()).toBe("11:31:10:00");
  });

  it("follows the reader without adding to the history", async () => {
    await open();
    const before = await page.evaluate(() => history.length);
    await page.locator("#scrub").focus();
    await page.keyboard.press("ArrowRight");
    await expect.poll(() => page.evaluate(() => location.hash)).toBe(`#tc=${await timecode()}`);
    expect(await page.evaluate(() => history.length)).toBe(before);
  });

  it("that names no frame of the take leaves the page at its middle frame", async () => {
    for (const hash of ["#tc=09:00:00:00", "#tc=x", "#found"]) {
      await open(hash);
      expect(await page.locator(".at-frame").textContent(), hash).toContain("the middle logged frame");
    }
  });
});

describe("copying a frame", () => {
  it("gives text, a table and a link, and says so politely", async () => {
    await open("#tc=11:31:28:05");
    const said = page.locator("#copy-said");
    expect(await said.getAttribute("role")).toBe("status");
    await page.getByRole("button", { name: "Copy as text" }).click();
    await expect.poll(() => said.textContent()).toBe("Copied");
    expect(await clipboard()).toMatch(
      /^33B take 3 A, clip A022C008, lens KZ31-87\n11:31:28:05, frame 499 of 737\nFocus distance: /,
    );
    await page.getByRole("button", { name: "Copy as TSV" }).click();
    await expect.poll(clipboard).toMatch(/^take\tscene\t/);
    const [names, values] = (await clipboard()).split("\n").map((row) => row.split("\t"));
    expect(values?.[names?.indexOf("timecode") ?? -1]).toBe("11:31:28:05");
    expect(Number(values?.[names?.indexOf("focus_m") ?? -1])).toBeCloseTo(1 / (take.perFrame?.focusDioptres[498] ?? 0), 3);
    await page.getByRole("button", { name: "Copy link" }).click();
    await expect.poll(clipboard).toBe(url("#tc=11:31:28:05"));
  });

  it("answers the errand: lens and focus distance of a frame, in three steps and under a minute", async () => {
    const start = Date.now();
    await open("", `days/${DATE}/index.html`);
    await page.locator(`a[href="takes/${TAKE}.html"]`).first().click();
    await page.getByLabel("Timecode", { exact: true }).fill("11:31:28:05");
    await page.keyboard.press("Enter");
    await page.getByRole("button", { name: "Copy as text" }).click();
    await expect.poll(clipboard).toContain("11:31:28:05");
    expect(await clipboard()).toContain(`Focus distance: ${builtReadout(498)[0]?.value}`);
    expect(Date.now() - start).toBeLessThan(10_000);
  });
});

describe("manners of the take sheet", () => {
  it("can be walked with the keyboard: plot, slider, steps, field, copies, in that order", async () => {
    await open();
    await page.locator(".ribbon").focus();
    const names: string[] = [];
    for (let i = 0; i < 10; i++) {
      await page.keyboard.press("Tab");
      names.push(
        await page.evaluate(() => {
          const active = document.activeElement;
          return active?.id || (active?.textContent ?? "").trim();
        }),
      );
    }
    expect(names).toEqual([
      "scrub",
      "− 1 s",
      "− 1 frame",
      "+ 1 frame",
      "+ 1 s",
      "go-tc",
      "Go",
      "Copy as text",
      "Copy as TSV",
      "Copy link",
    ]);
  });

  for (const [name, options] of [
    ["light", { colorScheme: "light" }],
    ["dark", { colorScheme: "dark" }],
    ["forced colours", { forcedColors: "active" }],
    ["320 pixels", { viewport: { width: 320, height: 800 } }],
    ["reduced motion", { reducedMotion: "reduce" }],
  ] as const) {
    it(`has no violation that axe finds while a frame is chosen: ${name}`, async () => {
      const own = await browser.newContext({ ...options, bypassCSP: true });
      const p = await own.newPage();
      await p.goto(url("#tc=11:31:28:05"));
      expect(await axeFindings(p)).toEqual([]);
      expect(await p.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)).toBe(0);
      await own.close();
    });
  }

  it("asks for nothing but files and says nothing on the console", async () => {
    const said: string[] = [];
    const listen = (message: { text(): string }): void => void said.push(message.text());
    page.on("console", listen);
    page.on("pageerror", (error) => said.push(error.message));
    page.on("request", (request) => {
      if (!/^(file|data|blob):/.test(request.url())) said.push(request.url());
    });
    await open();
    for (let i = 0; i < 30; i++) await page.keyboard.press("ArrowRight");
    await page.locator("#scrub").focus();
    for (let i = 0; i < 30; i++) await page.keyboard.press("ArrowRight");
    // every frame, the gap among them, without a key each
    await page.locator("#scrub").evaluate(async (slider) => {
      for (let frame = 0; frame <= Number((slider as HTMLInputElement).max); frame++) {
        (slider as HTMLInputElement).value = String(frame);
        slider.dispatchEvent(new Event("input", { bubbles: true }));
        if (frame % 20 === 0) await new Promise(requestAnimationFrame);
      }
    });
    expect(await page.locator(".at-frame").textContent()).toBe(`frame ${frames} of ${frames}`);
    expect(said).toEqual([]);
    page.off("console", listen);
  });
});
