/** Formulas of depth and view. */
import type { Formula, FormulaSymbol } from "./formula.ts";
import { applied, bracket, line, math, over, power, root, row } from "./mathml.ts";

const FOCAL: FormulaSymbol = { symbol: "f", meaning: "focal length", unit: "mm" };
const F_NUMBER: FormulaSymbol = { symbol: "N", meaning: "f-number", unit: "" };
const CONFUSION: FormulaSymbol = { symbol: "c", meaning: "circle of confusion, a diameter on the sensor", unit: "mm" };
const OBJECT: FormulaSymbol = { symbol: "s", meaning: "focus distance from the front principal plane", unit: "mm" };
const IMAGE: FormulaSymbol = { symbol: "v", meaning: "image distance behind the rear principal plane", unit: "mm" };
const FROM_PLANE: FormulaSymbol = { symbol: "D", meaning: "focus distance from the image plane", unit: "mm" };
const MAGNIFICATION: FormulaSymbol = { symbol: "m", meaning: "magnification, image over object", unit: "" };

export const GEOMETRY_FORMULAS: readonly Formula[] = Object.freeze([
  {
    id: "object-distance",
    title: "Distance from the lens",
    expression: "s = (D + sqrt(D^2 - 4 f D)) / 2; v = f s / (s - f)",
    mathml: math(
      line("s ="),
      over(row(line("D +"), root(power(line("D"), line("2")), line("- 4 * f * D"))), line("2")),
      line(", v ="),
      over(line("f * s"), line("s - f")),
    ),
    symbols: [OBJECT, FROM_PLANE, FOCAL, IMAGE],
    validity:
      "Thin lens, for D of four focal lengths or more; closer than that (closer than 1:1) nothing is calculated. Focus scales and tapes read D.",
    source:
      "Derived from first principles (D = s + v, 1/f = 1/s + 1/v). Check: D = f (2 + M + 1/M), large-format forum thread t-81060.",
  },
  {
    id: "hyperfocal",
    title: "Hyperfocal distance",
    expression: "H = f^2 / (N c) + f; shown from the image plane as H + f H / (H - f)",
    mathml: math(line("H ="), over(power(line("f"), line("2")), line("N * c")), line("+ f")),
    symbols: [
      { symbol: "H", meaning: "hyperfocal distance from the front principal plane", unit: "mm" },
      FOCAL,
      F_NUMBER,
      CONFUSION,
    ],
    validity: "Thin lens, pupil magnification 1. The nearest focus at which the far limit is infinity.",
    source:
      'Wikipedia "Hyperfocal distance", definition 1; N. Porcino, "Practical On-Set and Virtual Production Camera" (2026). Distance from the image plane derived from first principles.',
  },
  {
    id: "depth-of-field",
    title: "Depth of field",
    expression:
      "1/near = 1/s + d; 1/far = 1/s - d; d = (N c / f^2) (1 - f/s); both limits are shown from the image plane, v further",
    mathml: math(
      over(line("1"), `<mi>near</mi>`),
      line("="),
      over(line("1"), line("s")),
      line("+ d ,"),
      over(line("1"), `<mi>far</mi>`),
      line("="),
      over(line("1"), line("s")),
      line("- d , d ="),
      over(line("N * c"), power(line("f"), line("2"))),
      bracket(line("1 -"), over(line("f"), line("s"))),
    ),
    symbols: [
      OBJECT,
      { symbol: "d", meaning: "one-sided depth, the same on both sides when counted in 1/distance", unit: "1/mm" },
      FOCAL,
      F_NUMBER,
      CONFUSION,
      IMAGE,
    ],
    validity:
      "Exact for a thin lens, pupil magnification 1; where the kit gives a lens's pupil magnification P the limits are those of m = P (f m +- c N) / (P f -+ c N). The far limit is infinity from the hyperfocal distance on. Refused below four focal lengths from the image plane. With T in place of N the depth shown is too long by 1/sqrt(tau).",
    source:
      'Derived from first principles; follows from the blur formula of R. Grothmann, "Depth of Field of an Ideal Lens" (Euler Math Toolbox examples).',
  },
  {
    id: "circle-of-confusion",
    title: "Circle of confusion",
    expression: "c = sqrt(W^2 + H^2) / 1500, unless the show sets its own",
    mathml: math(line("c ="), over(root(power(line("W"), line("2")), line("+"), power(line("H"), line("2"))), line("1500"))),
    symbols: [CONFUSION, { symbol: "W, H", meaning: "active width and height of the sensor mode", unit: "mm" }],
    validity: "A convention, not a property of the lens: every depth of field is printed with the c it used.",
    source: "N. Porcino, LabCamera, coc_from_sensor.",
  },
  {
    id: "angle-of-view",
    title: "Angle of view",
    expression: "a = 2 atan(X q / (2 f (1 + m))); m = f / (s - f)",
    mathml: math(
      line("a = 2"),
      applied("<mi>atan</mi>", over(line("X * q"), row(line("2 * f"), bracket(line("1 + m"))))),
      line(", m ="),
      over(line("f"), line("s - f")),
    ),
    symbols: [
      { symbol: "a", meaning: "angle of view", unit: "degrees" },
      { symbol: "X", meaning: "active width, height or desqueezed diagonal of the sensor mode", unit: "mm" },
      { symbol: "q", meaning: "anamorphic squeeze, for the width only", unit: "" },
      FOCAL,
      MAGNIFICATION,
      OBJECT,
    ],
    validity: "Rectilinear thin lens, pupil magnification 1, on the active area of the recorded mode. Distortion is not counted.",
    source: 'D. Jacobson, "Photographic Lenses FAQ" v1.18, Q6; Wikipedia "Angle of view".',
  },
  {
    id: "field-size",
    title: "Size of the field in focus",
    expression: "W = X q (s - f) / f",
    mathml: math(line("W = X * q"), over(line("s - f"), line("f"))),
    symbols: [
      { symbol: "W", meaning: "width or height of what is seen in the focused plane", unit: "mm" },
      { symbol: "X", meaning: "active width or height of the sensor mode", unit: "mm" },
      { symbol: "q", meaning: "anamorphic squeeze, for the width only", unit: "" },
      OBJECT,
      FOCAL,
    ],
    validity: "Thin lens. Infinite when focused at infinity.",
    source: "Derived from first principles.",
  },
  {
    id: "breathing",
    title: "Breathing, estimated for unit focus",
    expression: "B = 100 (a(s) / a(reference) - 1)",
    mathml: math(line("B = 100"), bracket(over(line("a_s"), line("a_ref")), line("- 1"))),
    symbols: [
      { symbol: "B", meaning: "change of the angle of view; negative is narrower", unit: "%" },
      { symbol: "a", meaning: "angle of view at a focus, and at the reference focus (infinity)", unit: "degrees" },
    ],
    validity:
      "For a lens that focuses by moving as a whole. Inner focusing may have the other sign: an estimate, never a measurement.",
    source: 'Definition: Wikipedia "Breathing (lens)". The percent form is this project\'s choice.',
  },
] satisfies readonly Formula[]);
