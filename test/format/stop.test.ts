import { describe, expect, test } from "vitest";
import { fStop, lightRatioText, signedStops, stopRange, stops, transmittanceText, tStop } from "../../src/format/stop.ts";

function shown(text: string): string {
  return text.replaceAll("\u00a0", "~");
}

describe("a T-stop is the nearest third label within 0.06 stop, else one decimal", () => {
  test.each([
    [2 ** 1.5, "T2.8"],
    [2.8, "T2.8"],
    [4, "T4"],
    [5.66, "T5.6"],
    [3.17, "T3.2"],
    // 2 log2(2.88 / 2.8284) = 0.052 stop; 2.89 lies 0.062 away.
    [2.88, "T2.8"],
    // 2^(1/3) = 1.26 is what the label 1.2 means, two thirds of a stop from 1.
    [2 ** (1 / 3), "T1.2"],
  ])("%d is %s", (t, text) => {
    expect(tStop(t)).toBe(text);
  });

  test.each([
    [2.1, "T2.1"],
    [2.9, "T2.9"],
    [2.89, "T2.9"],
    [1.54, "T1.5"],
    [1.49, "T1.5"],
    [64, "T64"],
  ])("%d is no label: %s", (t, text) => {
    expect(tStop(t)).toBe(text);
  });

  test.each([1, 1.1, 1.2, 1.4, 2, 4, 9, 10, 11, 13, 14, 22, 25, 29, 32])(
    "a logged %d prints as that label, however far its exact value lies",
    (label) => {
      expect(tStop(label)).toBe(`T${label}`);
    },
  );
});

test("an f-stop has its own sign", () => {
  expect(fStop(2 ** 1.5)).toBe("f/2.8");
});

test("a range goes from wide to deep, and one stop is written once", () => {
  expect(stopRange(4, 2 ** 2.5)).toBe("T4 to T5.6");
  expect(stopRange(4, 4.01)).toBe("T4");
});

test.each([
  [0.9313, "0.93~stop"],
  [1, "1~stop"],
  [2, "2~stops"],
  [1.92, "1.92~stops"],
  [0, "0~stop"],
  [-0.5, "\u22120.50~stop"],
  [1.004, "1~stop"],
  [1.006, "1.01~stops"],
])("%d in stops is %s", (n, text) => {
  expect(shown(stops(n))).toBe(text);
});

test("a difference may show its sign", () => {
  expect([0.87, -0.07, 0].map((n) => shown(signedStops(n)))).toEqual(["+0.87~stop", "\u22120.07~stop", "0~stop"]);
});

test("light ratio and transmittance", () => {
  expect(lightRatioText(1.907)).toBe("1.91 to 1");
  expect(transmittanceText(0.8671)).toBe("0.867");
});
