/** Formulas of what a picture and a calibration table must hold: overscan and coverage. */
import type { Formula, FormulaSymbol } from "./formula.ts";
import { applied, below, bracket, line, math, over, power, row, words } from "./mathml.ts";

const HALVES: FormulaSymbol = { symbol: "w, h", meaning: "width and height of the active area", unit: "mm" };

export const COVERAGE_FORMULAS: readonly Formula[] = Object.freeze([
  {
    id: "overscan",
    title: "Overscan",
    expression: "percent = 100 (max(W / w, H / h) - 1); W = 2 max |x'|, H = 2 max |y'| over the frame's edge",
    mathml: math(
      line("100 *"),
      bracket(applied("<mi>max</mi>", over(line("W"), line("w")), line(","), over(line("H"), line("h"))), line("- 1")),
      line(", W = 2 *"),
      applied("<mi>max</mi>", line("| x' |")),
      line(", H = 2 *"),
      applied("<mi>max</mi>", line("| y' |")),
    ),
    symbols: [
      { symbol: "W, H", meaning: "width and height of the canvas, about the middle of the frame", unit: "mm" },
      HALVES,
      { symbol: "x', y'", meaning: "points of the frame's edge on the other side, from the middle of the frame", unit: "mm" },
    ],
    validity:
      "Undistort: the ideal picture that holds all of the recorded frame; redistort: the recorded picture that holds all of an ideal frame. The largest over the take's lens states, the edge sampled at 64 points a side, since the extreme need not be in a corner; canvases in whole pixels at the recorded resolution, the same amount on both sides. Negative where the picture shrinks; nothing where an edge point is not defined.",
    source:
      "SMPTE RIS OSVP, OpenLensIO 1.0.1, eq. 7 and 21 to 24, with absolute values, so that a shifted centre counts on both sides",
  },
  {
    id: "calibration-coverage",
    title: "Calibration coverage",
    expression:
      "error between two points at most K (g / 2)^2; K = largest e / ((b - a) (c - b)) over the table's inner points; widest gap 2 sqrt(1 / K)",
    mathml: math(
      words("error"),
      line("≤ K *"),
      power(bracket(over(line("g"), line("2"))), line("2")),
      line(", K ="),
      below(`<mi>max</mi>`, words("inner points")),
      over(line("e"), row(bracket(line("b - a")), bracket(line("c - b")))),
    ),
    symbols: [
      { symbol: "g", meaning: "gap between neighbouring points, in 1/distance, log of focal length or stops", unit: "" },
      { symbol: "a, b, c", meaning: "three neighbouring points of the table on that axis", unit: "" },
      {
        symbol: "e",
        meaning:
          "error at b when it is left out and read from a and c, over what is allowed: 0.5 px at the corner, 0.1 stop of shading",
        unit: "",
      },
      { symbol: "K", meaning: "curvature of the lens on that axis, the largest that its own table shows", unit: "" },
    ],
    validity:
      "A frame is covered when the gap around it is at most the widest one, but never more than twice a gap that was tested, and when it lies past a last point by no more than the last slope allows. An axis with fewer than three points has plain steps: 10 % of focal length, half a dioptre, a stop. Set-ups are chosen one after the other, each for the most frames that are still open.",
    source:
      "Derived from first principles (remainder of linear interpolation, f'' / 2 times (x - a)(x - b), at most f'' / 2 times (g / 2)^2); set-ups after V. Chvatal, Mathematics of Operations Research 4(3), 1979; the tolerances are this project's choice",
  },
]);
