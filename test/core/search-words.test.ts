import { describe, expect, it } from "vitest";
import { searchTerms } from "../../src/core/search-query.ts";
import { codeKey, fold, hyphenKey, timeSpan, withoutZeros, wordKeys, words } from "../../src/core/search-words.ts";

const keys = (text: string) => words(text).map((word) => word.key);
const kinds = (query: string) => searchTerms(query).map((term) => term.kind);

describe("words of a text", () => {
  it("keep codes whole", () => {
    expect(keys("A012C003 at T2.8, 10:21:05:12")).toEqual(["a012c003", "at", "t2.8", "10:21:05:12"]);
    expect(keys("35mm 1.5 m")).toEqual(["35mm", "1.5", "m"]);
    expect(keys("at 10:21:05;12")).toEqual(["at", "10:21:05:12"]);
  });

  it("give a run that signs cut whole and in parts", () => {
    expect(keys("half-speed 24B/3")).toEqual(["halfspeed", "half", "speed", "24b3", "24b", "3"]);
    expect(keys("don't")).toEqual(["dont", "don", "t"]);
  });

  it("drop accents and case, in any script", () => {
    expect(keys("Ébène Straße ŁÓDŹ")).toEqual(["ebene", "straße", "łodz"]);
    expect(keys("שָׁלוֹם مرحبا 雨")).toEqual(["שלום", "مرحبا", "雨"]);
    expect(fold("Ａ０２１")).toBe("a021");
  });

  it("say where they stand in the text as written", () => {
    const text = "Soft on the Türe, again";
    expect(words(text).map(({ start, end }) => text.slice(start, end))).toEqual(["Soft", "on", "the", "Türe", "again"]);
  });

  it("have the same keys with and without their places", () => {
    for (const text of ["Late on the ledger", "T2.1 wide-open", "Café, 10:21:05:12", "", "  ", "A_b c.d e"]) {
      expect(wordKeys(text)).toEqual(keys(text));
    }
  });
});

describe("keys of codes", () => {
  it("have letters and digits only", () => {
    expect(codeKey("A012_C003")).toBe("a012c003");
    expect(codeKey("2 PU")).toBe("2pu");
    expect(hyphenKey(" KZ31-87 ")).toBe("kz31-87");
  });

  it("lose the zeros before a number, never a number itself", () => {
    expect(withoutZeros("a012c003")).toBe("a12c3");
    expect(withoutZeros("a100c000")).toBe("a100c0");
    expect(withoutZeros("0")).toBe("0");
  });
});

describe("a timecode in a query", () => {
  it("spans what its beginning leaves open", () => {
    expect(timeSpan("14:22")).toEqual({ from: "14:22:00:00", to: "14:22:59:999", exact: false });
    expect(timeSpan("14:2")).toEqual({ from: "14:20:00:00", to: "14:29:59:999", exact: false });
    expect(timeSpan("9:05:1")).toEqual({ from: "09:05:10:00", to: "09:05:19:999", exact: false });
  });

  it("is one frame when it is whole, whatever sign stands before the frames", () => {
    for (const text of ["10:21:05:12", "10:21:05;12", "10:21:05.12"]) {
      expect(timeSpan(text)).toEqual({ from: "10:21:05:12", to: "10:21:05:12", exact: true });
    }
  });

  it("is none where a clock has no such time", () => {
    for (const text of ["25:00", "10:61", "1:2:3:4:5", "10:", "lens:35", "14"]) expect(timeSpan(text)).toBeNull();
  });
});

describe("terms of a query", () => {
  it("are read by their form", () => {
    expect(kinds("24b 3")).toEqual(["code", "code"]);
    expect(kinds("10:21:05:12 50mm T2.8 2.8 rain")).toEqual(["time", "focal", "stop", "stop", "word"]);
    expect(kinds("50 mm t 2.8 2026-10-06")).toEqual(["focal", "stop", "field"]);
  });

  it("know the field words, with or without a space after the colon", () => {
    expect(kinds("lens:35 day: 4 t:2.8 roll:A012 note:rain plate:clean")).toEqual([
      "field",
      "field",
      "stop",
      "field",
      "note",
      "field",
    ]);
    expect(kinds("colour:red")).toEqual(["word", "word"]);
  });

  it("take a label with the code after it, and leave it a word before another word", () => {
    expect(searchTerms("take 3 camera A")).toMatchObject([
      { kind: "field", field: "take", key: "3" },
      { kind: "field", field: "camera", key: "a" },
    ]);
    expect(kinds("camera shake")).toEqual(["word", "word"]);
  });

  it("let the small words of a sentence be missing, unless there are no others", () => {
    expect(searchTerms("late on the ledger").map((term) => term.kind === "word" && term.light)).toEqual([false, true, true, false]);
    expect(searchTerms("the").map((term) => term.kind === "word" && term.light)).toEqual([false]);
  });

  it("are none for a query of signs", () => {
    expect(searchTerms(" , \u201c\u201d * - ")).toEqual([]);
  });
});
