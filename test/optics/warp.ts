/** Pictures of one channel: read, warped through a map, measured. Nothing here knows about lenses. */
import { readFileSync } from "node:fs";
import { PNG } from "pngjs";

export interface Picture {
  readonly width: number;
  readonly height: number;
  /** Row by row, 0 to 255. */
  readonly values: Float64Array;
}

/** The first channel of a PNG; grey is the same in all. */
export function readPng(path: string): Picture {
  const { width, height, data } = PNG.sync.read(readFileSync(path));
  return { width, height, values: Float64Array.from({ length: width * height }, (_, i) => data[4 * i]!) };
}

/** Looks up the picture at pixels (x, y) by cubic convolution (a = -1/2); NaN where its 4 x 4 neighbours are not all there. */
export function warp(picture: Picture, x: Float64Array, y: Float64Array, width: number, height: number): Picture {
  const values = new Float64Array(width * height).fill(Number.NaN);
  const across = new Float64Array(4);
  const down = new Float64Array(4);
  for (let i = 0; i < values.length; i++) {
    const left = Math.floor(x[i]!);
    const top = Math.floor(y[i]!);
    if (!(left >= 1 && top >= 1 && left < picture.width - 2 && top < picture.height - 2)) continue;
    kernel(x[i]! - left, across);
    kernel(y[i]! - top, down);
    let sum = 0;
    for (let v = 0; v < 4; v++) {
      for (let u = 0; u < 4; u++) sum += across[u]! * down[v]! * picture.values[(top + v - 1) * picture.width + left + u - 1]!;
    }
    values[i] = sum;
  }
  return { width, height, values };
}

/** @source R. Keys 1981, cubic convolution interpolation */
function kernel(t: number, weights: Float64Array): void {
  weights[0] = ((-t + 2) * t - 1) * t * 0.5;
  weights[1] = ((3 * t - 5) * t * t + 2) * 0.5;
  weights[2] = ((-3 * t + 4) * t + 1) * t * 0.5;
  weights[3] = (t - 1) * t * t * 0.5;
}

/** Peak signal to noise ratio in dB, values rounded to codes, a border of `margin` pixels left out; what is NaN fails it. */
export function psnr(a: Picture, b: Picture, margin: number): number {
  let sum = 0;
  let count = 0;
  for (let row = margin; row < a.height - margin; row++) {
    for (let column = margin; column < a.width - margin; column++) {
      const i = row * a.width + column;
      const code = (value: number) => Math.min(255, Math.max(0, Math.round(value)));
      sum += (code(a.values[i]!) - code(b.values[i]!)) ** 2;
      count++;
    }
  }
  return 10 * Math.log10((255 * 255 * count) / sum);
}

/**
 * Middle of a dark line that runs along rows (or, with `upright`, along columns): centroid of the darkness within `reach` pixels
 * of `near`, at one place `along` the line. `null` where the picture has no value.
 */
export function lineMiddle(picture: Picture, upright: boolean, along: number, near: number, reach: number): number | null {
  const at = (across: number) =>
    upright ? picture.values[along * picture.width + across]! : picture.values[across * picture.width + along]!;
  const first = Math.round(near - reach);
  const last = Math.round(near + reach);
  if (first < 0 || last >= (upright ? picture.width : picture.height)) return null;
  // The light falls off across the line: the ground is a slope between both ends, each the mean of three samples.
  const low = (at(first) + at(first + 1) + at(first + 2)) / 3;
  const high = (at(last) + at(last - 1) + at(last - 2)) / 3;
  let sum = 0;
  let weighted = 0;
  for (let across = first; across <= last; across++) {
    const dark = low + ((high - low) * (across - first - 1)) / (last - first - 2) - at(across);
    sum += dark;
    weighted += dark * across;
  }
  return sum > 0 ? weighted / sum : null;
}

export interface LineFit {
  readonly slope: number;
  readonly middle: number;
  /** Largest distance of a point from the line. */
  readonly largest: number;
  readonly points: number;
}

/** Least squares line through points (along, across). */
export function fitLine(points: readonly (readonly [number, number])[]): LineFit {
  const mean = (pick: (p: readonly [number, number]) => number) => points.reduce((sum, p) => sum + pick(p), 0) / points.length;
  const [along, across] = [mean((p) => p[0]), mean((p) => p[1])];
  const slope =
    points.reduce((sum, p) => sum + (p[0] - along) * (p[1] - across), 0) / points.reduce((sum, p) => sum + (p[0] - along) ** 2, 0);
  const largest = Math.max(...points.map((p) => Math.abs(p[1] - across - slope * (p[0] - along))));
  return { slope, middle: across - slope * along, largest, points: points.length };
}
