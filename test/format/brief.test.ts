import { describe, expect, it } from "vitest";
import { brief, folded } from "../../src/format/brief.ts";

describe("brief", () => {
  it("leaves what fits as it is", () => {
    expect(brief("Boat drifted", 12, "cut")).toBe("Boat drifted");
  });
  it("cuts at the last whole word and says so", () => {
    // twelve characters end with the second word; thirteen would reach into the third
    expect(brief("Boat drifted out of frame", 12, "cut")).toBe("Boat drifted (cut)");
    expect(brief("Boat drifted, then sank", 14, "rest in the notes")).toBe("Boat drifted (rest in the notes)");
  });
  it("cuts a word that is longer than the place, by characters and not by halves of them", () => {
    expect(brief("A009C002_310506_R7KQ", 8, "cut")).toBe("A009C002 (cut)");
    expect(brief("😀😀😀😀😀😀", 4, "cut")).toBe("😀😀😀😀 (cut)");
  });
});

describe("a long text that is folded", () => {
  it("stands whole up to 300 characters, and loses nothing beyond", () => {
    const words = "The wind took the door. ".repeat(60).trim();
    expect(folded(words.slice(0, 300))).toEqual({ beginning: words.slice(0, 300), rest: "" });
    const { beginning, rest } = folded(words);
    expect(beginning + rest).toBe(words);
    // 24 characters a sentence: ten sentences are 240, and the last of them ends with a space
    expect(beginning).toBe("The wind took the door. ".repeat(10).trim());
    expect(rest.startsWith(" The wind")).toBe(true);
  });

  // what a reader counts as one character, as Unicode's own segmentation in the JavaScript engine has it
  it.each([
    ["letters with two combining marks", "e\u0301\u0323"],
    ["a family of three joined figures", "\u{1f468}\u200d\u{1f469}\u200d\u{1f467}"],
    ["a hand with a skin tone", "\u{1f44d}\u{1f3fd}"],
    ["flags", "\u{1f1eb}\u{1f1f7}"],
    ["Hangul in single letters", "\u1112\u1161\u11ab"],
    ["Hebrew with points", "\u05e9\u05c1\u05b8"],
    ["Arabic with vowels", "\u0643\u064e\u0651"],
    ["Devanagari conjuncts", "\u0915\u094d\u0937\u093f"],
    ["Thai with sara am", "\u0e19\u0e49\u0e33"],
    ["line breaks of two", "\r\n"],
  ])("is never cut inside a character: %s", (_, character) => {
    const places = (text: string) => [...new Intl.Segmenter("en", { granularity: "grapheme" }).segment(text)].map((s) => s.index);
    for (let lead = 0; lead < 12; lead++) {
      const text = "x".repeat(lead) + character.repeat(200);
      const { beginning, rest } = folded(text);
      expect(beginning + rest).toBe(text);
      expect(rest).not.toBe("");
      expect(places(text), `after ${lead}`).toContain(beginning.length);
    }
  });

  it("is not cut at a space that carries a mark", () => {
    const text = "a \u0301".repeat(200);
    const { beginning } = folded(text);
    const places = [...new Intl.Segmenter("en", { granularity: "grapheme" }).segment(text)].map((s) => s.index);
    expect(places).toContain(beginning.length);
  });
});
