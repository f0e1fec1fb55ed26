// Reads requests as JSON from standard input and prints the compiled library's answers, one for each request, as JSON.
import { readFileSync } from "node:fs";
import { fastMap } from "../../dist/optics/distortion/fast-map.js";
import { pixelGrid } from "../../dist/optics/distortion/map-grid.js";
import {
  canonicalDistortion,
  canonicalFromOpenCv,
  canonicalShading,
  idealFromRecorded,
  recordedFromIdeal,
  shadingFactor,
} from "../../dist/optics/index.js";

/** Any width will do: what comes out is in pixels. */
const WIDTH_MM = 24.89;
const ANSWERS = { camera, map, distortion, shading };
const requests = JSON.parse(readFileSync(0, "utf8"));
process.stdout.write(JSON.stringify(requests.map((request) => ANSWERS[request.kind](request))));

/** Points in pixels through one of OpenCV's cameras: `side` is the side that is wanted. */
function camera({ camera: cv, side, points }) {
  const { distortion: d, area } = accepted(canonicalFromOpenCv(cv, WIDTH_MM));
  const { grid, units } = pixelGrid(area, cv);
  return points.map(([px, py]) => {
    const x = grid.firstXMm + px * grid.stepXMm;
    const y = grid.firstYMm + py * grid.stepYMm;
    const p = mapped(d, side, x, y);
    return p === null ? null : [p.xMm * units.xPerMm + units.xAtMiddle, p.yMm * units.yPerMm + units.yAtMiddle];
  });
}

/** The map that takes the look off, in pixels, by the fast path; rows one after the other, x then y. */
function map({ camera: cv }) {
  const { distortion: d, area } = accepted(canonicalFromOpenCv(cv, WIDTH_MM));
  const { grid, units } = pixelGrid(area, cv);
  const x = new Float64Array(grid.columns * grid.rows);
  const y = new Float64Array(grid.columns * grid.rows);
  const report = fastMap(d, "recorded", grid, units, x, y);
  return { report, x: [...x], y: [...y] };
}

/** Points in mm from the middle of the area. */
function distortion({ convention, coefficients, focalMm, side, points }) {
  const d = accepted(canonicalDistortion(filled(convention), coefficients, focalMm));
  return points.map(([x, y]) => {
    const p = mapped(d, side, x, y);
    return p === null ? null : [p.xMm, p.yMm];
  });
}

/** Brightness at points in mm from the middle of the area. */
function shading({ convention, coefficients, focalMm, points }) {
  const s = accepted(canonicalShading(filled(convention), coefficients, focalMm));
  return points.map(([x, y]) => shadingFactor(s, x, y));
}

function mapped(d, side, x, y) {
  return side === "ideal" ? idealFromRecorded(d, x, y) : recordedFromIdeal(d, x, y);
}

function filled(convention) {
  return {
    model: null,
    direction: null,
    radius: null,
    areaMm: null,
    squeezeState: null,
    shadingRadius: null,
    shadingValues: "loss",
    ...convention,
  };
}

function accepted(value) {
  if ("refused" in value) throw new Error(value.refused);
  return value;
}
