// Prints the lens maths of the compiled library as JSON: cameras, points in mm from the middle of the sensor, mapped points.
import { canonicalDistortion, idealFromRecorded, recordedFromIdeal } from "../../dist/optics/index.js";

const AREA = { width: 28.16, height: 15.84 };
/** Coefficients with r = 1 at the focal length, as OpenCV has them: barrel, pincushion, tangential, rational, shifted. */
const CAMERAS = [
  { name: "barrel", focalMm: 24, terms: { k1: -0.12, k2: 0.018, k3: -0.0012 } },
  { name: "pincushion", focalMm: 65, terms: { k1: 0.21, k2: -0.09 } },
  { name: "moustache", focalMm: 18, terms: { k1: -0.14, k2: 0.11, k3: -0.02 } },
  { name: "tangential", focalMm: 35, terms: { k1: -0.08, k2: 0.01, p1: 0.0011, p2: -0.0007 } },
  { name: "rational", focalMm: 21, terms: { k1: 0.42, k2: 0.06, k3: 0.001, k4: 0.5, k5: 0.11, k6: 0.004 } },
  { name: "shifted", focalMm: 29, terms: { k1: -0.06, k2: 0.007, cx_mm: 0.21, cy_mm: -0.13, p1: -0.0004 } },
];

const cases = CAMERAS.flatMap(({ name, focalMm, terms }) =>
  ["distort", "undistort"].map((direction) => {
    const convention = {
      model: "brown-conrady",
      direction,
      radius: "focal",
      areaMm: AREA,
      squeezeState: null,
      shadingRadius: null,
      shadingValues: "loss",
    };
    const lens = canonicalDistortion(convention, terms, focalMm);
    if ("refused" in lens) throw new Error(`${name}: ${lens.refused}`);
    const points = grid().map(([x, y]) => ({
      x,
      y,
      ideal: pair(idealFromRecorded(lens, x, y)),
      recorded: pair(recordedFromIdeal(lens, x, y)),
    }));
    return { name, direction, focalMm, terms, points };
  }),
);
process.stdout.write(`${JSON.stringify(cases)}\n`);

/** 13 x 9 points over the whole sensor, corners and middle among them. */
function grid() {
  return Array.from({ length: 117 }, (_, i) => [AREA.width * ((i % 13) / 12 - 0.5), AREA.height * (Math.floor(i / 13) / 8 - 0.5)]);
}

function pair(point) {
  return point === null ? null : Object.values(point);
}
