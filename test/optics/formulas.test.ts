import { describe, expect, test } from "vitest";
import { FORMULAS, formulaById } from "../../src/optics/formulas.ts";

/** Figures of the day's report name these in `from`. */
const NAMED_BY_FIGURES = [
  "hyperfocal",
  "depth-of-field",
  "angle-of-view",
  "stops-between",
  "shooting-ratio",
  "pages-in-eighths",
  "transmittance",
  "t-from-f",
  "f-from-t",
  "typical-stop",
  "circle-of-confusion",
  "overscan",
  "calibration-coverage",
];

/** Tags in order, each closed by its like: enough to see that hand-made markup nests. */
function isWellFormed(markup: string): boolean {
  const open: string[] = [];
  for (const [, slash, name] of markup.matchAll(/<(\/?)([a-z]+)[^>]*>/g)) {
    if (!slash) open.push(name as string);
    else if (open.pop() !== name) return false;
  }
  return open.length === 0 && !/&(?!#?\w+;)/.test(markup);
}

test("every id is there once, in lower case with hyphens", () => {
  const ids = FORMULAS.map((f) => f.id);
  expect(new Set(ids).size).toBe(ids.length);
  expect(ids.filter((id) => !/^[a-z0-9]+(-[a-z0-9]+)*$/.test(id))).toEqual([]);
});

test("what figures name can be looked up, and a name nobody knows is null", () => {
  expect(NAMED_BY_FIGURES.filter((id) => formulaById(id)?.id !== id)).toEqual([]);
  expect(formulaById("no-such-formula")).toBeNull();
});

describe("every formula", () => {
  test.each(FORMULAS.map((f) => [f.id, f] as const))("%s says what it is, when it holds and where it is from", (_id, f) => {
    for (const text of [f.title, f.expression, f.validity, f.source]) expect(text.trim()).not.toBe("");
    expect(f.title.endsWith(".")).toBe(false);
    for (const { symbol, meaning } of f.symbols) expect(`${symbol}${meaning}`.trim()).not.toBe("");
  });

  test.each(FORMULAS.map((f) => [f.id, f.mathml] as const))("%s has one whole MathML element", (_id, mathml) => {
    expect(mathml.startsWith("<math")).toBe(true);
    expect(mathml.endsWith("</math>")).toBe(true);
    expect(mathml.match(/<math/g)).toHaveLength(1);
    expect(isWellFormed(mathml)).toBe(true);
    // A hyphen is not a minus.
    expect(mathml).not.toContain("<mo>-</mo>");
  });
});
