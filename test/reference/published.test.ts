/**
 * Published and derived check values. Each case of the JSON files beside this one is a test named by its id and its source.
 * Expected values come from the named source, never from this program's own output.
 */
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { type Input, QUANTITIES } from "./quantities.ts";

interface Check {
  readonly quantity: string;
  readonly input: Input;
  readonly expected: number | string;
  readonly tolerance?: number;
}

interface Case {
  readonly id: string;
  readonly source: string;
  readonly unit: string;
  readonly tolerance: number;
  readonly note?: string;
  readonly checks: readonly Check[];
}

const FILES = ["depth-of-field", "field-of-view", "stops", "exposure", "timecode", "paperwork"];

/** Every check value these files must hold: a case that is lost is a failure, not a silence. */
const IDS = [
  "CV01 CV03 CV04 CV06 CV07 CV08 CV09 CV10 CV11 CV12 CV13 CV15 CV17 CV18 CV19",
  "CV20 CV21 CV23 CV24 CV25 CV28",
  "CV30 CV31 CV32 CV33 CV34 CV35 CV36 CV37 CV38 CV39 CV40 CV41 CV42",
  "CV50 CV51 CV52 CV54 CV55 CV56 CV57 CV58 CV60 CV61 CV62 CV63",
  "CV120 CV121 CV122 CV123 CV125 CV126 CV127",
  "CV130 CV131 CV133 CV134",
]
  .join(" ")
  .split(" ");

function load(name: string): { readonly title: string; readonly cases: readonly Case[] } {
  return JSON.parse(readFileSync(new URL(`${name}.json`, import.meta.url), "utf8"));
}

function expectValue(actual: number | string | null, check: Check, of: Case): void {
  const { expected } = check;
  const about = `${of.id} ${check.quantity} ${JSON.stringify(check.input)}`;
  if (expected === "inf") expect(actual, about).toBe(Number.POSITIVE_INFINITY);
  else if (expected === "null") expect(actual, about).toBeNull();
  else if (typeof expected === "string") expect(actual, about).toBe(expected);
  else {
    const tolerance = check.tolerance ?? of.tolerance * (of.unit === "relative" ? Math.abs(expected) : 1);
    expect(typeof actual, about).toBe("number");
    expect(Math.abs((actual as number) - expected), `${about}: ${actual} against ${expected}`).toBeLessThanOrEqual(tolerance);
  }
}

for (const file of FILES) {
  const { title, cases } = load(file);
  describe(title, () => {
    for (const c of cases) {
      test(`${c.id}: ${c.source}`, () => {
        expect(c.checks.length).toBeGreaterThan(0);
        for (const check of c.checks) {
          const quantity = QUANTITIES[check.quantity];
          if (!quantity) throw new Error(`${c.id} names a quantity nobody computes: ${check.quantity}`);
          expectValue(quantity(check.input), check, c);
        }
      });
    }
  });
}

test("no check value is missing, and each has a source", () => {
  const cases = FILES.flatMap((file) => load(file).cases);
  expect(cases.map((c) => c.id)).toEqual(IDS);
  expect(cases.filter((c) => c.source.trim() === "")).toEqual([]);
});
