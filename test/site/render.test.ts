import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join, normalize } from "node:path";
import { HtmlValidate } from "html-validate";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { ShowInput } from "../../src/ingest/records.ts";
import { copyAssets, renderPages } from "../../src/site/render.ts";
import { digestDay } from "../../src/summary/digest.ts";
import type { PageSet, StillFiles } from "../../src/view/context.ts";
import { dayPages } from "../../src/view/day-pages.ts";
import { showPages } from "../../src/view/show-pages.ts";
import { exampleDaySummary } from "../fixtures/day-summary.ts";
import { emptyDay, exampleContext } from "../fixtures/site-context.ts";

const summary = exampleDaySummary();
/** A still as the build writes it for the take with a calibrated lens. */
const STILL: StillFiles = {
  ...{ name: "12-2-a.png", path: `days/${summary.date}/stills/12-2-a.png`, bytes: 48_213, size: { widthPx: 480, heightPx: 270 } },
  shadingOff: `days/${summary.date}/stills/a-12-2-shading-off.png`,
  distortionOff: `days/${summary.date}/stills/a-12-2-distortion-off.png`,
  bothOff: `days/${summary.date}/stills/a-12-2-look-off.png`,
  whyNone: "",
};
const PICTURES = [STILL.path, STILL.shadingOff, STILL.distortionOff, STILL.bothOff].filter((path) => path !== null);
const context = exampleContext(summary, {
  stills: new Map([
    ["a-12-2", STILL],
    ["b-12-2", { ...STILL, shadingOff: null, distortionOff: null, bothOff: null }],
    ["a-15-1", { ...STILL, size: null, shadingOff: null, distortionOff: null, bothOff: null }],
  ]),
});
const digest = digestDay(summary, context.packFiles);
const show: ShowInput = { show: summary.show, kit: summary.kit, dates: [summary.date], files: [] };
const out = mkdtempSync(join(tmpdir(), "daybook-site-"));
const pages = new Map<string, string>();

function read(folder: string): ReadonlyMap<string, string> {
  const names = readdirSync(folder, { recursive: true, encoding: "utf8" }).filter((name) => name.endsWith(".html"));
  return new Map(names.sort().map((name) => [name.replaceAll("\\", "/"), readFileSync(join(folder, name), "utf8")]));
}

beforeAll(async () => {
  await renderPages(dayPages(summary, context), out);
  await renderPages(
    showPages([digest], show, { ...context, days: [{ date: summary.date, day: 9 }], showFindings: digest.findings }),
    out,
  );
  await copyAssets(out);
  for (const path of PICTURES) {
    mkdirSync(dirname(join(out, path)), { recursive: true });
    writeFileSync(join(out, path), "");
  }
  for (const [name, html] of read(out)) pages.set(name, html);
}, 60_000);
afterAll(() => rmSync(out, { recursive: true, force: true }));

const TABLES = new Set(["inputs.csv", "findings.all.csv"]);

describe("rendered site", () => {
  it("gives back the paths it wrote", async () => {
    const again = mkdtempSync(join(tmpdir(), "daybook-site-"));
    const written = await renderPages(dayPages(summary, context), again);
    expect(written).toEqual([...read(again).keys()]);
    for (const [name, html] of read(again)) expect(html, name).toBe(pages.get(name));
    rmSync(again, { recursive: true, force: true });
  });

  it("is valid HTML", async () => {
    const validator = new HtmlValidate({
      extends: ["html-validate:recommended", "html-validate:a11y"],
      rules: {
        "void-style": "off",
        "no-trailing-whitespace": "off",
        "long-title": "off",
        // The rows of the day become blocks on a narrow screen; without the roles they would stop being a table there.
        "no-redundant-role": "off",
        // The list of takes found belongs to the box that is typed in: a select cannot be that.
        "prefer-native-element": ["error", { exclude: ["listbox"] }],
      },
    });
    for (const [name, html] of pages) {
      const report = await validator.validateString(html, name);
      expect(report.results.flatMap((r) => r.messages.map((m) => `${name}:${m.line} ${m.ruleId} ${m.message}`))).toEqual([]);
    }
  });

  it("has one first heading, landmarks, a skip link and ids that are unique on each page", () => {
    for (const [name, html] of pages) {
      expect(html.match(/<h1[ >]/g), name).toHaveLength(1);
      expect(html, name).toMatch(/<a class="skip" href="#main">/);
      for (const landmark of ["<header", '<nav class="crumbs"', '<main id="main">', "<footer"])
        expect(html, name).toContain(landmark);
      const ids = [...html.matchAll(/\sid="([^"]*)"/g)].map((m) => m[1]);
      expect(new Set(ids).size, name).toBe(ids.length);
    }
    const titles = [...pages.values()].map((html) => /<title>(.*?)<\/title>/.exec(html)?.[1]);
    expect(new Set(titles).size).toBe(titles.length);
  });

  it("gives every table a caption, every head cell a scope, every scroll box a name and the keyboard", () => {
    for (const [name, html] of pages) {
      expect(html.match(/<caption/g)?.length ?? 0, name).toBe(html.match(/<table/g)?.length ?? 0);
      for (const [cell] of html.matchAll(/<th\b[^>]*>/g)) expect(cell, name).toContain("scope=");
      for (const [box] of html.matchAll(/<(?:div|figure) class="(?:table|plot)-box[^>]*>/g)) {
        expect(box, name).toMatch(/tabindex="0" role="group" aria-label/);
      }
    }
  });

  it("links only to what exists, by relative addresses that end in a file", () => {
    const packs = new Set(context.packFiles.map((file) => `packs/${summary.date}/${file.name}`));
    for (const [name, html] of pages) {
      for (const match of html.matchAll(/\s(?:href|src)="([^"]*)"/g)) {
        const [path = "", fragment] = (match[1] ?? "").split("#");
        expect(path, name).not.toMatch(/^(\/|[a-z]+:)|\/$/);
        const target = path === "" ? name : normalize(join(dirname(name), decodeURIComponent(path))).replaceAll("\\", "/");
        // The day before is not rendered here, and the tables beside the pages are the build's.
        if (packs.has(target) || TABLES.has(target) || target.includes("2031-05-05")) continue;
        expect(existsSync(join(out, target)), `${name} -> ${target}`).toBe(true);
        if (fragment !== undefined)
          expect(pages.get(target)?.includes(` id="${fragment}"`), `${name} -> ${target}#${fragment}`).toBe(true);
      }
    }
  });

  it("forbids the network and names the build by its content, not by a clock", () => {
    for (const [name, html] of pages) {
      expect(html, name).toContain("default-src 'none'");
      expect(html, name).toContain("0123456789ab");
      expect(html, name).not.toMatch(/https?:\/\/(?!www\.w3\.org\/1998\/Math\/MathML)/);
    }
  });

  it("shows a take's still under the drawing of its lens look, or by itself, or as a file", () => {
    const look = (address: string) => pages.get(`days/${summary.date}/takes/${address}.html`) ?? "";
    expect(look("a-12-2").match(/<image class="(?:un)?shaded" href="[^"]*" x=/g)).toEqual([
      '<image class="shaded" href="../stills/12-2-a.png" x=',
      '<image class="unshaded" href="../stills/a-12-2-shading-off.png" x=',
      '<image class="shaded" href="../stills/a-12-2-distortion-off.png" x=',
      '<image class="unshaded" href="../stills/a-12-2-look-off.png" x=',
    ]);
    expect(look("b-12-2")).toMatch(
      /<img src="\.\.\/stills\/12-2-a\.png" width="480" height="270" alt="Still 12-2-a\.png of 12 take 2 B">/,
    );
    expect(look("a-15-1")).not.toMatch(/<image|<img/);
    expect(look("a-15-1")).toContain('<a href="../stills/12-2-a.png">Still 12-2-a.png</a>');
  });

  it("shows the caution on hours where hours are, and on mass where masses are", () => {
    expect(pages.get(`days/${summary.date}/production.html`)).toContain("a record, not a legal finding");
    expect(pages.get("kit.html")).toContain("not an engineering approval");
    expect(pages.get(`days/${summary.date}/takes/a-12-2.html`)).toContain("not a safety distance");
  });

  it("stays light: a take below 60 KB, a day below 400 KB", () => {
    for (const [name, html] of pages) {
      if (name.includes("/takes/")) expect(html.length, name).toBeLessThan(60_000);
      if (name.endsWith("index.html")) expect(html.length, name).toBeLessThan(400_000);
    }
  });
});

describe("renderPages", () => {
  it("renders a day with nothing in it", async () => {
    const empty = emptyDay(summary);
    const folder = mkdtempSync(join(tmpdir(), "daybook-site-"));
    const written = await renderPages(dayPages(empty, exampleContext(empty, { packFiles: [], days: [] })), folder);
    expect(written).toHaveLength(4);
    expect(readFileSync(join(folder, `days/${empty.date}/index.html`), "utf8")).toContain("No takes.");
    await renderPages(
      showPages([], { ...show, kit: { modes: [], lenses: [], calibration: new Map() } }, { ...context, days: [] }),
      folder,
    );
    expect(readFileSync(join(folder, "index.html"), "utf8")).toContain("No shooting day yet.");
    rmSync(folder, { recursive: true, force: true });
  });

  it("refuses a model that lacks what its template prints, and says which template", async () => {
    const [page] = dayPages(summary, context).vfx ?? [];
    const { title: _, ...lacking } = page as NonNullable<typeof page>;
    const folder = mkdtempSync(join(tmpdir(), "daybook-site-"));
    await expect(renderPages({ vfx: [lacking] } as unknown as PageSet, folder)).rejects.toThrow(/vfx\.njk|base\.njk/);
    rmSync(folder, { recursive: true, force: true });
  });
});
