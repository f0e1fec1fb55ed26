import { describe, expect, test } from "vitest";
import { depths, dioptres, fileSize, fps, grams, kelvin, signedGrams } from "../../src/format/amounts.ts";
import { degrees, roll, shutter, tilt } from "../../src/format/degrees.ts";
import { eighths } from "../../src/format/pages.ts";
import { percent, share, signedPercent } from "../../src/format/percent.ts";
import { countWords, listWords, plural, sentenceCase } from "../../src/format/words.ts";

function shown(text: string): string {
  return text.replaceAll("\u00a0", "~").replaceAll("\u202f", "^");
}

test("pages count in eighths that are never cancelled down", () => {
  expect([19, 7, 6, 40, 8, 0].map((n) => shown(eighths(n)))).toEqual(["2~3/8", "7/8", "6/8", "5~0/8", "1~0/8", "0"]);
});

describe("angles", () => {
  test("have the sign at the figure", () => {
    expect([degrees(44.72), degrees(-3.5)]).toEqual(["44.7\u00b0", "\u22123.5\u00b0"]);
  });

  test("tilt and roll say which way", () => {
    expect([-3.5, 12, 0, 0.04].map((d) => shown(tilt(d)))).toEqual(["3.5\u00b0~down", "12.0\u00b0~up", "level", "level"]);
    expect([1, -1].map((d) => shown(roll(d)))).toEqual(["1.0\u00b0~clockwise", "1.0\u00b0~anticlockwise"]);
  });

  test("a shutter has its time when the capture rate is known", () => {
    // 360 x 24 / 172.8 = 50; 360 x 24 / 180 = 48; 360 x 24 / 144 = 60.
    expect([172.8, 180, 144].map((d) => shown(shutter(d, 24)))).toEqual([
      "172.8\u00b0, 1/50~s",
      "180\u00b0, 1/48~s",
      "144\u00b0, 1/60~s",
    ]);
    expect(shutter(180, null)).toBe("180\u00b0");
  });
});

describe("percent", () => {
  test("has its sign after a no-break space", () => {
    expect([shown(percent(-2.604)), shown(signedPercent(0.3, 1)), shown(percent(28, 0))]).toEqual([
      "\u22122.60~%",
      "+0.3~%",
      "28~%",
    ]);
  });

  test("a share that is not whole never reads 100, and one that is not nothing never 0", () => {
    // 737 / 754 = 97.745 %.
    expect(shown(share(737, 754))).toBe("97.7~%");
    expect(shown(share(753_999, 754_000))).toBe("99.9~%");
    expect(shown(share(1, 754_000))).toBe("0.1~%");
    expect([share(754, 754), share(0, 754), share(0, 0)].map(shown)).toEqual(["100~%", "0~%", "0~%"]);
  });
});

test("file sizes count a thousand bytes to a KB, and never print 1000 of a unit", () => {
  expect([1, 640, 96_000, 9_940, 999_499, 999_600, 8_100_000, 61_000_000, 2_000_000_000].map((b) => shown(fileSize(b)))).toEqual([
    "1~byte",
    "640~bytes",
    "96~KB",
    "10~KB",
    "999~KB",
    "1.0~MB",
    "8.1~MB",
    "61~MB",
    "2.0~GB",
  ]);
});

test("masses, temperatures, dioptres, depths and rates", () => {
  expect([shown(grams(1090)), shown(signedGrams(1470)), shown(signedGrams(-330))]).toEqual(["1^090~g", "+1^470~g", "\u2212330~g"]);
  expect([shown(kelvin(4300)), dioptres(0.25), shown(depths(3.94))]).toEqual(["4300~K", "0.250", "3.9~depths"]);
  expect([shown(fps(24)), shown(fps(24000 / 1001))]).toEqual(["24~fps", "23.976~fps"]);
});

describe("words", () => {
  test("one is singular, everything else plural", () => {
    expect([0, 1, 17, 1204].map((n) => shown(plural(n, "take")))).toEqual(["0~takes", "1~take", "17~takes", "1^204~takes"]);
    expect(shown(plural(2, "entry", "entries"))).toBe("2~entries");
  });

  test("small counts in titles are words", () => {
    expect([0, 1, 4, 12].map((n) => countWords(n, "pull"))).toEqual(["no pulls", "one pull", "four pulls", "twelve pulls"]);
    expect(shown(countWords(13, "pull"))).toBe("13~pulls");
  });

  test("a list has no comma before its last", () => {
    expect([listWords([]), listWords(["a"]), listWords(["a", "b"]), listWords(["a", "b", "c"], "or")]).toEqual([
      "",
      "a",
      "a and b",
      "a, b or c",
    ]);
    expect([sentenceCase("not recorded"), sentenceCase("")]).toEqual(["Not recorded", ""]);
  });
});
