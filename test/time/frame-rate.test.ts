import { describe, expect, test } from "vitest";
import { rational } from "../../src/core/rational.ts";
import { isThousandOneRate, nominalRate, parseFrameRate, rateLabel, supportsDropFrame } from "../../src/time/frame-rate.ts";

describe("parseFrameRate", () => {
  test.each([
    ["24", 24, 1],
    [" 25.0 ", 25, 1],
    ["23.976", 24000, 1001],
    ["23.98", 24000, 1001],
    ["23.9760", 24000, 1001],
    ["23.976024", 24000, 1001],
    ["29.97", 30000, 1001],
    ["47.952", 48000, 1001],
    ["59.94", 60000, 1001],
    ["119.88", 120000, 1001],
    ["24000/1001", 24000, 1001],
    ["30/1.001", 30000, 1001],
    ["50/2", 25, 1],
  ])("reads %s as an exact fraction", (text, num, denom) => {
    expect(parseFrameRate(text)).toEqual({ num, denom });
  });

  test.each([
    "",
    "0",
    "24p",
    "-24",
    "23.9",
    "29.9",
    "23.97 fps",
    "29.98",
    "24.98",
    "12.5",
    "25/2",
    "24000/0",
    "0/1",
    "1e2",
    "24,0",
    "23.976.0",
  ])("refuses %s instead of snapping to a neighbour", (text) => {
    expect(parseFrameRate(text)).toBeNull();
  });
});

test("a rate's label is what people write, and reads back as the same rate", () => {
  const labels = ["24", "25", "30", "48", "50", "60", "120", "23.976", "29.97", "47.952", "59.94", "119.88"];
  for (const label of labels) {
    const rate = parseFrameRate(label);
    expect(rate && rateLabel(rate)).toBe(label);
  }
});

test("the nominal rate is the number of labels a second", () => {
  const bases: [number, number, number][] = [
    [24000, 1001, 24],
    [24, 1, 24],
    [30000, 1001, 30],
    [48000, 1001, 48],
    [120000, 1001, 120],
  ];
  for (const [num, denom, base] of bases) expect(nominalRate(rational(num, denom))).toBe(base);
});

test("only 29.97, 59.94 and 119.88 have drop frame", () => {
  const dropping = [24, 25, 30, 48, 50, 60, 120].flatMap((base) =>
    [rational(base), rational(base * 1000, 1001)].filter(supportsDropFrame).map(rateLabel),
  );
  expect(dropping).toEqual(["29.97", "59.94", "119.88"]);
});

test("a 1000/1001 rate is told from a whole one, also where the fraction cancels (77000/1001 = 1000/13)", () => {
  expect(isThousandOneRate(rational(24000, 1001))).toBe(true);
  expect(isThousandOneRate(rational(77000, 1001))).toBe(true);
  expect(isThousandOneRate(rational(24))).toBe(false);
  expect(isThousandOneRate(rational(25, 2))).toBe(false);
});
