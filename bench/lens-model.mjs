// Points per second of a 3840 x 2160 map, ours beside OpenCV's (wasm), in one run on one core, medians of five; and the time to
// read a calibration table for a take of 1,440 frames. Run after `npm run prepare`: node bench/lens-model.mjs
import { spawnSync } from "node:child_process";
import { createRequire } from "node:module";
import { fileURLToPath } from "node:url";
import { coefficientsAt } from "../dist/optics/calibration.js";
import { completeCanonical } from "../dist/optics/distortion/canonical.js";
import { canonicalFromOpenCv } from "../dist/optics/distortion/convert.js";
import { fastMap } from "../dist/optics/distortion/fast-map.js";
import { exactMap, pixelGrid } from "../dist/optics/distortion/map-grid.js";

const WIDTH = 3840;
const HEIGHT = 2160;
const POINTS = WIDTH * HEIGHT;
const RUNS = 5;
const FRAMES = 1440;
/** The camera's own coefficients distort (ideal to recorded), as OpenCV has them. */
const CAMERA = {
  fx: 3600,
  fy: 3600,
  cx: 1931.5,
  cy: 1072.25,
  widthPx: WIDTH,
  heightPx: HEIGHT,
  coefficients: [-0.11, 0.021, 0.0006, -0.0004, -0.0025],
};

runOnOneCore();
const cv = await openCv();
const { distortion, area } = canonicalFromOpenCv(CAMERA, 28.16);
/** The same numbers the other way about: the map that takes the look off then needs the inverse at every point. */
const inverse = completeCanonical("brown-conrady", distortion, { ...distortion, direction: "undistort" });
const { grid, units } = pixelGrid(area, CAMERA);
const x = new Float32Array(POINTS);
const y = new Float32Array(POINTS);

console.log(`${WIDTH} x ${HEIGHT}, brown-conrady, ${RUNS} runs, Node ${process.version}`);
const results = [
  line("OpenCV initUndistortRectifyMap (evaluates)", () => openCvMap(cv)),
  line("fast map, evaluating", () => fastMap(distortion, "recorded", grid, units, x, y)),
  line("fast map, inverting", () => fastMap(inverse, "recorded", grid, units, x, y)),
  line("exact map, evaluating", () => exactMap(distortion, "recorded", grid, units, x, y)),
  line("exact map, inverting", () => exactMap(inverse, "recorded", grid, units, x, y), 3),
];
console.log(`inverting by the fast map is ${(results[0] / results[2]).toFixed(2)} times as fast as OpenCV evaluating`);
console.log(`largest miss of the fast map against the exact one: ${largestMiss(inverse).toExponential(1)} px inverting`);

console.log(`\ncalibration table, ${FRAMES} frames`);
for (const [name, table] of tables()) tableLine(name, table);
process.exit(0);

function line(name, work, runs = RUNS) {
  work();
  const seconds = Array.from({ length: runs }, () => time(work));
  const median = middle(seconds);
  console.log(
    `${name.padEnd(44)} ${(median * 1000).toFixed(1).padStart(8)} ms ${(POINTS / median / 1e6).toFixed(1).padStart(7)} M points/s`,
  );
  return median;
}

function time(work) {
  const start = performance.now();
  work();
  return (performance.now() - start) / 1000;
}

function middle(values) {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];
}

function largestMiss(d) {
  const exactX = new Float64Array(POINTS);
  const exactY = new Float64Array(POINTS);
  const fastX = new Float64Array(POINTS);
  const fastY = new Float64Array(POINTS);
  exactMap(d, "recorded", grid, units, exactX, exactY);
  fastMap(d, "recorded", grid, units, fastX, fastY);
  let largest = 0;
  for (let i = 0; i < POINTS; i++) {
    largest = Math.max(largest, Math.abs(exactX[i] - fastX[i]), Math.abs(exactY[i] - fastY[i]));
  }
  return largest;
}

function tableLine(name, table) {
  const work = () => {
    for (let frame = 0; frame < FRAMES; frame++) {
      const way = frame / FRAMES;
      coefficientsAt(table, { focalMm: 31 + 50 * way, focusDioptres: 0.1 + 1.1 * way, tStop: 2.9 + 4 * way });
    }
  };
  const first = time(work);
  const warm = middle(Array.from({ length: 21 }, () => time(work)));
  console.log(`${name.padEnd(44)} ${(warm * 1000).toFixed(2).padStart(8)} ms   (first time ${(first * 1000).toFixed(2)} ms)`);
}

/** A prime's table (4 distances, 1 stop), and a zoom's (4 focal lengths x 4 distances x 3 stops). */
function tables() {
  const convention = {
    model: "brown-conrady",
    direction: "undistort",
    radius: "half-diagonal",
    areaMm: { width: 28.8, height: 16.2 },
    squeezeState: null,
    shadingRadius: "half-diagonal",
    shadingValues: "loss",
  };
  const table = (focals, stops) => ({
    convention,
    points: focals.flatMap((focalMm) =>
      [0, 0.25, 0.67, 1.33].flatMap((focusDioptres) =>
        stops.map((tStop) => ({
          focalMm,
          focusDioptres,
          tStop,
          coefficients: {
            k1: 1 / focalMm + focusDioptres / 1e3,
            k2: -0.005,
            a1: 0.3,
            a2: 0.03,
            entrance_pupil_mm: 130 + focusDioptres,
          },
        })),
      ),
    ),
  });
  return [
    ["prime, 4 rows", table([40], [null])],
    ["zoom, 48 rows", table([31, 40, 60, 81], [2.9, 5.6, 8])],
  ];
}

/** The module is a thenable that resolves to itself: it is required, not imported, and its start waited for. */
async function openCv() {
  const library = createRequire(import.meta.url)("@techstark/opencv-js");
  if (typeof library.Mat !== "function") {
    await new Promise((resolve) => {
      library.onRuntimeInitialized = resolve;
    });
  }
  const mat = (rows, columns, values) => library.matFromArray(rows, columns, library.CV_64F, values);
  return {
    library,
    camera: mat(3, 3, [CAMERA.fx, 0, CAMERA.cx, 0, CAMERA.fy, CAMERA.cy, 0, 0, 1]),
    terms: mat(1, CAMERA.coefficients.length, CAMERA.coefficients),
    none: new library.Mat(),
    mapX: new library.Mat(),
    mapY: new library.Mat(),
  };
}

/** The maps' memory is kept from run to run, as ours is. */
function openCvMap({ library, camera, terms, none, mapX, mapY }) {
  library.initUndistortRectifyMap(camera, terms, none, camera, new library.Size(WIDTH, HEIGHT), library.CV_32FC1, mapX, mapY);
}

/** Starts itself again bound to one core where the system can do that. */
function runOnOneCore() {
  if (process.env.ONE_CORE === "yes" || spawnSync("taskset", ["--version"], { stdio: "ignore" }).status !== 0) return;
  const args = ["-c", "0", process.execPath, fileURLToPath(import.meta.url)];
  const { status } = spawnSync("taskset", args, { stdio: "inherit", env: { ...process.env, ONE_CORE: "yes" } });
  process.exit(status ?? 1);
}
