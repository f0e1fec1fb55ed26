import { describe, expect, it } from "vitest";
import { csvCell, csvText } from "../../src/export/csv-text.ts";

describe("cells of the pack's tables", () => {
  it("are quoted as RFC 4180 says: commas, quotes and line breaks", () => {
    expect(csvCell('best for the sign, "keep"')).toBe('"best for the sign, ""keep"""');
    expect(csvCell("two\nlines")).toBe('"two\nlines"');
    expect(csvCell("plain")).toBe("plain");
  });
  it("never begin with a character that a spreadsheet runs, unless they are numbers", () => {
    expect(csvCell("=HYPERLINK(1)")).toBe("'=HYPERLINK(1)");
    expect(csvCell("+1 take")).toBe("'+1 take");
    expect(csvCell("@home")).toBe("'@home");
    expect(csvCell("-3.5")).toBe("-3.5");
    expect(csvCell(-3.5)).toBe("-3.5");
  });
  it("have twelve digits of a number: 1 / (1 / 1.797) is 1.797 there", () => {
    expect(1 / (1 / 1.797)).not.toBe(1.797);
    expect(csvCell(1 / (1 / 1.797))).toBe("1.797");
    expect(csvCell(1 / 3)).toBe("0.333333333333");
    expect(csvCell(12_345_678_901)).toBe("12345678901");
    expect([csvCell(-0), csvCell(true)]).toEqual(["0", "true"]);
  });
  it("are empty where nothing is recorded, and lines end with LF", () => {
    expect(csvText(["a", "b"], [[null, 1]])).toBe("a,b\n,1\n");
  });
});
