import { describe, expect, it } from "vitest";
import type { Face } from "../../src/pdf/fonts.ts";
import { cleanText, MISSING_SIGN, textRuns } from "../../src/pdf/runs.ts";

/** Serif has Latin only, sans has Hebrew too, no face has more. */
function has(face: Face, codePoint: number): boolean {
  const latin = codePoint < 0x250;
  return latin || (face === "sans" && codePoint >= 0x590 && codePoint < 0x600);
}

describe("runs of text", () => {
  it("is one run where the face has every letter", () => {
    expect(textRuns("Take 3 A", "serif", has)).toEqual([{ face: "serif", text: "Take 3 A" }]);
  });

  it("takes letters that a face lacks from the sans face", () => {
    expect(textRuns("a \u05d0", "serif", has)).toEqual([
      { face: "serif", text: "a " },
      { face: "sans", text: "\u05d0" },
    ]);
  });

  it("marks what no face has", () => {
    expect(textRuns("go \u{1f3ac}", "sans", has)).toEqual([{ face: "sans", text: `go ${MISSING_SIGN}` }]);
  });

  it("puts words from right to left in reading order, as one group in a line from left to right", () => {
    const text = textRuns("say \u05d0\u05d1 \u05d2\u05d3 now", "sans", has)
      .map((run) => run.text)
      .join("");
    expect(text).toBe("say \u05d2\u05d3 \u05d0\u05d1 now");
  });
});

describe("cleaning a line", () => {
  it("turns control characters into spaces and drops joiners and direction marks", () => {
    expect(cleanText("a\u0000b\tc\u200d\u202ed\ufe0f")).toBe("a b cd");
  });

  it("composes accents, so that one glyph is looked for", () => {
    expect(cleanText("Cafe\u0301")).toBe("Caf\u00e9");
  });
});
