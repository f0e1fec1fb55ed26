import { describe, expect, test } from "vitest";
import {
  areaMm,
  distance,
  distanceNumber,
  distanceRange,
  feetAndInches,
  millimetres,
  millimetresRange,
} from "../../src/format/length.ts";

/** No-break spaces read as ~ here, so that they can be seen. */
function shown(text: string): string {
  return text.replaceAll("\u00a0", "~");
}

const INCH = 0.0254;

describe("distances in metres", () => {
  test.each([
    [2.4, "2.40~m"],
    [0.45, "0.45~m"],
    [1.764, "1.76~m"],
    [9.994, "9.99~m"],
    [9.996, "10.0~m"],
    [12.24, "12.2~m"],
    [99.96, "100~m"],
    [104.2, "104~m"],
    ["inf" as const, "\u221e"],
    [Number.POSITIVE_INFINITY, "\u221e"],
  ])("%s is %s", (m, text) => {
    expect(shown(distance(m, "metric"))).toBe(text);
  });
});

describe("distances in feet and inches: rounded first, then carry", () => {
  test.each([
    // 2.4 m = 94.488 in = 7 ft 10.488 in.
    [2.4, `7'~10~1/2"`],
    [9 * INCH, `9"`],
    [9.25 * INCH, `9~1/4"`],
    [0.5 * INCH, `1/2"`],
    [72 * INCH, `6'~0"`],
    [74.5 * INCH, `6'~2~1/2"`],
    [66.75 * INCH, `5'~6~3/4"`],
    // 71.9 in rounds to 72 and carries: never 5' 12".
    [71.9 * INCH, `6'~0"`],
    [11.9 * INCH, `1'~0"`],
    [71.8 * INCH, `5'~11~3/4"`],
    [1200 * INCH, `100'~0"`],
    // ten metres are 32 ft 9.701 in, and just below them 32 ft 9.465 in: as fine as the metres beside them
    [10, `32'~10"`],
    [9.994, `32'~9~1/2"`],
    // 34.1 m = 1342.52 in = 111 ft 10.52 in
    [34.1, `111'~11"`],
    // 150 m = 492.13 ft
    [150, `492'`],
  ])("%d m is %s", (m, text) => {
    expect(shown(feetAndInches(m))).toBe(text);
  });

  test("no inches are ever twelve, from nothing to ten metres by the millimetre", () => {
    const wrong: string[] = [];
    for (let mm = 1; mm <= 10_000; mm++) {
      const text = feetAndInches(mm / 1000);
      const [, inches] = /(\d+)(?:\u00a0\d\/\d)?"$/.exec(text) ?? ["", "0"];
      if (Number(inches) > 11) wrong.push(`${mm} mm is ${text}`);
    }
    expect(wrong).toEqual([]);
  });
});

test("both systems stand side by side, infinity once", () => {
  expect(shown(distance(2.4, "both"))).toBe(`2.40~m (7'~10~1/2")`);
  expect(distance("inf", "both")).toBe("\u221e");
});

describe("ranges are written with to, in the order given", () => {
  test("metric", () => {
    expect(shown(distanceRange(1.76, "inf", "metric"))).toBe("1.76~m to \u221e");
    expect(shown(distanceRange(6, 1.8, "metric"))).toBe("6.00~m to 1.80~m");
  });

  test("imperial and both", () => {
    expect(shown(distanceRange(72 * INCH, "inf", "imperial"))).toBe(`6'~0" to \u221e`);
    expect(shown(distanceRange(2.4, "inf", "both"))).toBe(`2.40~m to \u221e (7'~10~1/2" to \u221e)`);
  });

  test("ends that print alike are one distance", () => {
    expect(shown(distanceRange(2.401, 2.399, "metric"))).toBe("2.40~m");
    expect(distanceRange("inf", "inf", "both")).toBe("\u221e");
  });
});

test("a figure without its unit is for columns whose head has it; feet and inches keep their marks", () => {
  expect(distanceNumber(2.4)).toBe("2.40");
  expect(distanceNumber("inf")).toBe("\u221e");
  expect(shown(distanceNumber(2.4, "imperial"))).toBe(`7'~10~1/2"`);
});

test("millimetres have no needless zeros; a frame has two decimals", () => {
  expect(shown(millimetres(35))).toBe("35~mm");
  expect(shown(millimetres(24.89))).toBe("24.89~mm");
  expect(shown(millimetresRange(50, 35))).toBe("50~mm to 35~mm");
  expect(shown(millimetresRange(50, 50))).toBe("50~mm");
  expect(shown(areaMm(28.8, 16.2))).toBe("28.80~\u00d7~16.20~mm");
});
