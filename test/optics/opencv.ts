/**
 * OpenCV's own functions as an oracle. The module is a thenable that resolves to itself: whatever awaits it (an import in a
 * test runner does) hangs for ever. It is required, and its runtime calls back when it is ready.
 */
import { createRequire } from "node:module";

interface Mat {
  readonly data64F: Float64Array;
  readonly data32F: Float32Array;
  delete(): void;
}

/** The few functions used here; the package's types lack some of them. */
interface OpenCv {
  Mat: new () => Mat;
  CV_64F: number;
  CV_64FC3: number;
  CV_32FC1: number;
  Size: new (width: number, height: number) => object;
  onRuntimeInitialized?: () => void;
  matFromArray(rows: number, cols: number, type: number, values: readonly number[]): Mat;
  projectPoints(points: Mat, rotation: Mat, translation: Mat, camera: Mat, distortion: Mat, out: Mat, jacobian: Mat): void;
  initUndistortRectifyMap(
    camera: Mat,
    distortion: Mat,
    rectify: Mat,
    newCamera: Mat,
    size: object,
    type: number,
    mapX: Mat,
    mapY: Mat,
  ): void;
}

const library: OpenCv = createRequire(import.meta.url)("@techstark/opencv-js");

export async function openCvReady(): Promise<void> {
  if (typeof library.Mat === "function") return;
  await new Promise<void>((resolve) => {
    library.onRuntimeInitialized = resolve;
  });
}

export interface Camera {
  readonly fx: number;
  readonly fy: number;
  readonly cx: number;
  readonly cy: number;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly coefficients: readonly number[];
}

function withMats<R>(work: (mat: (rows: number, cols: number, values: readonly number[]) => Mat, empty: () => Mat) => R): R {
  const mats: Mat[] = [];
  const keep = (m: Mat) => {
    mats.push(m);
    return m;
  };
  try {
    return work(
      (rows, cols, values) => keep(library.matFromArray(rows, cols, library.CV_64F, values)),
      () => keep(new library.Mat()),
    );
  } finally {
    for (const m of mats) m.delete();
  }
}

const matrixOf = (c: Camera) => [c.fx, 0, c.cx, 0, c.fy, c.cy, 0, 0, 1];

/** Distorted pixels of ideal points (x / z, y / z), in pairs. */
export function openCvProject(camera: Camera, points: readonly (readonly [number, number])[]): Float64Array {
  return withMats((mat, empty) => {
    const out = empty();
    const object = library.matFromArray(
      points.length,
      1,
      library.CV_64FC3,
      points.flatMap(([x, y]) => [x, y, 1]),
    );
    library.projectPoints(
      object,
      mat(3, 1, [0, 0, 0]),
      mat(3, 1, [0, 0, 0]),
      mat(3, 3, matrixOf(camera)),
      mat(1, camera.coefficients.length, camera.coefficients),
      out,
      empty(),
    );
    object.delete();
    return out.data64F.slice();
  });
}

/** For each pixel of the undistorted picture, where to look in the recorded one; float32. */
export function openCvUndistortMap(camera: Camera): { readonly x: Float32Array; readonly y: Float32Array } {
  return withMats((mat, empty) => {
    const mapX = empty();
    const mapY = empty();
    const matrix = mat(3, 3, matrixOf(camera));
    library.initUndistortRectifyMap(
      matrix,
      mat(1, camera.coefficients.length, camera.coefficients),
      empty(),
      matrix,
      new library.Size(camera.widthPx, camera.heightPx),
      library.CV_32FC1,
      mapX,
      mapY,
    );
    return { x: mapX.data32F.slice(), y: mapY.data32F.slice() };
  });
}
