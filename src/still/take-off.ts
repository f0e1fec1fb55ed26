/** Takes distortion and shading off a still. */
import type { CanonicalDistortion } from "../optics/distortion/canonical.ts";
import { fastMap } from "../optics/distortion/fast-map.ts";
import { type CanonicalShading, shadingFactor } from "../optics/shading.ts";
import type { BoxMm, LookOnArea } from "./middle-look.ts";
import type { Picture } from "./picture.ts";
import { byteFromLinear, linearFromByte } from "./srgb.ts";

/** How far a sample may lie from its place, in pixels of the still. */
const TOLERANCE_PX = 0.05;
/** A picture that spreads to more than this many times its frame is not made. */
const MOST_SPREAD = 2;

/** Which parts of the look are taken off. */
export interface Parts {
  readonly distortion: boolean;
  readonly shading: boolean;
}

/**
 * The picture with parts of the look taken off. Without distortion it fills `idealBox` at the scale of the still and is clear
 * where the still has nothing; with it, it keeps the still's own pixels. Between pixels it is read in straight lines, in linear
 * light, taking the still for sRGB; shading divides, and what passes white is white. `null` when a part is asked for that the
 * look has not, or when the picture would spread too far.
 */
export function takeOff(still: Picture, look: LookOnArea, parts: Parts): Picture | null {
  const { distortion, shading, idealBox } = look;
  const light = linearOf(still);
  const factor = parts.shading ? shading : null;
  if (parts.shading && shading === null) return null;
  if (!parts.distortion) return factor === null ? still : withoutShading(still, light, look, factor);
  if (distortion === null || idealBox === null) return null;
  return withoutDistortion(still, light, look, { distortion, idealBox, factor });
}

function withoutShading(still: Picture, light: Float32Array, look: LookOnArea, shading: CanonicalShading): Picture {
  const { widthPx, heightPx } = still;
  const rgba = new Uint8Array(4 * widthPx * heightPx);
  for (let i = 0; i < widthPx * heightPx; i++) {
    const x = ((i % widthPx) + 0.5) / widthPx - 0.5;
    const y = (Math.floor(i / widthPx) + 0.5) / heightPx - 0.5;
    const gain = 1 / shadingFactor(shading, x * look.widthMm, y * look.heightMm);
    for (let channel = 0; channel < 3; channel++) rgba[4 * i + channel] = byteFromLinear((light[3 * i + channel] ?? 0) * gain);
    rgba[4 * i + 3] = still.rgba[4 * i + 3] ?? 255;
  }
  return { widthPx, heightPx, rgba };
}

interface Job {
  readonly distortion: CanonicalDistortion;
  readonly idealBox: BoxMm;
  readonly factor: CanonicalShading | null;
}

function withoutDistortion(still: Picture, light: Float32Array, look: LookOnArea, job: Job): Picture | null {
  const { leftMm, topMm, rightMm, bottomMm } = job.idealBox;
  const perMmX = still.widthPx / look.widthMm;
  const perMmY = still.heightPx / look.heightMm;
  const widthPx = Math.round((rightMm - leftMm) * perMmX);
  const heightPx = Math.round((bottomMm - topMm) * perMmY);
  if (!(widthPx >= 1 && widthPx <= MOST_SPREAD * still.widthPx && heightPx >= 1 && heightPx <= MOST_SPREAD * still.heightPx)) {
    return null;
  }
  const stepXMm = (rightMm - leftMm) / widthPx;
  const stepYMm = (bottomMm - topMm) / heightPx;
  const grid = {
    ...{ columns: widthPx, rows: heightPx, stepXMm, stepYMm },
    ...{ firstXMm: leftMm + stepXMm / 2, firstYMm: topMm + stepYMm / 2 },
  };
  // pixel 0 of the still has its middle at half a pixel from the edge
  const units = { xPerMm: perMmX, xAtMiddle: (still.widthPx - 1) / 2, yPerMm: perMmY, yAtMiddle: (still.heightPx - 1) / 2 };
  const fromX = new Float64Array(widthPx * heightPx);
  const fromY = new Float64Array(widthPx * heightPx);
  fastMap(job.distortion, "recorded", grid, units, fromX, fromY, TOLERANCE_PX);
  const rgba = new Uint8Array(4 * widthPx * heightPx);
  const sample = new Float32Array(4);
  for (let i = 0; i < fromX.length; i++) {
    const x = fromX[i] ?? Number.NaN;
    const y = fromY[i] ?? Number.NaN;
    if (!sampleAt(still, light, x, y, sample)) continue;
    const gain =
      job.factor === null ? 1 : 1 / shadingFactor(job.factor, (x - units.xAtMiddle) / perMmX, (y - units.yAtMiddle) / perMmY);
    for (let channel = 0; channel < 3; channel++) rgba[4 * i + channel] = byteFromLinear((sample[channel] ?? 0) * gain);
    rgba[4 * i + 3] = Math.round(sample[3] ?? 0);
  }
  return { widthPx, heightPx, rgba };
}

/** Linear light and opacity between four pixels; false outside the still's outer edge. */
function sampleAt(still: Picture, light: Float32Array, x: number, y: number, into: Float32Array): boolean {
  const { widthPx, heightPx, rgba } = still;
  if (!(x >= -0.5 && x <= widthPx - 0.5 && y >= -0.5 && y <= heightPx - 0.5)) return false;
  const left = Math.floor(Math.min(Math.max(x, 0), widthPx - 1));
  const top = Math.floor(Math.min(Math.max(y, 0), heightPx - 1));
  const u = Math.min(Math.max(x - left, 0), 1);
  const v = Math.min(Math.max(y - top, 0), 1);
  const right = Math.min(left + 1, widthPx - 1);
  const bottom = Math.min(top + 1, heightPx - 1);
  const corners = [top * widthPx + left, top * widthPx + right, bottom * widthPx + left, bottom * widthPx + right] as const;
  const weights = [(1 - u) * (1 - v), u * (1 - v), (1 - u) * v, u * v] as const;
  into.fill(0);
  for (let corner = 0; corner < 4; corner++) {
    const at = corners[corner] ?? 0;
    const weight = weights[corner] ?? 0;
    for (let channel = 0; channel < 3; channel++) {
      into[channel] = (into[channel] ?? 0) + weight * (light[3 * at + channel] ?? 0);
    }
    into[3] = (into[3] ?? 0) + weight * (rgba[4 * at + 3] ?? 0);
  }
  return true;
}

function linearOf(still: Picture): Float32Array {
  const light = new Float32Array(3 * still.widthPx * still.heightPx);
  for (let i = 0; i < still.widthPx * still.heightPx; i++) {
    for (let channel = 0; channel < 3; channel++) light[3 * i + channel] = linearFromByte(still.rgba[4 * i + channel] ?? 0);
  }
  return light;
}
