import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readDistance } from "../../../src/ingest/written/distance.ts";
import { readFocus } from "../../../src/ingest/written/range.ts";

describe("readDistance", () => {
  // Published: CV130 and CV131 of the optics reference; 1 ft = 0.3048 m, 1 in = 0.0254 m exactly.
  it.each([
    [`5'6"`, 1.6764],
    [`5' 6 1/2"`, 1.6891],
    ["12ft", 3.6576],
    ["3'", 0.9144],
    [`2' 3 3/4"`, 0.70485],
    [`9"`, 0.2286],
    [`6'2½"`, 1.8923],
    ["100'", 30.48],
    ["4.5'", 1.3716],
    [`4'5"`, 1.3462],
  ])("%s is %f m", (text, metres) => {
    expect(readDistance(text)).toEqual({ ok: true, value: expect.closeTo(metres, 9) });
  });

  // Hand: 5.6 x 0.3048 = 1.70688; 66 x 0.0254 = 1.6764; 5.5 x 0.3048 = 1.6764; 6 ft 2 in = 1.8796; 2 ft 7 in = 0.7874.
  it.each([
    ["5.6'", 1.70688],
    [`66"`, 1.6764],
    ["5 1/2 ft", 1.6764],
    ["5'6", 1.6764],
    [`6'-2"`, 1.8796],
    ["2' 7", 0.7874],
    [`6’ 2”`, 1.8796],
    ["5 ft 6 in", 1.6764],
    ["1.9 m", 1.9],
    ["85cm", 0.85],
    ["1900 mm", 1.9],
    [`½"`, 0.0127],
    ["inf", Number.POSITIVE_INFINITY],
    ["∞", Number.POSITIVE_INFINITY],
  ])("%s is %f m", (text, metres) => {
    const reading = readDistance(text);
    if (!reading.ok) throw new Error(reading.problem);
    if (metres === Number.POSITIVE_INFINITY) expect(reading.value).toBe(metres);
    else expect(reading.value).toBeCloseTo(metres, 9);
  });

  it("refuses a number without a unit with its two likely readings", () => {
    const reading = readDistance("1.9");
    expect(reading).toEqual({ ok: false, problem: expect.stringContaining('"1.9"'), hint: expect.stringContaining('"1.9 m"') });
    // 1.9 ft is 0.579 m.
    if (!reading.ok) expect(reading.hint).toContain('"1.9 ft" (which is 0.58 m)');
  });

  it.each([
    ["-2 m", "positive"],
    ["0 m", "inf"],
    [`5' 14"`, "11"],
    [`5.5' 3"`, "decimal feet"],
    [`3 1/3"`, "sixteenths"],
    ["1,9 m", "1.9 m"],
    ["1.9 yards", "Units"],
    ["near", "1.9 m"],
    ["", "1.9 m"],
  ])("refuses %s and says how to write it", (text, hint) => {
    const reading = readDistance(text);
    expect(reading.ok).toBe(false);
    if (!reading.ok) expect(reading.hint).toContain(hint);
  });

  it("reads back what feet, inches and sixteenths say", () => {
    const tape = fc.record({ feet: fc.nat(200), inches: fc.nat(11), sixteenths: fc.nat(15) });
    expect(() =>
      fc.assert(
        fc.property(tape, ({ feet, inches, sixteenths }) => {
          const metres = feet * 0.3048 + (inches + sixteenths / 16) * 0.0254;
          const reading = readDistance(`${feet}' ${inches} ${sixteenths}/16"`);
          return metres === 0 ? !reading.ok : reading.ok && Math.abs(reading.value - metres) < 1e-12;
        }),
      ),
    ).not.toThrow();
  });
});

describe("readFocus", () => {
  it.each([
    ["4-2 m", 0.25, 0.5],
    ["3.2-1.6 m", 0.3125, 0.625],
    // 12 ft = 3.6576 m, 5.5 ft = 1.6764 m
    ["12-5.5 ft", 1 / 3.6576, 1 / 1.6764],
    // 6 ft = 1.8288 m, 9 ft 6 in = 2.8956 m
    [`6'-9' 6"`, 1 / 1.8288, 1 / 2.8956],
    ["2 m - inf", 0.5, 0],
    ["∞ to 4 m", 0, 0.25],
    ["2 m", 0.5, 0.5],
    ["inf", 0, 0],
    // 6 ft 2 in = 1.8796 m: a dash between feet and inches is no range
    [`6'-2"`, 1 / 1.8796, 1 / 1.8796],
  ])("%s is %f to %f dioptres, in the order written", (text, from, to) => {
    expect(readFocus(text)).toEqual({
      ok: true,
      value: { fromDioptres: expect.closeTo(from, 9), toDioptres: expect.closeTo(to, 9) },
    });
  });

  it.each(["3-1.6", "1.9", "inf - 3", "2 m - far", "x", "1-2-3 m"])("refuses %s", (text) => {
    expect(readFocus(text).ok).toBe(false);
  });
});
