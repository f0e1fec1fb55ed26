import { describe, expect, it } from "vitest";
import { type Direction, sorted, sortKey } from "../../../src/client/table/order.ts";
import { fixed, signed, thousands } from "../../../src/format/number.ts";
import { eighths } from "../../../src/format/pages.ts";
import { stopRange } from "../../../src/format/stop.ts";
import { minutesSeconds } from "../../../src/format/time.ts";
import { rangeInColumn } from "../../../src/view/distances.ts";

function inOrder(texts: readonly string[], direction: Direction = "ascending"): readonly string[] {
  return sorted(texts, sortKey, direction);
}

describe("the order of a column", () => {
  // each list is written in the order that a reader expects; it must come back from its reverse
  it.each([
    ["slates and takes", ["2 take 1 A", "14 take 2 A", "14 take 10 A", "14A take 1 A", "14A take 1 B", "24B take 3 A"]],
    ["clips", ["A021C001", "A021C002", "A021C010", "B014C001"]],
    ["timecodes", ["08:22:10:03", "09:12:20:11", "09:12:20:17", "14:00:00:00"]],
    ["stops", [2, 2.8, 4, 5.6, 11, 16].map((t) => stopRange(t, t))],
    ["lengths, minutes past an hour", [7, 42, 78, 599, 600, 4000].map(minutesSeconds)],
    ["counts with thousands", [0, 9, 999, 1000, 18_412, 1_000_000].map(thousands)],
    ["figures below zero", [-3.42, -0.53, -0.07, 0, 0.53, 12].map((v) => fixed(v, 2))],
    ["figures with a sign", [-1.5, -0.2, 0, 0.2, 1.5].map((v) => signed(v, 1))],
    ["distances to infinity", [0.82, 1.5, 4.21, 12.4, 120, "inf" as const].map((m) => rangeInColumn(m, m, "metric"))],
    ["ranges by their near end", ["0.82 to 8.49", "1.03 to 2.83", "1.03 to \u221e", "\u221e"]],
    ["dates as the pages write them", ["Day 2, 8 October", "Day 9, 3 October", "Day 11, 6 October"]],
    ["numbers before words", ["12", "35", "not in the kit"]],
  ])("has %s by their value", (_, texts) => {
    expect(inOrder([...texts].reverse())).toEqual(texts);
    expect(inOrder(texts, "descending")).toEqual([...texts].reverse());
  });

  it("reads a hyphen after a digit as no minus", () => {
    expect(inOrder(["24-3", "24-1", "23-9"])).toEqual(["23-9", "24-1", "24-3"]);
  });

  it("has what is missing last in both directions, and equal rows as they stood", () => {
    const rows = [
      { name: "a", text: "" },
      { name: "b", text: "2" },
      { name: "c", text: "1" },
      { name: "d", text: "2" },
      { name: "e", text: "" },
    ];
    const names = (direction: Direction) => sorted(rows, ({ text }) => sortKey(text), direction).map(({ name }) => name);
    expect(names("ascending").join("")).toBe("cbdae");
    expect(names("descending").join("")).toBe("bdcae");
  });

  it("would put pages in eighths wrong by their text, which is why the builder writes a value", () => {
    // 7/8 of a page is less than 2 pages
    expect(inOrder([eighths(7), eighths(16)])).toEqual([eighths(16), eighths(7)]);
    expect(inOrder(["7", "16"])).toEqual(["7", "16"]);
  });
});
