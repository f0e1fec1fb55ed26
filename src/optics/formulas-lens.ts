/** Formulas of the lens look: distortion, shading, calibration, focus pulls. */
import type { Formula, FormulaSymbol } from "./formula.ts";
import { below, bracket, line, log2, math, over, power, root, row, words } from "./mathml.ts";

const RADIUS: FormulaSymbol = { symbol: "r", meaning: "radius from the distortion centre on the recorded sensor", unit: "mm" };
const POINT: FormulaSymbol = { symbol: "x, y", meaning: "point from the distortion centre, x right, y down", unit: "mm" };
const OTHER: FormulaSymbol = { symbol: "x', y'", meaning: "the same point on the other side", unit: "mm" };
const DIOPTRES: FormulaSymbol = { symbol: "q", meaning: "focus, 1 over the distance from the image plane", unit: "1/m" };

const r = (exponent: string) => power(line("r"), line(exponent));

export const LENS_FORMULAS: readonly Formula[] = Object.freeze([
  {
    id: "distortion-brown-conrady",
    title: "Distortion, Brown-Conrady model",
    expression:
      "x' = x R + 2 p1 x y + p2 (r^2 + 2 x^2); y' = y R + 2 p2 x y + p1 (r^2 + 2 y^2); R = (1 + k1 r^2 + k2 r^4 + k3 r^6) / (1 + k4 r^2 + k5 r^4 + k6 r^6)",
    mathml: math(
      line("x' = x * R + 2 * p_1 * x * y + p_2"),
      bracket(r("2"), line("+ 2 *"), power(line("x"), line("2"))),
      line(", R ="),
      over(
        row(line("1 + k_1 *"), r("2"), line("+ k_2 *"), r("4"), line("+ k_3 *"), r("6")),
        row(line("1 + k_4 *"), r("2"), line("+ k_5 *"), r("4"), line("+ k_6 *"), r("6")),
      ),
    ),
    symbols: [
      POINT,
      OTHER,
      { symbol: "k1 to k6", meaning: "radial terms", unit: "mm^-2, mm^-4, mm^-6" },
      { symbol: "p1, p2", meaning: "tangential terms", unit: "1/mm" },
      RADIUS,
    ],
    validity:
      "In the direction that the table or log says: undistort takes recorded points to ideal ones, distort ideal to recorded. The other direction by Newton's method. Only inside the circle in which the equation never turns back; beyond it nothing is given.",
    source: "OpenCV, calib3d.hpp, detailed description; D. C. Brown 1971",
  },
  {
    id: "distortion-division",
    title: "Distortion, division model",
    expression: "x' = x / (1 + lambda r^2); inverse r = 2 r' / (1 + sqrt(1 - 4 lambda r'^2))",
    mathml: math(
      line("x' ="),
      over(line("x"), row(line("1 + λ *"), r("2"))),
      line(", r ="),
      over(line("2 * r'"), row(line("1 +"), root(line("1 - 4 * λ *"), power(line("r'"), line("2"))))),
    ),
    symbols: [POINT, OTHER, { symbol: "lambda", meaning: "the model's one term", unit: "mm^-2" }, RADIUS],
    validity:
      "In the direction that the table or log says. Both directions are exact. Nothing is given where the root is not real.",
    source: "R. Lenz 1987; A. Fitzgibbon 2001; reviewed in ISPRS Annals V-1-2021, p. 89",
  },
  {
    id: "distortion-anamorphic-even",
    title: "Distortion, even anamorphic model",
    expression: "x' = x (1 + ax2 x^2 + ax4 x^4 + ay2 y^2 + ay4 y^4); y' = y (1 + bx2 x^2 + bx4 x^4 + by2 y^2 + by4 y^4)",
    mathml: math(
      line("x' = x"),
      bracket(
        line("1 + a_x2 *"),
        power(line("x"), line("2")),
        line("+ a_x4 *"),
        power(line("x"), line("4")),
        line("+ a_y2 *"),
        power(line("y"), line("2")),
        line("+ a_y4 *"),
        power(line("y"), line("4")),
      ),
    ),
    symbols: [POINT, OTHER, { symbol: "ax2 to by4", meaning: "terms of x^2, x^4, y^2, y^4 for each axis", unit: "mm^-2, mm^-4" }],
    validity:
      "In the direction that the table or log says, the other by Newton's method. There is no standard for anamorphic distortion; this form is written out so that others can read the numbers.",
    source: "This project's choice among separate even polynomials of x and y",
  },
  {
    id: "distortion-percent",
    title: "Distortion in percent",
    expression: "percent = 100 (r recorded - r ideal) / r ideal",
    mathml: math(
      line("100 *"),
      over(row(below(line("r"), words("recorded")), line("-"), below(line("r"), words("ideal"))), below(line("r"), words("ideal"))),
    ),
    symbols: [
      { symbol: "r recorded", meaning: "radius of the recorded point, from the distortion centre", unit: "mm" },
      { symbol: "r ideal", meaning: "radius of the same point in a picture without distortion", unit: "mm" },
    ],
    validity:
      "At the corner, the middle of the side and the middle of the top of the active area; negative is barrel. Where the corners differ (a shifted centre, tangential terms) the largest magnitude.",
    source: "G. Hollows and N. James, Imaging Resource Guide 3.3; ISO 17850:2015, 6.1",
  },
  {
    id: "picture-height-distortion",
    title: "Picture-height distortion",
    expression: "percent = 100 (height at the sides - height in the middle) / (2 height in the middle)",
    mathml: math(line("100 *"), over(row(line("h_s - h_m")), line("2 * h_m"))),
    symbols: [
      { symbol: "h_s", meaning: "recorded height of the ideal frame at its sides, mean of both", unit: "mm" },
      { symbol: "h_m", meaning: "recorded height of the ideal frame in its middle", unit: "mm" },
    ],
    validity: "Negative is barrel. Wave distortion can give 0 here, so the largest distortion in the field is given beside it.",
    source: "EBU Tech 3249 (1995), 2.11",
  },
  {
    id: "shading-stops",
    title: "Shading in stops",
    expression: "g = 1 - (a1 r^2 + a2 r^4 + a3 r^6) for loss, g = 1 + a1 r^2 + a2 r^4 + a3 r^6 for gain; stops = log2(g)",
    mathml: math(
      words("stops"),
      line("="),
      log2(line("g")),
      line(", g = 1 -"),
      bracket(line("a_1 *"), r("2"), line("+ a_2 *"), r("4"), line("+ a_3 *"), r("6")),
    ),
    symbols: [
      { symbol: "g", meaning: "brightness against the centre", unit: "" },
      { symbol: "a1, a2, a3", meaning: "shading terms", unit: "in the table's shading radius" },
      { symbol: "r", meaning: "recorded radius from the shading centre", unit: "in the table's shading radius" },
    ],
    validity:
      "At the corner, the middle of the side and the middle of the top; negative is darker. A brightness of 0 or less, or above 1, is a fault of the data.",
    source: "OpenLensIO, exposure fall-off (loss); lensfun, vignetting model pa (gain)",
  },
  {
    id: "calibration-between-points",
    title: "Between calibration points",
    expression:
      "value = a + (b - a) w, w in 1/distance first, then in log2 T, then in focal length; k and p as k f and p f over focal length",
    mathml: math(line("a +"), bracket(line("b - a")), line("* w , w ="), over(line("q - q_a"), line("q_b - q_a"))),
    symbols: [
      { symbol: "a, b", meaning: "values at the two neighbouring points", unit: "" },
      { symbol: "w", meaning: "part of the way from a to b", unit: "" },
      DIOPTRES,
    ],
    validity:
      "Inside the table only: beyond it the nearest value on that axis is used and said, and a missing cell takes the nearest row. A table that does not say its direction and radius is shown and not used.",
    source:
      "D. C. Brown 1971 (two-distance formula, nearly linear in 1/distance); lensfun (k f over focal length, both its axes reciprocal)",
  },
  {
    id: "focus-pull",
    title: "Focus pull",
    expression:
      "delta = N c / f^2; held: 0.25 s within 0.30 delta; a pull: from hold to hold, at least 1 delta apart; extent in depths = |q to - q from| / (1/near - 1/far)",
    mathml: math(line("δ ="), over(line("N * c"), power(line("f"), line("2"))), line(", | q_2 - q_1 | ≥ δ")),
    symbols: [
      { symbol: "delta", meaning: "one-sided depth of field at the take's widest stop", unit: "1/m" },
      { symbol: "N", meaning: "f-number", unit: "" },
      { symbol: "c", meaning: "circle of confusion, a diameter on the sensor", unit: "mm" },
      { symbol: "f", meaning: "focal length", unit: "mm" },
      DIOPTRES,
      { symbol: "near, far", meaning: "limits of depth of field at the start frame", unit: "m" },
    ],
    validity:
      "A move begins where focus is more than 0.5 delta from its hold and is dated from the last frame within 0.15 delta. There and back without a hold is two pulls, split at the extreme. A gap in the log ends a pull. Smaller moves are trims. delta is raised to 4 steps of a coarse log and 8 standard deviations of its noise.",
    source:
      "Thresholds are this project's choice, after Salvucci and Goldberg, ETRA 2000 (dispersion and velocity thresholds) and the Schmitt trigger",
  },
  {
    id: "focus-speed",
    title: "Speed of a pull",
    expression: "peak = largest |q[i+1] - q[i-1]| / 2 x frames a second; mean = |q to - q from| / duration",
    mathml: math(line("v ="), over(line("| q_i+1 - q_i-1 |"), line("2")), line("* fps")),
    symbols: [DIOPTRES, { symbol: "fps", meaning: "frames a second of the camera", unit: "1/s" }],
    validity: "Three frames are needed; speeds are at the capture rate, so that an off-speed take has the speed of the lens.",
    source: "Derived from first principles (central difference)",
  },
]);
