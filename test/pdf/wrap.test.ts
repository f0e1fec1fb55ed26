import { describe, expect, it } from "vitest";
import { wrapText } from "../../src/pdf/wrap.ts";

/** Every letter is one wide, marks and joiners nothing. */
const measure = (text: string): number => [...text.replace(/\p{M}|\u200d/gu, "")].length;

describe("breaking text into lines", () => {
  it("breaks at spaces and keeps what fits together", () => {
    expect(wrapText("the tide was out", 9, measure)).toEqual(["the tide", "was out"]);
  });

  it("never breaks at a no-break space", () => {
    expect(wrapText("focus 2.40\u00a0m", 8, measure)).toEqual(["focus", "2.40\u00a0m"]);
  });

  it("keeps line ends, also those of two characters", () => {
    expect(wrapText("a\r\nb\nc", 9, measure)).toEqual(["a", "b", "c"]);
  });

  it("cuts a path after its separators", () => {
    expect(wrapText("days/2031-05-06/notes.csv", 12, measure)).toEqual(["days/2031-", "05-06/", "notes.csv"]);
  });

  it("cuts a word that fits nowhere, and no line is too wide", () => {
    const lines = wrapText("x".repeat(300), 20, measure);
    expect(lines.join("")).toBe("x".repeat(300));
    expect(Math.max(...lines.map(measure))).toBeLessThanOrEqual(20);
  });

  it("keeps an accent with its letter", () => {
    const word = "e\u0301".repeat(10);
    const lines = wrapText(word, 3, measure);
    expect(lines.length).toBeGreaterThan(1);
    expect(lines.join("")).toBe(word);
    for (const line of lines) expect(line.startsWith("e")).toBe(true);
  });

  it("gives one line for no text", () => {
    expect(wrapText("", 10, measure)).toEqual([""]);
  });
});
