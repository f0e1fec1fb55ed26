import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readStop } from "../../../src/ingest/written/stop.ts";

function value(text: string): { from: number; to: number; kind: string | null } {
  const reading = readStop(text);
  if (!reading.ok) throw new Error(`${text}: ${reading.problem}`);
  return reading.value;
}

describe("readStop", () => {
  // Published: CV39 to CV42 of the optics reference (exact values sqrt(2)^(k + q)), to its four decimals.
  it.each([
    ["T2.8 1/3", 3.1748],
    ["2.8⅓", 3.1748],
    ["5.6 and a half", 6.7272],
    ["5.6½", 6.7272],
    ["4 1/4", 4.362],
    ["4 3/4", 5.1874],
    ["2 2/3", 2.5198],
    ["1.4 1/2", 1.6818],
    ["2.8/4", 3.3636],
  ])("%s is %f", (text, exact) => {
    expect(value(text).from).toBeCloseTo(exact, 4);
    expect(value(text).to).toBe(value(text).from);
  });

  // Hand: 8 and a half is sqrt(2)^6.5 = 9.5137, 11 1/2 is sqrt(2)^7.5 = 13.4543, 8 1/3 is sqrt(2)^(19/3) = 8.9797.
  it.each([
    ["8 and a half", 9.5137],
    ["11 1/2", 13.4543],
    ["8 1/3", 8.9797],
    ["8 and two thirds", 10.0794],
    ["5.6-1/2", 6.7272],
    ["T2.8+1/3", 3.1748],
    ["2.8-4 split", 3.3636],
    ["4/2.8", 3.3636],
    ["4/5.6", 4.7568],
    ["T5.6⅓", 6.3496],
  ])("%s is %f: the fraction is one of a stop, never added to the number", (text, exact) => {
    expect(value(text).from).toBeCloseTo(exact, 4);
  });

  it("takes labels of the series as their exact values and other numbers as written", () => {
    expect(value("2.8").from).toBeCloseTo(2 * Math.SQRT2, 12);
    expect(value("2.1").from).toBe(2.1);
  });

  it("keeps T and f apart and takes f/2.8 for no half way", () => {
    expect(value("f/2.8")).toEqual({ from: 2 * Math.SQRT2, to: 2 * Math.SQRT2, kind: "f" });
    expect(value("t4").kind).toBe("t");
    expect(value("ƒ/4").kind).toBe("f");
    expect(value("4").kind).toBeNull();
  });

  it.each([
    ["2.8-4", 2 * Math.SQRT2, 4],
    ["T4 to T2", 4, 2],
    ["2.8 1/3 – 4", 3.1748, 4],
    ["2-5.6 1/2", 2, 6.7272],
  ])("%s is a range in the order written", (text, from, to) => {
    expect(value(text).from).toBeCloseTo(from, 4);
    expect(value(text).to).toBeCloseTo(to, 4);
  });

  it.each([
    ["4+", "4 1/3"],
    ["4-", "4 1/3"],
    ["2.8 1/2 open", "closed down"],
    ["5,6", "5.6"],
    ["56", "5.6"],
    ["5.6.5", "decimal points"],
    ["4.5 1/2", "full stop"],
    ["2.8/8", "2.8-8"],
    ["T4-f/8", "T-stops"],
    ["", "2.8"],
    ["wide", "2.8"],
    ["0", "0.5"],
  ])("refuses %s and says how to write it", (text, hint) => {
    const reading = readStop(text);
    expect(reading.ok).toBe(false);
    if (!reading.ok) expect(reading.hint).toContain(hint);
  });

  it("never throws, whatever was written", () => {
    expect(() =>
      fc.assert(fc.property(fc.string({ unit: "binary", maxLength: 30 }), (text) => typeof readStop(text).ok === "boolean")),
    ).not.toThrow();
  });
});
