import { describe, expect, test } from "vitest";
import { fixed, signed, significant, thousands, trimmed } from "../../src/format/number.ts";

describe("fixed", () => {
  test("writes minus as U+2212, never as a hyphen", () => {
    expect(fixed(-2.604, 2)).toBe("\u22122.60");
    expect(fixed(35, 1)).toBe("35.0");
  });

  test("what rounds to nothing has no sign", () => {
    expect(fixed(-0.001, 2)).toBe("0.00");
    expect(fixed(-0, 0)).toBe("0");
    expect(signed(0.001, 2)).toBe("0.00");
  });
});

test("signed shows plus and minus", () => {
  expect([signed(0.03, 2), signed(-0.07, 2), signed(1, 0)]).toEqual(["+0.03", "\u22120.07", "+1"]);
});

test.each([
  [0.02204, 3, "0.0220"],
  [10.66, 3, "10.7"],
  [9.996, 3, "10.0"],
  [0.0999951, 3, "0.100"],
  [18412, 2, "18000"],
  [-1.234, 2, "\u22121.2"],
  [0, 3, "0.00"],
])("significant(%d, %d) is %s, without exponent", (value, digits, text) => {
  expect(significant(value, digits)).toBe(text);
});

test("trimmed leaves out zeros that say nothing, and never digits before the point", () => {
  expect([trimmed(172.8, 1), trimmed(180, 1), trimmed(100, 2), trimmed(24.89, 2)]).toEqual(["172.8", "180", "100", "24.89"]);
});

test("thousands stand apart by U+202F", () => {
  expect([thousands(737), thousands(1090), thousands(18412), thousands(2589408), thousands(-1200)]).toEqual([
    "737",
    "1\u202f090",
    "18\u202f412",
    "2\u202f589\u202f408",
    "\u22121\u202f200",
  ]);
});
