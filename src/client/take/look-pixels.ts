/**
 * Pixels of the lens look: a picture of the sensor seen with parts of the look taken off, by the builder's own map and
 * shading. Rooms are made once and used for every frame.
 */
import type { CanonicalDistortion } from "../../optics/distortion/canonical.ts";
import { fastMap } from "../../optics/distortion/fast-map.ts";
import type { MapGrid, MapUnits } from "../../optics/distortion/map-grid.ts";
import type { CanonicalShading } from "../../optics/shading.ts";
import type { BoxMm } from "../../still/middle-look.ts";
import type { Picture } from "../../still/picture.ts";
import { byteFromLinear, linearFromByte } from "../../still/srgb.ts";

/** A picture of the whole sensor in linear light, three values a pixel, from 0 to `WHITE`. */
export interface LightPicture {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly light: Uint16Array;
}

/** Near black, where the code is steepest, a step of light is a twentieth of a step of the code. */
const WHITE = 65_535;

export function lightOf({ widthPx, heightPx, rgba }: Omit<Picture, "rgba"> & { readonly rgba: ArrayLike<number> }): LightPicture {
  const light = new Uint16Array(3 * widthPx * heightPx);
  const steps = Uint16Array.from({ length: 256 }, (_, byte) => Math.round(WHITE * linearFromByte(byte)));
  for (let i = 0, to = 0; i < rgba.length; i += 4) {
    for (let channel = 0; channel < 3; channel++) light[to++] = steps[rgba[i + channel] ?? 0] ?? 0;
  }
  return { widthPx, heightPx, light };
}

/** What a canvas shows: a box of the sensor plane, and the sensor that the picture covers. */
export interface View {
  readonly columns: number;
  readonly rows: number;
  readonly box: BoxMm;
  readonly widthMm: number;
  readonly heightMm: number;
}

/** Where each pixel of a view is recorded, in pixels of the picture; NaN where the lens records nothing. */
export interface RecordedPlaces {
  readonly x: Float32Array;
  readonly y: Float32Array;
}

export function roomFor(view: View): RecordedPlaces {
  return { x: new Float32Array(view.columns * view.rows), y: new Float32Array(view.columns * view.rows) };
}

/** How far a place may be off, in pixels of the picture. */
const TOLERANCE_PX = 0.05;

/** Works out the places for a distortion, or for the picture as recorded when it is `null`. */
export function placesFor(
  view: View,
  picture: { readonly widthPx: number; readonly heightPx: number },
  distortion: CanonicalDistortion | null,
  into: RecordedPlaces,
): void {
  const grid = gridOf(view);
  const units = unitsOf(view, picture);
  if (distortion !== null) {
    fastMap(distortion, "recorded", grid, units, into.x, into.y, TOLERANCE_PX);
    return;
  }
  for (let row = 0, i = 0; row < grid.rows; row++) {
    const y = (grid.firstYMm + row * grid.stepYMm) * units.yPerMm + units.yAtMiddle;
    for (let column = 0; column < grid.columns; column++, i++) {
      into.x[i] = (grid.firstXMm + column * grid.stepXMm) * units.xPerMm + units.xAtMiddle;
      into.y[i] = y;
    }
  }
}

function gridOf({ columns, rows, box }: View): MapGrid {
  const stepXMm = (box.rightMm - box.leftMm) / columns;
  const stepYMm = (box.bottomMm - box.topMm) / rows;
  return { columns, rows, stepXMm, stepYMm, firstXMm: box.leftMm + stepXMm / 2, firstYMm: box.topMm + stepYMm / 2 };
}

function unitsOf(view: View, { widthPx, heightPx }: { readonly widthPx: number; readonly heightPx: number }): MapUnits {
  return {
    xPerMm: widthPx / view.widthMm,
    xAtMiddle: (widthPx - 1) / 2,
    yPerMm: heightPx / view.heightMm,
    yAtMiddle: (heightPx - 1) / 2,
  };
}

/** One colour all over, given in linear light from 0 to 1. */
export function plainCard(light: readonly [red: number, green: number, blue: number]): LightPicture {
  return { widthPx: 1, heightPx: 1, light: Uint16Array.from(light, (value) => Math.round(WHITE * value)) };
}

/** The code of each step of light, made on first use. */
let codes: Uint8Array | null = null;

function codeTable(): Uint8Array {
  codes ??= Uint8Array.from({ length: WHITE + 1 }, (_, step) => byteFromLinear(step / WHITE));
  return codes;
}

/** What happens to the light: nothing, the lens's shading taken off, or put on (for a plain card, which never had it). */
export type Tone = "as it is" | "taken off" | "put on";

/**
 * Paints columns `from` to `to` of a view into `out`, four bytes a pixel in memory order red, green, blue, opacity. Between
 * pixels the picture is read in straight lines, in linear light; what lies outside it is clear.
 */
export function paintPixels(
  view: View,
  { widthPx, heightPx, light }: LightPicture,
  places: RecordedPlaces,
  shading: CanonicalShading | null,
  tone: Tone,
  out: Uint32Array,
  from: number,
  to: number,
): void {
  const { x: placesX, y: placesY } = places;
  const { xPerMm, xAtMiddle, yPerMm, yAtMiddle } = unitsOf(view, { widthPx, heightPx });
  const s = shading ?? { b1: 0, b2: 0, b3: 0, centreXMm: 0, centreYMm: 0, squeeze: 1 };
  const shaded = shading !== null && tone !== "as it is";
  const code = codeTable();
  const lastX = widthPx - 1;
  const lastY = heightPx - 1;
  for (let row = 0; row < view.rows; row++) {
    for (let i = row * view.columns + from, end = row * view.columns + to; i < end; i++) {
      const x = placesX[i] as number;
      const y = placesY[i] as number;
      if (!(x >= -0.5 && x <= lastX + 0.5 && y >= -0.5 && y <= lastY + 0.5)) {
        out[i] = 0;
        continue;
      }
      const insideX = Math.min(Math.max(x, 0), lastX);
      const insideY = Math.min(Math.max(y, 0), lastY);
      const left = insideX | 0;
      const top = insideY | 0;
      const u = insideX - left;
      const v = insideY - top;
      const a = 3 * (top * widthPx + left);
      const b = left < lastX ? a + 3 : a;
      const c = top < lastY ? a + 3 * widthPx : a;
      const d = c + b - a;
      let red = between(light, a, b, c, d, u, v);
      let green = between(light, a + 1, b + 1, c + 1, d + 1, u, v);
      let blue = between(light, a + 2, b + 2, c + 2, d + 2, u, v);
      if (shaded) {
        const xMm = ((x - xAtMiddle) / xPerMm - s.centreXMm) * s.squeeze;
        const yMm = (y - yAtMiddle) / yPerMm - s.centreYMm;
        const uu = xMm * xMm + yMm * yMm;
        const factor = 1 + uu * (s.b1 + uu * (s.b2 + uu * s.b3));
        const gain = tone === "taken off" ? 1 / factor : factor;
        red = Math.min(red * gain, WHITE);
        green = Math.min(green * gain, WHITE);
        blue = Math.min(blue * gain, WHITE);
      }
      const r = code[(red + 0.5) | 0] as number;
      const g = code[(green + 0.5) | 0] as number;
      const bl = code[(blue + 0.5) | 0] as number;
      out[i] = 0xff000000 | (bl << 16) | (g << 8) | r;
    }
  }
}

/** Light between four pixels: straight lines across, then down. */
function between(light: Uint16Array, a: number, b: number, c: number, d: number, u: number, v: number): number {
  const la = light[a] as number;
  const lc = light[c] as number;
  const above = la + u * ((light[b] as number) - la);
  return above + v * (lc + u * ((light[d] as number) - lc) - above);
}
