import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { TEMPLATES_DIR } from "../src/site/templates.ts";
import { PAGE_KINDS } from "../src/view/context.ts";

const files = readdirSync(TEMPLATES_DIR, { recursive: true, encoding: "utf8" }).filter((file) => file.endsWith(".njk"));
const tags = files.flatMap((file) => {
  const text = readFileSync(join(TEMPLATES_DIR, file), "utf8").replace(/\{#[\s\S]*?#\}/g, "");
  return [...text.matchAll(/\{\{([\s\S]*?)\}\}|\{%([\s\S]*?)%\}/g)].map((m) => ({ file, tag: (m[1] ?? m[2] ?? "").trim() }));
});
const withoutTexts = (tag: string) => tag.replace(/"[^"]*"/g, '""');

describe("templates", () => {
  it("exist for every kind of page and for no other", () => {
    const kinds = readdirSync(join(TEMPLATES_DIR, "pages")).map((name) => name.replace(/\.njk$/, ""));
    expect(kinds.sort()).toEqual([...PAGE_KINDS].sort());
  });

  it("loop, test a flag and print: no comparison, no arithmetic, no logic", () => {
    for (const { file, tag } of tags) {
      const bare = withoutTexts(tag);
      expect(bare, `${file}: ${tag}`).not.toMatch(/[=<>+*%/]|\s-\s|(?<![\w.])(and|or|not|is|set|elif|range|loop)\b/);
      if (/^if\b/.test(bare)) expect(bare, `${file}: ${tag}`).toMatch(/^if [\w.]+$/);
      if (/^for\b/.test(bare)) expect(bare, `${file}: ${tag}`).toMatch(/^for \w+ in [\w.]+$/);
    }
  });

  it("use no filter but safe, and safe for drawings and formulas only", () => {
    const filtered = tags.filter(({ tag }) => withoutTexts(tag).includes("|"));
    for (const { file, tag } of filtered) {
      expect(tag, file).toMatch(/^[\w.]*(svg|dots|ribbon|ribbonAxis|clock|clockNarrow|timeScale|mathml) \| safe$/);
    }
  });

  it("reach nothing by an absolute address", () => {
    for (const file of files) expect(readFileSync(join(TEMPLATES_DIR, file), "utf8"), file).not.toMatch(/https?:|(?:href|src)="\//);
  });
});

describe("style sheets", () => {
  const sheets = readdirSync(join(TEMPLATES_DIR, "assets")).filter((name) => name.endsWith(".css"));
  const tokens = readFileSync(join(TEMPLATES_DIR, "assets/tokens.css"), "utf8");

  it("fetch nothing", () => {
    for (const name of sheets) {
      expect(readFileSync(join(TEMPLATES_DIR, "assets", name), "utf8"), name).not.toMatch(/url\(|@import|@font-face/);
    }
  });

  it("take every colour from the tokens", () => {
    for (const name of sheets.filter((n) => n !== "tokens.css")) {
      expect(readFileSync(join(TEMPLATES_DIR, "assets", name), "utf8"), name).not.toMatch(
        /#[0-9a-f]{3,8}\b(?![\w-])|rgba?\(|hsla?\(/i,
      );
    }
  });

  it.each([
    ["light", /:root \{([\s\S]*?)\n\}/],
    ["dark by the system", /prefers-color-scheme: dark\) \{\s*:root:not\(\[data-theme="light"\]\) \{([\s\S]*?)\}/],
    ["dark by choice", /\n:root\[data-theme="dark"\] \{([\s\S]*?)\}/],
    ["print", /@media print \{([\s\S]*?)\n\}/],
  ])("have the contrast that WCAG 2 asks for: %s", (_, block) => {
    const body = block.exec(tokens)?.[1] ?? "";
    const colour = (name: string) => new RegExp(`--${name}: *(#[0-9A-Fa-f]{6})`).exec(body)?.[1] ?? "";
    for (const ground of ["paper", "sheet"]) {
      for (const text of ["ink", "ink-2", "ink-3", "focus", "stop", "error", "check"]) {
        expect(contrast(colour(text), colour(ground)), `${text} on ${ground}`).toBeGreaterThanOrEqual(4.5);
      }
      for (const line of ["edge", "focus-limit"]) {
        expect(contrast(colour(line), colour(ground)), `${line} on ${ground}`).toBeGreaterThanOrEqual(3);
      }
    }
    expect(contrast(colour("ink"), colour("mark"))).toBeGreaterThanOrEqual(4.5);
    expect(contrast(colour("ink-2"), colour("mark"))).toBeGreaterThanOrEqual(4.5);
    for (const [line, band] of [
      ["focus", "focus-band"],
      ["focus-limit", "focus-band"],
      ["stop", "stop-band"],
    ] as const) {
      expect(contrast(colour(line), colour(band)), `${line} on ${band}`).toBeGreaterThanOrEqual(3);
    }
  });
});

/** WCAG 2.2, "contrast ratio" and "relative luminance". */
function contrast(a: string, b: string): number {
  const [light = 0, dark = 0] = [luminance(a), luminance(b)].sort((x, y) => y - x);
  return (light + 0.05) / (dark + 0.05);
}

function luminance(hex: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((i) => {
    const c = Number.parseInt(hex.slice(i, i + 2), 16) / 255;
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}
