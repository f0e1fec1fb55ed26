/**
 * A smooth lens of our own making: distortion that is barrel when wide and a touch of pincushion when long, changing with focus,
 * and shading that eases as the stop closes. The calibration tables are readings of it, the stills are drawn through it.
 * It is linear in dioptres and in log2 T between the table's points, so that reading the table gives the model back.
 */
import { random } from "./rng.mjs";

export const AREA = { width: 28.8, height: 16.2 };
const HALF_DIAGONAL = Math.sqrt(AREA.width * AREA.width + AREA.height * AREA.height) / 2;

/**
 * @typedef {object} Table
 * @property {"undistort" | "distort" | null} direction `null`: whoever made the table forgot to say
 * @property {"half-diagonal" | "focal"} radius
 * @property {readonly (readonly [number, number, number])[]} k `[focal, k1, k2]` at infinity
 * @property {number} kSlope growth of k a dioptre
 * @property {readonly [number, number]} [p]
 * @property {readonly (readonly [number, number])[]} a1 `[T, a1]` at infinity
 * @property {number} a2
 * @property {number} aSlope growth of a1 a dioptre
 * @property {readonly [number, number]} [pupil] millimetres at infinity, growth a dioptre
 * @property {readonly (number)[]} focus metres, near to far
 * @property {string} made
 * @property {string} [source]
 */

/** @type {Readonly<Record<string, Table>>} */
export const TABLES = {
  K19: {
    direction: "undistort",
    radius: "half-diagonal",
    k: [[19, 0.0412, -0.0061]],
    kSlope: 0.075,
    a1: [
      [2.3, 0.442],
      [4, 0.268],
      [8, 0.191],
    ],
    a2: 0.078,
    aSlope: 0.035,
    pupil: [101, 1.1],
    focus: [0.6, 1.2, 3, Infinity],
    made: "2026-08-18",
  },
  K34: {
    direction: "distort",
    radius: "focal",
    k: [[34, -0.0648, 0.0215]],
    kSlope: 0.11,
    p: [0.0004, -0.0003],
    a1: [
      [2.1, 0.336],
      [4, 0.171],
      [8, 0.118],
    ],
    a2: 0.041,
    aSlope: 0.045,
    pupil: [88, 1.6],
    focus: [0.34, 1, 2.5, Infinity],
    made: "2026-08-18",
  },
  K58: {
    direction: null,
    radius: "half-diagonal",
    k: [[58, -0.0043, 0.0008]],
    kSlope: 0.09,
    a1: [[2.1, 0.212]],
    a2: 0.02,
    aSlope: 0.05,
    focus: [0.52, 1.5, Infinity],
    made: "2024-02-05",
    source: "sheet that came with the lens",
  },
  K96: {
    direction: "undistort",
    radius: "half-diagonal",
    k: [[96, -0.0086, 0.0014]],
    kSlope: 0.12,
    a1: [
      [2.1, 0.231],
      [4, 0.094],
    ],
    a2: 0.017,
    aSlope: 0.06,
    pupil: [118, 4.2],
    focus: [0.85, 2, 5, Infinity],
    made: "2026-08-19",
  },
  "KZ31-87": {
    direction: "undistort",
    radius: "half-diagonal",
    k: [
      [31, 0.0355, -0.0052],
      [45, 0.0124, -0.0018],
      [62, -0.0031, 0.0006],
      [87, -0.0117, 0.0019],
    ],
    kSlope: 0.085,
    a1: [
      [2.9, 0.318],
      [5.6, 0.149],
      [8, 0.121],
    ],
    a2: 0.03,
    aSlope: 0.04,
    pupil: [139, 2.4],
    focus: [0.75, 1.5, 4, Infinity],
    made: "2026-08-20",
  },
};

/** Piecewise linear through points sorted by their first number; the ends hold. */
function between(points, x, value) {
  const last = points.length - 1;
  if (x <= points[0][0]) return value(points[0]);
  if (x >= points[last][0]) return value(points[last]);
  const i = points.findIndex((point) => point[0] > x);
  const u = (x - points[i - 1][0]) / (points[i][0] - points[i - 1][0]);
  return value(points[i - 1]) * (1 - u) + value(points[i]) * u;
}

/**
 * @param {string} lens
 * @param {number} focal millimetres
 * @param {number} dioptres
 * @param {number} t
 */
export function lensState(lens, focal, dioptres, t) {
  const table = TABLES[lens];
  const grown = 1 + table.kSlope * dioptres;
  const stops = table.a1.map(([stop, a1]) => /** @type {const} */ ([Math.log2(stop), a1]));
  const k = (index) => (between(table.k, focal, (point) => point[index] * point[0]) / focal) * grown;
  return {
    radius: table.radius === "focal" ? focal : HALF_DIAGONAL,
    direction: table.direction,
    k1: k(1),
    k2: k(2),
    p1: table.p?.[0] ?? 0,
    p2: table.p?.[1] ?? 0,
    a1: between(stops, Math.log2(t), (point) => point[1]) * (1 + table.aSlope * dioptres),
    a2: table.a2,
    pupil: table.pupil ? table.pupil[0] + table.pupil[1] * dioptres : null,
  };
}

/** One reading of the polynomial, radii in units of the state's radius. */
function bend(state, x, y) {
  const r2 = x * x + y * y;
  const radial = 1 + state.k1 * r2 + state.k2 * r2 * r2;
  return [
    x * radial + 2 * state.p1 * x * y + state.p2 * (r2 + 2 * x * x),
    y * radial + state.p1 * (r2 + 2 * y * y) + 2 * state.p2 * x * y,
  ];
}

/**
 * Where a recorded point of the sensor lies in the picture of a lens without distortion; millimetres from the centre.
 * The `distort` direction is inverted by fixed point steps: the distortion here is weak, twelve steps reach 1e-9.
 * @param {ReturnType<typeof lensState>} state
 * @param {number} xMm
 * @param {number} yMm
 */
export function idealPoint(state, xMm, yMm) {
  const x = xMm / state.radius;
  const y = yMm / state.radius;
  if (state.direction === "undistort") return bend(state, x, y).map((value) => value * state.radius);
  let [u, v] = [x, y];
  for (let i = 0; i < 12; i++) {
    const [bx, by] = bend(state, u, v);
    u += x - bx;
    v += y - by;
  }
  return [u * state.radius, v * state.radius];
}

/**
 * Brightness against the centre at a recorded point.
 * @param {ReturnType<typeof lensState>} state
 * @param {number} xMm
 * @param {number} yMm
 */
export function brightness(state, xMm, yMm) {
  const r2 = (xMm * xMm + yMm * yMm) / (HALF_DIAGONAL * HALF_DIAGONAL);
  return 1 - (state.a1 * r2 + state.a2 * r2 * r2);
}

/**
 * The calibration table as the bench wrote it: the model's values with the last digit's scatter of a measurement.
 * @param {string} lens
 */
export function calibrationCsv(lens) {
  const table = TABLES[lens];
  const scatter = random(`bench ${lens}`);
  const lines = ["# model: brown-conrady"];
  if (table.direction) lines.push(`# direction: ${table.direction}`);
  lines.push(
    `# radius: ${table.radius}`,
    "# area_mm: 28.80x16.20",
    "# shading_radius: half-diagonal",
    "# shading_values: loss",
    `# made_on: ${table.made}`,
  );
  lines.push(table.source ? `# source: ${table.source}` : "# made_by: lens bench");
  lines.push(
    [
      "focal_mm",
      "focus_m",
      "t",
      "k1",
      "k2",
      ...(table.p ? ["p1", "p2"] : []),
      "a1",
      "a2",
      ...(table.pupil ? ["entrance_pupil_mm"] : []),
    ].join(","),
  );
  for (const [focal] of table.k)
    for (const focus of table.focus) {
      const k1Scatter = scatter.range(-0.0001, 0.0001);
      for (const [t] of table.a1) {
        const s = lensState(lens, focal, focus === Number.POSITIVE_INFINITY ? 0 : 1 / focus, t);
        const cells = [focal, focus === Number.POSITIVE_INFINITY ? "inf" : focus.toFixed(2), table.a1.length === 1 ? "" : t];
        cells.push((s.k1 + k1Scatter).toFixed(5), s.k2.toFixed(5));
        if (table.p) cells.push(s.p1.toFixed(4), s.p2.toFixed(4));
        cells.push((s.a1 + scatter.range(-0.002, 0.002)).toFixed(4), s.a2.toFixed(4));
        if (s.pupil !== null) cells.push(s.pupil.toFixed(1));
        lines.push(cells.join(","));
      }
    }
  return `${lines.join("\n")}\n`;
}
