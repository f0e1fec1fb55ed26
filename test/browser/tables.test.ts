/** What a reader does with tables and units, on the built report from file://, by keyboard and by pointer. */
import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import type { Browser, BrowserContext, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import { distanceRange } from "../../src/format/length.ts";
import { pagesOf, unescapeHtml } from "../helpers/built-site.ts";
import { launchChromium } from "../helpers/chromium.ts";

const out = inject("demoOut");
const url = (path: string): string => pathToFileURL(join(out, path)).href;
const DAY = "days/2026-10-06/index.html";
const EDITORIAL = "days/2026-10-06/editorial.html";

let browser: Browser;
let context: BrowserContext;
let page: Page;
beforeAll(async () => {
  browser = await launchChromium();
  context = await browser.newContext({ permissions: ["clipboard-read", "clipboard-write"], bypassCSP: true });
  page = await context.newPage();
});
afterAll(async () => {
  await browser?.close();
});

const shownTakes = (of = page) => of.locator("#takes-table tr.take:visible").evaluateAll((rows) => rows.map((row) => row.id));
const focused = () => page.evaluate(() => document.activeElement?.textContent?.trim() ?? "");

async function tabTo(name: string, most = 200): Promise<void> {
  for (let i = 0; i < most; i++) {
    await page.keyboard.press("Tab");
    if ((await focused()) === name) return;
  }
  throw new Error(`no ${name} within ${most} presses of Tab`);
}

describe("sorting", () => {
  it("goes by the keyboard: up, down, and back in shooting order, saying so each time", async () => {
    await page.goto(url(DAY));
    const shot = await shownTakes();
    await tabTo("Lengthmin:s");
    const head = page.locator("#takes-table th", { hasText: "Length" });
    const said = page.locator('.take-away[data-table="takes-table"] [role=status]');
    const lengths = () =>
      page.locator("#takes-table .c-len:visible").evaluateAll((cells) =>
        cells.map((cell) => {
          const [minutes = 0, seconds = 0] = (cell.textContent ?? "").split(":").map(Number);
          return 60 * minutes + seconds;
        }),
      );
    await page.keyboard.press("Enter");
    expect(await head.getAttribute("aria-sort")).toBe("ascending");
    expect(await said.textContent()).toBe("Sorted by Length (min:s), ascending.");
    const up = await lengths();
    expect(up).toEqual([...up].sort((a, b) => a - b));
    expect(await page.locator("#takes-table .slate:visible").count()).toBe(0);
    await page.keyboard.press("Enter");
    expect(await head.getAttribute("aria-sort")).toBe("descending");
    expect(await lengths()).toEqual([...up].reverse());
    expect(await page.locator("[aria-sort]").count()).toBe(1);
    await page.keyboard.press("Enter");
    expect(await page.locator("[aria-sort]").count()).toBe(0);
    expect(await said.textContent()).toBe("Back in shooting order.");
    expect(await shownTakes()).toEqual(shot);
    expect(await focused()).toBe("Lengthmin:s");
  });

  it("stands in a line above the takes on a phone, where rows are blocks without heads", async () => {
    await page.setViewportSize({ width: 360, height: 800 });
    await page.goto(url(DAY));
    const shot = await shownTakes();
    await page.locator("#takes-table").getByRole("button", { name: "Pulls" }).click();
    const pulls = await page.locator("#takes-table .c-pul:visible").allInnerTexts();
    expect(new Set(pulls).size).toBeGreaterThan(1);
    expect(pulls).toEqual([...pulls].sort((one, other) => Number(one) - Number(other)));
    expect((await shownTakes()).sort()).toEqual([...shot].sort());
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
    await page.setViewportSize({ width: 1280, height: 720 });
  });

  it("has the labels of the shared scale on the first row that is shown, sorted or not, and nowhere twice", async () => {
    await page.goto(url(DAY));
    const labelled = () =>
      page
        .locator("#takes-table tr.take")
        .evaluateAll((rows) =>
          rows.filter((row) => row.querySelector('.c-rib svg > g[text-anchor="end"]') !== null).map((row) => row.id),
        );
    const firsts = () =>
      page.locator("#takes-table tbody:visible").evaluateAll((bodies) =>
        bodies.flatMap((body) => {
          const rows = [...body.querySelectorAll<HTMLElement>("tr.take")];
          const first = rows.find((row) => !row.hidden && row.querySelector(".c-rib .k-row") !== null);
          return first === undefined ? [] : [first.id];
        }),
      );
    expect(await labelled()).toEqual(await firsts());
    await page.locator(".chip", { hasText: "Camera B" }).click();
    expect(await labelled()).toEqual(await firsts());
    await page.locator("#takes-table .sort", { hasText: "Pulls" }).click();
    expect(await labelled()).toEqual(await firsts());
    expect(await labelled()).toHaveLength(1);
  });
});

/** Tables whose rows are fields of one thing, a matrix or points along an axis: another order would say nothing. */
const IN_THEIR_ORDER =
  /^(camera-values|lens-values|to-date|mates-table|look-table|source-table|use-table|curves-table|mass-table|.*-symbols)$/;
const OF_ROWS = new RegExp(
  `^(${[
    ...["takes", "lens-use", "exposure", "rows", "circled", "others", "scenes", "clips", "days", "lens", "fronts", "setups"],
    ...["camera", "all-takes", "points", "pulls", "cameras", "remarks"],
  ].join("|")})-table$|^(lens-bars|camera-use|show-inputs|day-inputs|others-look)$|^plate-.*-(table|look)$|^plate-table-\\d+$`,
);

describe("what can be sorted", () => {
  it("is decided for every table of every page: rows, not fields", () => {
    const decided = pagesOf(out).flatMap(({ path, html }) =>
      [...html.matchAll(/<table id="([^"]+)" class="([^"]*)"/g)].map(([, id = "", cls = ""]) => ({ path, id, cls })),
    );
    expect(decided.length).toBeGreaterThan(300);
    for (const { path, id, cls } of decided) {
      expect([IN_THEIR_ORDER.test(id), OF_ROWS.test(id)].filter(Boolean), `${path}: ${id} is named once above`).toHaveLength(1);
      expect(/\bfixed\b/.test(cls), `${path}: ${id}`).toBe(IN_THEIR_ORDER.test(id));
    }
  });

  it("has buttons in its heads, and no field has one", async () => {
    for (const [path, fields, rows] of [
      ["days/2026-10-06/takes/a-14b-2.html", "mates-table", null],
      ["lenses/K19.html", "use-table", "takes-table"],
      ["kit.html", "mass-table", "lens-table"],
    ] as const) {
      await page.goto(url(path));
      expect(await page.locator(`#${fields} tbody tr`).count(), fields).toBeGreaterThanOrEqual(5);
      expect(await page.locator(`#${fields} .sort`).count(), fields).toBe(0);
      if (rows !== null) expect(await page.locator(`#${rows} .sort`).count(), rows).toBeGreaterThan(3);
    }
  });
});

describe("without scripts", () => {
  it("heads are plain, nothing offers what it cannot do, and the files are there", async () => {
    const plain = await browser.newContext({ javaScriptEnabled: false });
    const still = await plain.newPage();
    await still.goto(url(DAY));
    expect(await still.locator("th button, .filters:visible, fieldset:visible, .take-away button").count()).toBe(0);
    expect(await still.locator('.take-away a[href$="takes.csv"]').isVisible()).toBe(true);
    expect(await still.locator(".c-foc .dm").first().isVisible()).toBe(true);
    expect(await still.locator(".c-foc .oi").first().isVisible()).toBe(false);
    await plain.close();
  });
});

describe("filters", () => {
  it("are in the address, are there again from it, and go with Show all", async () => {
    await page.goto(url(DAY));
    const all = await shownTakes();
    await page.locator(".chip", { hasText: "Camera A" }).click();
    await page.locator(".chip", { hasText: "Circled" }).click();
    await page.waitForURL(/\?camera=A&circled$/);
    const some = await shownTakes();
    expect(some).toEqual(all.filter((id) => id.startsWith("a-") && some.includes(id)));
    expect(await page.locator(".filters .shown").textContent()).toBe(
      `${some.length} of ${all.length} clips shown: Camera A, Circled.`,
    );
    // the count on a chip is what it shows
    expect(await page.locator(".chip", { hasText: "Circled" }).locator(".n").textContent()).toBe(String(some.length));
    await page.reload();
    expect(await shownTakes()).toEqual(some);
    await page.goto(`${url("days/2026-10-06/vfx.html")}?camera=A&circled`);
    expect(await page.locator(".filters .shown").textContent()).toBe(
      `${some.length} of ${all.length} clips shown: Camera A, Circled.`,
    );
    await page.goto(`${url(DAY)}?camera=A&circled#totals`);
    await page.locator(".show-all").click();
    await page.waitForURL(/index\.html#totals$/);
    expect(await shownTakes()).toEqual(all);
  });

  it("that leave nothing say what was looked for and the way out", async () => {
    await page.goto(`${url(DAY)}?camera=A&has=24X`);
    const said = page.locator(".filters .shown");
    expect(await said.textContent()).toMatch(
      /^No clip has \u201824X\u2019 with these filters: Camera A\. Take a filter off, show all/,
    );
    expect(await page.locator("#filter-words").inputValue()).toBe("24X");
    expect(await page.locator("#takes-table").isVisible()).toBe(false);
    await page.locator(".show-all").focus();
    await page.keyboard.press("Enter");
    expect(await said.textContent()).toMatch(/^All \d+ clips shown\.$/);
    expect(await page.locator("#takes-table").isVisible()).toBe(true);
  });

  it("from a link with a lens of another day show nothing, and name it", async () => {
    await page.goto(`${url(EDITORIAL)}?lens=NONE9`);
    expect(await page.locator(".filters .shown").textContent()).toContain("No clip has these filters together: lens NONE9.");
  });

  it("leave paper with the words that say it is a part", async () => {
    await page.goto(`${url(DAY)}?camera=B`);
    await page.emulateMedia({ media: "print" });
    expect(await page.locator(".filters .shown").isVisible()).toBe(true);
    expect(await page.locator(".chip:visible, .take-away:visible").count()).toBe(0);
    await page.goto(url(DAY));
    expect(await page.locator(".filters .shown").isVisible()).toBe(false);
    await page.emulateMedia({ media: "screen" });
  });
});

describe("scenes of the editorial page", () => {
  const headings = (table: string) => page.locator(`${table} .group-row:visible .of`).allTextContents();
  const links = () => page.getByRole("navigation", { name: "Scenes of the circled takes" }).getByRole("link").allTextContents();

  it("stand as headings that links lead to, without a script too", async () => {
    const plain = await browser.newContext({ javaScriptEnabled: false });
    const still = await plain.newPage();
    await still.goto(url(EDITORIAL));
    await still.getByRole("navigation", { name: "Scenes of the circled takes" }).getByRole("link", { name: "Scene 27" }).click();
    expect(await still.locator("tr:target .of").textContent()).toBe("Scene 27");
    expect(await still.locator("#circled-table th:text-is('Scene')").isVisible()).toBe(false);
    await plain.close();
  });

  it("go with the chips: a heading without rows and the link to it are put away, and no count is left that is untrue", async () => {
    await page.goto(url(EDITORIAL));
    const all = await headings("#circled-table");
    expect(all.length).toBeGreaterThan(2);
    expect(await links()).toEqual(all);
    expect(await page.locator("#circled-table .group-row .count:visible").count()).toBe(all.length);
    await page.locator(".chip", { hasText: "Scene 15" }).click();
    expect(await headings("#circled-table")).toEqual(["Scene 15"]);
    expect(await headings("#others-table")).toEqual(["Scene 15"]);
    expect(await links()).toEqual(["Scene 15"]);
    expect(await page.locator(".group-row .count:visible").count()).toBe(0);
    await page.locator(".show-all").click();
    expect(await links()).toEqual(all);
  });

  it("become a column while rows are sorted, and the whole table is copied with it, sorted or not", async () => {
    await page.goto(url(EDITORIAL));
    const line = page.locator('.take-away[data-table="circled-table"]');
    const copied = async () => {
      await page.evaluate(() => navigator.clipboard.writeText(""));
      await line.getByText("Copy rows as TSV").click();
      await expect.poll(() => page.evaluate(() => navigator.clipboard.readText())).toContain("Scene\tSlate");
      const text = await page.evaluate(() => navigator.clipboard.readText());
      return text.trimEnd().split(/\r?\n/).slice(1);
    };
    const before = await copied();
    expect(before).toHaveLength(await page.locator("#circled-table tbody tr:not(.group-row)").count());
    await page.locator("#circled-table .sort", { hasText: "Roll" }).click();
    expect(await headings("#circled-table")).toEqual([]);
    expect(await page.locator("#circled-table td.of-group:visible").allTextContents()).toHaveLength(before.length);
    expect(await page.getByRole("navigation", { name: "Scenes of the circled takes" }).isVisible()).toBe(false);
    const sorted = await copied();
    expect([...sorted].sort()).toEqual([...before].sort());
    await page.locator("#circled-table .sort", { hasText: "Roll" }).click();
    await page.locator("#circled-table .sort", { hasText: "Roll" }).click();
    expect(await copied()).toEqual(before);
    expect(await line.locator("[role=status]").textContent()).toContain("Copied");
  });
});

describe("all findings", () => {
  const shown = () => page.locator(".listed .findings > li:visible").count();

  it("are filtered by chips and words, with the state in the address; sections without one are put away", async () => {
    await page.goto(url("findings.html"));
    const all = await shown();
    const sections = await page.locator(".listed:visible").count();
    await page.locator(".chip", { hasText: "Errors" }).click();
    await page.waitForURL(/\?severity=error$/);
    const errors = await shown();
    expect(errors).toBe(await page.locator(".listed .findings > .is-sev-error").count());
    expect(errors).toBeLessThan(all);
    expect(await page.locator(".filters .shown").textContent()).toBe(`${errors} of ${all} findings shown: Errors.`);
    expect(await page.locator(".listed:visible").count()).toBeLessThan(sections);
    // heads count what is there on the day, which is no longer what is shown
    expect(await page.locator(".listed > header p:visible").count()).toBe(0);
    await page.reload();
    expect(await shown()).toBe(errors);
    await page.locator(".show-all").click();
    expect(await shown()).toBe(all);
    expect(await page.locator(".listed:visible").count()).toBe(sections);
  });

  it("are opened at a code from an address, and say when nothing is left and the way out", async () => {
    await page.goto(`${url("findings.html")}?code=CSV122`);
    expect(await page.locator(".chip", { hasText: "CSV122" }).isVisible()).toBe(true);
    const own = page.locator(".listed .findings > li:visible .code");
    expect(new Set(await own.allTextContents())).toEqual(new Set(["CSV122"]));
    await page.locator("#filter-words").fill("no such words");
    expect(await shown()).toBe(0);
    expect(await page.locator(".filters .shown").textContent()).toBe(
      "No finding has \u2018no such words\u2019 with these filters: CSV122 Not a number. Take a filter off, or show all.",
    );
    await page.locator(".show-all").click();
  });

  it("are all there without a script, and lead to the file of all", async () => {
    const plain = await browser.newContext({ javaScriptEnabled: false });
    const still = await plain.newPage();
    await still.goto(url("findings.html"));
    expect(await still.locator(".filters:visible").count()).toBe(0);
    const file = readFileSync(join(out, "findings.all.csv"), "utf8").trimEnd().split("\n");
    expect(await still.locator(".listed .findings > li:visible").count()).toBe(file.length - 1);
    expect(await still.locator(".all-findings a").getAttribute("href")).toBe("findings.all.csv");
    await plain.close();
  });
});

describe("all takes", () => {
  const column = async (n: number) =>
    (await page.locator(`#all-takes-table tbody tr:not(.group-row):visible > :nth-child(${n})`).allTextContents()).map((t) =>
      t.trim(),
    );

  it("are sorted by day in shooting order, by clip and by lens, and filtered", async () => {
    await page.goto(url("takes.html"));
    const slates = await column(1);
    await page.locator("#all-takes-table .sort", { hasText: "Day" }).click();
    const shot = ["2026-10-06", "2026-10-07", "2026-10-08"].flatMap((date) => {
      const takes: { address: string; clip: string }[] = JSON.parse(
        readFileSync(join(out, `packs/${date}/day.json`), "utf8"),
      ).takes;
      // a row with an address that an earlier row has gets no page
      return takes.filter((take, i) => takes.findIndex((other) => other.address === take.address) === i).map(({ clip }) => clip);
    });
    expect(await column(4)).toEqual(shot);
    await page.locator("#all-takes-table .sort", { hasText: "Clip" }).click();
    expect(await column(4)).toEqual([...shot].sort());
    await page.locator("#all-takes-table .sort", { hasText: "Lens" }).click();
    expect((await column(6))[0]).toBe("K19");
    await page.locator(".chip", { hasText: "Day 12" }).click();
    expect(new Set(await column(2))).toEqual(new Set(["Day 12"]));
    await page.waitForURL(/\?day=2026-10-07$/);
    await page.locator(".show-all").click();
    for (let i = 0; i < 2; i++) await page.locator("#all-takes-table .sort", { hasText: "Lens" }).click();
    expect(await column(1)).toEqual(slates);
  });

  it("keep their anchors without a script", async () => {
    const plain = await browser.newContext({ javaScriptEnabled: false });
    const still = await plain.newPage();
    await still.goto(url("takes.html"));
    await still.getByRole("navigation", { name: "Slates" }).getByRole("link", { name: "33", exact: true }).click();
    expect(await still.locator("tr:target .of").textContent()).toBe("33");
    await plain.close();
  });
});

describe("taking rows away", () => {
  it("copies the rows shown, and an editor's list from the editorial page", async () => {
    await page.goto(`${url(EDITORIAL)}?camera=B`);
    const line = page.locator('.take-away[data-table="circled-table"]');
    await line.getByText("Copy rows as TSV").click();
    const rows = await page.locator("#circled-table tbody tr:not(.group-row):visible").count();
    await expect.poll(() => line.locator("[role=status]").textContent()).toBe(`Copied ${rows} rows.`);
    const [head, ...lines] = (await page.evaluate(() => navigator.clipboard.readText()))
      .split(/\r?\n/)
      .map((row) => row.split("\t"));
    expect(head).toEqual([
      ...["Scene", "Slate", "Take", "Camera", "Clip", "Roll", "TC in", "TC out", "Duration, frames", "Circled", "Remarks"],
    ]);
    expect(lines).toHaveLength(rows);
    for (const cells of lines) expect([cells[3], cells[9], cells.length]).toEqual(["B", "yes", 11]);
  });

  it("selects the text where the browser does not let a page copy", async () => {
    await page.goto(url(EDITORIAL));
    await page.evaluate(() => {
      Object.defineProperty(navigator, "clipboard", { value: undefined });
      document.execCommand = () => false;
    });
    const line = page.locator('.take-away[data-table="others-table"]');
    await line.getByText("Copy rows as TSV").click();
    const field = line.locator("textarea");
    expect(await field.evaluate((f: HTMLTextAreaElement) => f.value.slice(f.selectionStart, f.selectionEnd) === f.value)).toBe(
      true,
    );
    expect(await field.inputValue()).toContain("Scene\tSlate\tTake");
    expect(await line.locator("[role=status]").textContent()).toContain("press Ctrl C");
  });

  it("gives a table without a file of its own as CSV, in the units that the page shows", async () => {
    await page.goto(url(DAY));
    await page.locator("label[for=units-imperial]").click();
    const waiting = page.waitForEvent("download");
    await page.locator('.take-away[data-table="lens-use-table"]').getByText("Download rows as CSV").click();
    const file = await waiting;
    expect(file.suggestedFilename()).toBe("2026-10-06-index-lens-use-table.csv");
    const [head = "", ...rows] = readFileSync(await file.path(), "utf8")
      .trimEnd()
      .split("\n");
    expect(head).toBe("\ufeffLens,Clips,Length (frames),Length (min:s),Focal length,Stop,Focus (ft in)");
    expect(rows).toHaveLength(await page.locator("#lens-use-table tbody tr").count());
    expect(rows[0]).toContain(`""`);
    await page.locator("label[for=units-metric]").click();
  });

  it("is offered by every table: a file or the rows", async () => {
    const paths = pagesOf(out).map((built) => built.path);
    expect(paths).not.toEqual([]);
    for (const path of paths) {
      const html = readFileSync(join(out, path), "utf8");
      const tables = [...html.matchAll(/<table\b[^>]*>/g)].map(([tag]) => tag).filter((tag) => !tag.includes('class="calendar"'));
      for (const tag of tables) {
        const id = /\sid="([^"]+)"/.exec(tag)?.[1];
        expect(id, `${path}: ${tag}`).toBeDefined();
        expect(html, `${path}: ${tag}`).toContain(`class="take-away" data-table="${id}"`);
      }
    }
  });
});

describe("hashes", () => {
  const inputs = new Map(
    readFileSync(join(out, "inputs.csv"), "utf8")
      .trimEnd()
      .split("\n")
      .flatMap((line) => {
        const hash = /\b[0-9a-f]{64}\b/.exec(line)?.[0];
        const file = /\b[\w./-]+\.(?:csv|yaml|jsonl|png)\b/.exec(line)?.[0];
        return hash === undefined || file === undefined ? [] : [[file, hash] as const];
      }),
  );

  it.each([
    ["about.html", "#show-inputs"],
    ["about.html", "#day-inputs"],
  ])("stand whole on %s in eight groups of eight, and are selected and copied as one word", async (path, table) => {
    await page.goto(url(path));
    const rows = page.locator(`${table} tbody tr`);
    const shown = await rows.evaluateAll((all) =>
      all.map((row) => {
        const hash = row.querySelector<HTMLElement>(".hash") as HTMLElement;
        getSelection()?.selectAllChildren(hash);
        const groups = [...hash.querySelectorAll("span")].map((group) => group.textContent ?? "");
        const file = row.querySelector("th")?.textContent ?? "";
        return { file, groups, selected: getSelection()?.toString() ?? "" };
      }),
    );
    expect(shown.length).toBeGreaterThan(5);
    for (const { file, groups, selected } of shown) {
      expect(groups.map((group) => group.length)).toEqual([8, 8, 8, 8, 8, 8, 8, 8]);
      expect(groups.join(""), file).toBe(inputs.get(file));
      expect(selected, file).toBe(inputs.get(file));
    }
    await page
      .locator(`.take-away[data-table="${table.slice(1)}"]`)
      .getByText("Copy rows as TSV")
      .click();
    const [, ...lines] = (await page.evaluate(() => navigator.clipboard.readText())).split(/\r?\n/);
    expect(lines[0]?.split("\t")).toContain(inputs.get(shown[0]?.file ?? ""));
  });

  it("break between two groups, and paths after a folder, on paper and on a phone", async () => {
    for (const [media, width] of [
      ["print", 660],
      ["screen", 360],
    ] as const) {
      await page.setViewportSize({ width, height: 800 });
      await page.emulateMedia({ media });
      await page.goto(url("about.html"));
      const broken = await page
        .locator("#day-inputs .hash span, #day-inputs .path span")
        .evaluateAll((pieces) => pieces.filter((piece) => piece.getClientRects().length > 2).map((piece) => piece.textContent));
      expect(broken).toEqual([]);
      const lines = await page
        .locator("#day-inputs .hash")
        .evaluateAll((cells) => [
          ...new Set(
            cells.map(
              (cell) =>
                new Set([...cell.querySelectorAll("span")].map((group) => Math.round(group.getBoundingClientRect().top))).size,
            ),
          ),
        ]);
      expect(lines, media).toEqual([2]);
    }
    await page.emulateMedia({ media: "screen" });
    await page.setViewportSize({ width: 1280, height: 720 });
  });
});

describe("units", () => {
  const TAKE = "days/2026-10-06/takes/a-14b-2.html";
  const day = JSON.parse(readFileSync(join(out, "packs/2026-10-06/day.json"), "utf8"));

  it("are the reader's on every page after one choice, without a rebuild, also in drawings and in the live readout", async () => {
    await page.goto(url(TAKE));
    const shownText = async () => (await page.locator(".readout dd").first().allInnerTexts()).join("");
    expect(await shownText()).toMatch(/\d\sm/);
    await page.locator("#units-metric").focus();
    await page.keyboard.press("ArrowRight");
    expect(await shownText()).toMatch(/\d+'\s/);
    await page.locator("#scrub").focus();
    await page.keyboard.press("ArrowRight");
    expect(await shownText()).toMatch(/\d+'\s/);
    expect(await page.locator(".ribbon > svg text:visible", { hasText: /^focus, (m|ft)$/ }).allTextContents()).toEqual([
      "focus, ft",
    ]);
    await page.getByText("Copy as text").click();
    await expect.poll(() => page.evaluate(() => navigator.clipboard.readText())).toMatch(/Focus distance: \d+'/);
    await page.goto(url(DAY));
    expect(await page.locator("#units-imperial").isChecked()).toBe(true);
    expect(await page.locator(".dm:visible").count()).toBe(0);
    expect(await page.locator(".oi:visible").count()).toBeGreaterThan(20);
    await page.locator("label[for=units-metric]").click();
  });

  it("are those of src/format for both systems, in every row of the day", async () => {
    await page.goto(url(DAY));
    const takes = new Map<string, { nearestM: number | "inf"; farthestM: number | "inf" }>(
      day.takes.flatMap((take: { address: string; focus: { nearestM: number; farthestM: number } | null }) =>
        take.focus === null ? [] : [[take.address, take.focus]],
      ),
    );
    expect(takes.size).toBeGreaterThan(20);
    for (const [address, focus] of takes) {
      const cell = page.locator(`[id="${address}"] .c-foc`);
      const texts = await cell.evaluate((value) => [".dm", ".oi"].map((cls) => value.querySelector(cls)?.textContent ?? ""));
      const bare = (text: string) => text.replaceAll("\u00a0m", "");
      expect(texts[0], address).toBe(bare(distanceRange(focus.nearestM, focus.farthestM, "metric")));
      expect(texts[1], address).toBe(distanceRange(focus.nearestM, focus.farthestM, "imperial"));
    }
  });

  it("stay the show's where the browser refuses to remember", async () => {
    const shut = await browser.newContext();
    await shut.addInitScript(() => {
      Object.defineProperty(globalThis, "localStorage", {
        get() {
          throw new Error("refused");
        },
      });
    });
    const other = await shut.newPage();
    const said: string[] = [];
    other.on("pageerror", (error) => said.push(error.message));
    await other.goto(url(TAKE));
    await other.locator("label[for=units-imperial]").click();
    expect(await other.locator("html").getAttribute("data-units")).toBe("imperial");
    await other.goto(url(DAY));
    expect(await other.locator("html").getAttribute("data-units")).toBe("metric");
    expect(said).toEqual([]);
    await shut.close();
  });
});

describe("links beside heads", () => {
  it("copy the address below the report's folder, and show where they lead by more than colour", async () => {
    await page.goto(`${url(DAY)}?camera=A`);
    await page.getByLabel("Link to Totals").focus();
    await page.keyboard.press("Enter");
    await expect.poll(() => page.evaluate(() => navigator.clipboard.readText())).toBe(`${DAY}?camera=A#totals`);
    expect(page.url()).toMatch(/#totals$/);
    expect(await page.locator("#totals").evaluate((head) => getComputedStyle(head).boxShadow)).not.toBe("none");
    await page.goto(`${url(DAY)}#a-14-2`);
    expect(await page.locator("#a-14-2").evaluate((row) => getComputedStyle(row).outlineStyle)).toBe("solid");
  });
});

describe("findings", () => {
  it("show the lines that the command prints, with the same carets", () => {
    const root = fileURLToPath(new URL("../..", import.meta.url));
    const run = spawnSync(
      process.execPath,
      [join(root, "dist/cli/main.js"), "check", join(root, "data"), "--max-findings", "0", "--verbose"],
      {
        encoding: "utf8",
      },
    );
    const printed = `${run.stdout}${run.stderr}`;
    const frames = pagesOf(out)
      .filter(({ path }) => /days\/.*\/(findings|takes\/[^/]*)\.html$/.test(path))
      .flatMap(({ html }) => [...html.matchAll(/<pre class="code-frame"[^>]*>([\s\S]*?)<\/pre>/g)].map(([, text = ""]) => text))
      .map((text) => unescapeHtml(text.replace(/<[^>]+>/g, "")).trimEnd());
    expect(frames.length).toBeGreaterThan(20);
    for (const frame of frames) expect(printed).toContain(frame);
  });
});

describe("a page at work", () => {
  const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

  it.each(["light", "dark"] as const)(
    "has no accessibility violation that axe finds, sorted and filtered, in %s",
    async (scheme) => {
      await page.emulateMedia({ colorScheme: scheme });
      for (const path of [
        `${url(DAY)}?circled`,
        `${url(EDITORIAL)}?has=24X`,
        url("days/2026-10-06/findings.html"),
        `${url("findings.html")}?code=CSV122`,
        url("takes.html"),
      ]) {
        await page.goto(path);
        const head = page.locator(".sort:visible").first();
        if ((await head.count()) > 0) await head.click();
        await page.evaluate(axe);
        const wrong = await page.evaluate(async () => {
          const run = (
            globalThis as unknown as { axe: { run(): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> } }
          ).axe;
          return (await run.run()).violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.html).join(" | ")}`);
        });
        expect(wrong, path).toEqual([]);
      }
    },
  );
});
