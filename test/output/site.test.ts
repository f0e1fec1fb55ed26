/** The demo's built site: what every reader relies on, whatever page. */
import { existsSync, readFileSync } from "node:fs";
import { dirname, join, normalize } from "node:path";
import { HtmlValidate } from "html-validate";
import { describe, expect, inject, it } from "vitest";
import { attributeValues, filesOf, pagesOf } from "../helpers/built-site.ts";
import { pagesToLookAt } from "../helpers/demo-pages.ts";

const out = inject("demoOut");
const pages = pagesOf(out);
const byPath = new Map(pages.map((page) => [page.path, page]));

describe("every page of the demo", () => {
  it("exists in all kinds", () => {
    const kinds = ["index", "kit", "methods", "findings", "takes", "scenes", "plates", "clips", "production", "about"]
      .map((name) => `${name}.html`)
      .concat(["index", "editorial", "vfx", "production", "findings"].map((name) => `days/2026-10-06/${name}.html`));
    for (const path of kinds) expect(byPath.has(path), path).toBe(true);
    expect(pages.filter((page) => page.path.includes("/takes/")).length).toBeGreaterThan(50);
    expect(pages.filter((page) => page.path.startsWith("lenses/")).length).toBe(9);
  });

  it("links only to files and anchors that exist, relatively, never to a folder or to the network", () => {
    const wrong: string[] = [];
    for (const page of pages) {
      const links = [...attributeValues(page.html, "href"), ...attributeValues(page.html, "src")];
      for (const link of links) {
        if (link.startsWith("data:")) continue;
        if (/^([a-z]+:|\/)/i.test(link)) {
          wrong.push(`${page.path}: ${link} is not relative`);
          continue;
        }
        const [path, anchor] = link.split("#") as [string, string | undefined];
        const target = path === "" ? page.path : normalize(join(dirname(page.path), decodeURIComponent(path)));
        if (!existsSync(join(out, target)) || target.endsWith("/") || !/\.[a-z0-9]+$/i.test(target))
          wrong.push(`${page.path}: ${link} leads nowhere`);
        else if (
          anchor !== undefined &&
          anchor !== "" &&
          !(byPath.get(target)?.html.includes(` id="${decodeURIComponent(anchor)}"`) ?? false)
        ) {
          wrong.push(`${page.path}: ${link} has no such anchor`);
        }
      }
    }
    expect(wrong).toEqual([]);
  });

  it("has one h1, a title of its own in the whole site, a language, and no id twice", () => {
    const titles = new Map<string, string>();
    for (const page of pages) {
      expect(page.html.match(/<h1[\s>]/g)?.length, page.path).toBe(1);
      expect(page.html, page.path).toMatch(/<html[^>]* lang="en/);
      const title = /<title>([^<]*)<\/title>/.exec(page.html)?.[1] ?? "";
      expect(titles.get(title), `${page.path} and ${titles.get(title)} share the title "${title}"`).toBeUndefined();
      titles.set(title, page.path);
      const ids = attributeValues(page.html, "id");
      expect(new Set(ids).size, `${page.path}: ${ids.filter((id, i) => ids.indexOf(id) !== i).join(" ")}`).toBe(ids.length);
    }
  });

  it("is valid HTML: the fullest of each kind, and a take without a log", async () => {
    const validate = new HtmlValidate({
      extends: ["html-validate:standard"],
      rules: { "no-inline-style": "off", "no-trailing-whitespace": "off", "svg-focusable": "off", "long-title": "off" },
    });
    const wrong: string[] = [];
    for (const path of pagesToLookAt()) {
      const report = await validate.validateString(byPath.get(path)?.html ?? "", path);
      for (const result of report.results) {
        for (const message of result.messages)
          wrong.push(`${path}:${message.line}:${message.column} ${message.ruleId} ${message.message}`);
      }
    }
    expect(wrong.slice(0, 20)).toEqual([]);
  });

  it("shows no word of a value that is not there", () => {
    const prose = new Set(["findings.html", "methods.html"]); // these explain such words
    for (const page of pages) {
      if (!prose.has(page.path))
        expect(/>[^<]*\b(undefined|NaN|null|\[object)\b[^<]*</.exec(page.html)?.[0] ?? null, page.path).toBeNull();
    }
  });

  it("has no file name that a disk or a mail could spoil", () => {
    for (const file of filesOf(out)) {
      if (file.startsWith(".")) continue;
      expect(file, file).toMatch(/^[A-Za-z0-9._/-]+$/);
      expect(file.length, file).toBeLessThan(200);
    }
  });
});

describe("the demo's packs", () => {
  it("count every log row once: read is used, unmatched and rejected together", () => {
    for (const date of ["2026-10-06", "2026-10-07", "2026-10-08"]) {
      const { rows } = JSON.parse(readFileSync(join(out, "packs", date, "day.json"), "utf8"));
      expect(rows.read, date).toBe(rows.used + rows.unmatched + rows.rejected);
      expect(rows.used, date).toBeGreaterThan(1000);
    }
  });
});
