/** Check values of the lens look. Each case is a test named by its id and source; no expected value is this program's own output. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { type Input, LENS_QUANTITIES } from "./lens-quantities.ts";

interface Case {
  readonly id: string;
  readonly source: string;
  readonly unit: string;
  readonly tolerance: number;
  readonly checks: readonly { readonly quantity: string; readonly input: Input; readonly expected: number | readonly number[] }[];
}

const FILES = ["lens-distortion", "lens-shading", "lens-calibration", "lens-pulls"];

function load(name: string): { readonly title: string; readonly cases: readonly Case[] } {
  return JSON.parse(readFileSync(new URL(`../reference/${name}.json`, import.meta.url), "utf8"));
}

describe.each(FILES)("published and derived values of %s", (name) => {
  it.each(load(name).cases.map((c) => [c.id, c.source, c] as const))("%s: %s", (_id, _source, c) => {
    expect(c.checks.length).toBeGreaterThan(0);
    for (const check of c.checks) {
      const got = [LENS_QUANTITIES[check.quantity]!(check.input)].flat();
      const expected = [check.expected].flat();
      expect(got).toHaveLength(expected.length);
      expected.forEach((value, i) => {
        expect(
          Math.abs(got[i]! - value),
          `${check.quantity} ${JSON.stringify(check.input)}: ${got[i]} for ${value}`,
        ).toBeLessThanOrEqual(c.tolerance);
      });
    }
  });
});

it("holds every check value of the lens look that has one", () => {
  const ids = FILES.flatMap((name) => load(name).cases.map((c) => c.id.split(" ")[0]));
  const wanted = "CV70 CV71 CV72 CV73 CV79 CV80 CV81 CV82 CV83 CV85 CV90 CV92 CV93 CV96 CV100 CV101 CV104 CV110 CV111 CV113";
  expect([...new Set(ids)].sort()).toEqual(wanted.split(" ").sort());
});
