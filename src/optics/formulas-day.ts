/** Formulas of time and of the day's paperwork. */
import type { Formula } from "./formula.ts";
import { bracket, line, math, over, row, words } from "./mathml.ts";

export const DAY_FORMULAS: readonly Formula[] = Object.freeze([
  {
    id: "drop-frame",
    title: "Frame of a timecode label",
    expression: "frame = (60 M + S) B + F - d (M - floor(M / 10)); M = 60 h + min",
    mathml: math(
      line("frame ="),
      bracket(line("60 * M + S")),
      line("* B + F - d *"),
      bracket(line("M -"), row("<mo>\u230a</mo>", over(line("M"), line("10")), "<mo>\u230b</mo>")),
    ),
    symbols: [
      { symbol: "M", meaning: "minutes since midnight", unit: "min" },
      { symbol: "S, F", meaning: "second and frame of the label", unit: "" },
      { symbol: "B", meaning: "whole frames a timecode second counts", unit: "" },
      { symbol: "d", meaning: "labels left out a minute: 0 without drop frame, 2 at 29.97, 4 at 59.94, 8 at 119.88", unit: "" },
    ],
    validity: "Labels that drop frame leaves out are refused. There is no drop frame at 23.976, 24 or 25.",
    source: 'D. Heidelberger, "Drop-Frame Timecode", after A. Duncan; 119.88: S. Andrews, TimecodeKit.',
  },
  {
    id: "duration",
    title: "Length in seconds",
    expression: "seconds = frames / rate",
    mathml: math(line("seconds ="), over(words("frames"), words("rate"))),
    symbols: [
      { symbol: "frames", meaning: "from timecode in up to, but not including, timecode out", unit: "frames" },
      { symbol: "rate", meaning: "timecode rate as an exact fraction, such as 24000/1001", unit: "1/s" },
    ],
    validity: "A take off speed also lasts frames over capture rate in front of the lens; speeds of focus go by that.",
    source: "Derived from first principles.",
  },
  {
    id: "shooting-ratio",
    title: "Shooting ratio",
    expression: "ratio = seconds of all clips / seconds of all clips of circled takes",
    mathml: math(line("ratio ="), over(words("seconds of all clips"), words("seconds of clips of circled takes"))),
    symbols: [{ symbol: "ratio", meaning: "media shot for media wanted", unit: "" }],
    validity: "Every camera's clip counts, at the timecode rate. Not recorded when nothing is circled.",
    source: "Common practice.",
  },
  {
    id: "pages-in-eighths",
    title: "Pages in eighths",
    expression: "eighths = 8 pages + part; 2 3/8 is 19",
    mathml: math(line("eighths = 8"), words("\u00a0pages"), line("+ part")),
    symbols: [
      { symbol: "pages", meaning: "whole pages", unit: "pages" },
      { symbol: "part", meaning: "eighths beyond them", unit: "eighths" },
    ],
    validity: "Whole eighths only; they add as whole numbers: 2 3/8 + 7/8 + 1 6/8 = 5 0/8.",
    source: "Common practice.",
  },
  {
    id: "feet-and-inches",
    title: "Feet and inches",
    expression: "1 in = 25.4 mm; 1 ft = 12 in = 0.3048 m; rounded to the nearest 1/4 in, then carried into feet",
    mathml: math(line("1"), words("\u00a0in"), line("= 25.4"), words("\u00a0mm")),
    symbols: [],
    validity: "Exact since the agreement of 1959. 5.6' is 5 ft 7.2 in, not 5 ft 6.",
    source: 'Wikipedia "Foot (unit)".',
  },
] satisfies readonly Formula[]);
