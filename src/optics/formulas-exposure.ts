/** Formulas of stops, filters, shutters and light. */
import type { Formula, FormulaSymbol } from "./formula.ts";
import { line, log2, math, over, power, root, row, words } from "./mathml.ts";

const F_NUMBER: FormulaSymbol = { symbol: "N", meaning: "f-number", unit: "" };
const T_NUMBER: FormulaSymbol = { symbol: "T", meaning: "T-number", unit: "" };
const TAU: FormulaSymbol = { symbol: "\u03c4", meaning: "transmittance of the lens, 0 to 1", unit: "" };

export const EXPOSURE_FORMULAS: readonly Formula[] = Object.freeze([
  {
    id: "stops-between",
    title: "Stops between two T-stops",
    expression: "n = 2 log2(T2 / T1); light ratio (T2 / T1)^2",
    mathml: math(line("n = 2"), log2(over(line("T_2"), line("T_1")))),
    symbols: [{ symbol: "n", meaning: "stops; positive is closing down", unit: "stops" }, T_NUMBER],
    validity: "Labels of the stop series count as their exact values; a logged number counts as written.",
    source: 'W. Fulton, "Camera Math of photography settings and EV" (scantips.com).',
  },
  {
    id: "exact-stop",
    title: "Exact value of a stop label",
    expression: "N = sqrt(2)^k, k in whole, half and third stops from 1",
    mathml: math(line("N ="), power(root(line("2")), line("k"))),
    symbols: [F_NUMBER, { symbol: "k", meaning: "stops down from 1", unit: "stops" }],
    validity: "For labels of the full, third and half series (1.2 and 13 as thirds). Any other number stays as written.",
    source:
      'Wikipedia "f-number"; half series: tables on kameraarkasi.org and photographytips.com. Snapping is this project\'s choice.',
  },
  {
    id: "transmittance",
    title: "Transmittance",
    expression: "tau = (N / T)^2; loss in stops -log2(tau)",
    mathml: math(line("\u03c4 ="), power(row("<mo>(</mo>", over(line("N"), line("T")), "<mo>)</mo>"), line("2"))),
    symbols: [TAU, F_NUMBER, T_NUMBER],
    validity: "From the widest f and the widest T of the kit, when no transmittance is given. Above 1 the two were swapped.",
    source: 'Wikipedia "f-number", section T-stop.',
  },
  {
    id: "f-from-t",
    title: "f-number from a T-stop",
    expression: "N = T sqrt(tau)",
    mathml: math(line("N = T *"), root(line("\u03c4"))),
    symbols: [F_NUMBER, T_NUMBER, TAU],
    validity: "Depth of field is geometric and goes by N. Where tau is not known T stands in for N, and the figure says so.",
    source: 'Wikipedia "f-number", section T-stop; N. Porcino, "A Note on T-Stops".',
  },
  {
    id: "t-from-f",
    title: "T-stop from an f-number",
    expression: "T = N / sqrt(tau)",
    mathml: math(line("T ="), over(line("N"), root(line("\u03c4")))),
    symbols: [T_NUMBER, F_NUMBER, TAU],
    validity: "Where a log has f only and the lens's transmittance is known; else T is not recorded.",
    source: 'Wikipedia "f-number", section T-stop.',
  },
  {
    id: "typical-stop",
    title: "Typical stop",
    expression: "the lower middle of log2 T over the logged frames, each frame once",
    mathml: math(log2(line("T")), line("="), words("lower middle of "), log2(line("T_1")), line(", \u2026 ,"), log2(line("T_n"))),
    symbols: [T_NUMBER],
    validity: "The value at index floor((n - 1) / 2) of the n sorted values, so that it is a stop that was really used.",
    source: "This project's choice.",
  },
  {
    id: "shutter",
    title: "Shutter angle",
    expression: "angle = 360 t F",
    mathml: math(line("angle = 360 * t * F")),
    symbols: [
      { symbol: "angle", meaning: "shutter angle", unit: "degrees" },
      { symbol: "t", meaning: "exposure time of a frame", unit: "s" },
      { symbol: "F", meaning: "frames a second at which the picture was captured", unit: "1/s" },
    ],
    validity: "At the capture rate, not the timecode rate.",
    source: 'Wikipedia "Shutter speed", citing B. Brown, Cinematography (2002), p. 125.',
  },
  {
    id: "nd-stops",
    title: "Neutral density in stops",
    expression: "n = d / log10(2); n = log2(factor)",
    mathml: math(line("n ="), over(line("d"), row("<msub><mi>log</mi><mn>10</mn></msub><mo>\u2061</mo>", line("2")))),
    symbols: [
      { symbol: "n", meaning: "loss of light", unit: "stops" },
      { symbol: "d", meaning: "density, such as 0.6; ND4 is a factor instead", unit: "" },
    ],
    validity: "Stacked densities add. Labels are rounded: 0.6 is 1.99 stops.",
    source: 'camera-wiki "Neutral density filter".',
  },
  {
    id: "mired",
    title: "Mired shift",
    expression: "shift = 10^6 / K2 - 10^6 / K1",
    mathml: math(
      line("shift ="),
      over(power(line("10"), line("6")), line("K_2")),
      line("-"),
      over(power(line("10"), line("6")), line("K_1")),
    ),
    symbols: [
      { symbol: "shift", meaning: "strength of the filter; positive is warmer", unit: "mired" },
      { symbol: "K1, K2", meaning: "colour temperature before and after", unit: "K" },
    ],
    validity: "Sources near a black body.",
    source: 'Wikipedia "Mired".',
  },
  {
    id: "relative-exposure",
    title: "Exposure of one set-up against another",
    expression: "L = -2 log2(T) + log2(angle / (360 F)) - n",
    mathml: math(line("L = - 2"), log2(line("T")), line("+"), log2(over(line("angle"), line("360 * F"))), line("- n")),
    symbols: [
      { symbol: "L", meaning: "light on the sensor; only differences mean anything", unit: "stops" },
      T_NUMBER,
      { symbol: "angle", meaning: "shutter angle", unit: "degrees" },
      { symbol: "F", meaning: "capture rate", unit: "1/s" },
      { symbol: "n", meaning: "neutral density", unit: "stops" },
    ],
    validity: "The exposure index is counted apart, because a digital log may carry it as a remark only.",
    source: "Derived from first principles.",
  },
] satisfies readonly Formula[]);
