/** OpenCV's remap: a picture looked up through a map, bilinear, what is outside black. Wait for `openCvReady` first. */
import { createRequire } from "node:module";

interface Mat {
  readonly data: Uint8Array;
  delete(): void;
}

interface OpenCv {
  Mat: new () => Mat;
  CV_8UC1: number;
  CV_32FC1: number;
  INTER_LINEAR: number;
  BORDER_CONSTANT: number;
  Scalar: new () => object;
  matFromArray(rows: number, cols: number, type: number, values: ArrayLike<number>): Mat;
  remap(from: Mat, to: Mat, mapX: Mat, mapY: Mat, interpolation: number, border: number, value: object): void;
}

const library: OpenCv = createRequire(import.meta.url)("@techstark/opencv-js");

export function openCvRemap(
  picture: Uint8Array,
  width: number,
  height: number,
  map: { readonly x: Float32Array; readonly y: Float32Array },
): Uint8Array {
  const from = library.matFromArray(height, width, library.CV_8UC1, picture);
  const mapX = library.matFromArray(height, width, library.CV_32FC1, map.x);
  const mapY = library.matFromArray(height, width, library.CV_32FC1, map.y);
  const to = new library.Mat();
  library.remap(from, to, mapX, mapY, library.INTER_LINEAR, library.BORDER_CONSTANT, new library.Scalar());
  const result = to.data.slice();
  for (const mat of [from, mapX, mapY, to]) mat.delete();
  return result;
}
