import { describe, expect, it } from "vitest";
import { distance, distanceNumber, distanceRange, distanceUnit } from "../../src/format/length.ts";
import { inUnits, oneSystem, readerMayChoose, settled, showsWish, unitParts } from "../../src/format/units.ts";

const FOR_READERS = ["metric", "imperial", "both"] as const;

describe("a text with a choice of units", () => {
  const write = [
    (d: Parameters<typeof distance>[1]) => `Sharp from ${distance(1.8923, d)} on, ${distance("inf", d)}`,
    (d: Parameters<typeof distance>[1]) => distanceRange(1.76, "inf", d),
    (d: Parameters<typeof distance>[1]) => `${distanceNumber(0.3, d)} ${distanceUnit(d)}`,
  ];

  it("reads for each reader as if it had been written for them", () => {
    for (const text of write) {
      for (const show of FOR_READERS) {
        const open = text(readerMayChoose(show));
        expect(settled(open), "before a choice").toBe(text(show));
        expect(settled(open, "metric")).toBe(text("metric"));
        expect(settled(open, "imperial")).toBe(text("imperial"));
      }
    }
  });

  it("is no choice where both wordings are the same", () => {
    expect(distance("inf", "reader-metric")).toBe("\u221e");
    expect(unitParts(distance("inf", "reader-both"))).toEqual(["\u221e"]);
  });

  it("gives its parts in order, and leaves a text without a choice whole", () => {
    const text = `a ${inUnits("reader-imperial", (system) => system)} b`;
    expect(unitParts(text)).toEqual(["a ", { metric: "metric", imperial: "imperial", first: "imperial" }, " b"]);
    expect(unitParts("plain")).toEqual(["plain"]);
    expect(settled("plain", "imperial")).toBe("plain");
  });

  it("has one figure where there is no room for two", () => {
    const short = distance(3, oneSystem("reader-both"));
    expect(settled(short, "both")).toBe(distance(3, "metric"));
    expect(settled(short, "imperial")).toBe(distance(3, "imperial"));
    expect(showsWish("reader-both")).toBe("both");
  });
});
