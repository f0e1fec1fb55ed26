/**
 * Draws a still as the lens recorded it: for every point of the sensor, where that point lies in a picture without distortion,
 * what stood there, and how much darker the lens makes it. Taking the look off gives straight lines and an even light again.
 */
import { AREA, brightness, idealPoint } from "./lens-model.mjs";
import { WORLDS } from "./pictures.mjs";
import { png } from "./png.mjs";

const WIDTH = 480;
const HEIGHT = 270;
const PITCH = AREA.width / WIDTH;

/** Linear light to a code value by the sRGB curve, from a table: 4096 steps are finer than the 256 that come out. */
const CODE = Uint8Array.from({ length: 4097 }, (_, i) => {
  const v = i / 4096;
  return Math.round(255 * (v <= 0.0031308 ? 12.92 * v : 1.055 * Math.exp(Math.log(v) / 2.4) - 0.055));
});
const code = (light) => CODE[Math.round(Math.min(1, Math.max(0, light)) * 4096)];

/** How much of a line of half width `half` covers a sample of width `soft`, by its distance from the line. */
const cover = (away, half, soft) => Math.min(1, Math.max(0, (half - away) / soft + 0.5));

/** A square grid of 1.8 mm on the ideal sensor, every fourth line bold, a ring in the middle and a square in each corner field. */
function grid(x, y) {
  const off = (value, step) => Math.abs(value - Math.round(value / step) * step);
  const thin = Math.max(cover(off(x, 1.8), 0.035, PITCH / 3), cover(off(y, 1.8), 0.035, PITCH / 3));
  const bold = Math.max(cover(off(x, 7.2), 0.09, PITCH / 3), cover(off(y, 7.2), 0.09, PITCH / 3));
  const ring = cover(Math.abs(Math.sqrt(x * x + y * y) - 3.6), 0.05, PITCH / 3);
  const field = Math.abs(Math.abs(x) - 11.7) < 0.45 && Math.abs(Math.abs(y) - 6.3) < 0.45 ? 1 : 0;
  return 0.8 - 0.77 * Math.max(thin * 0.75, bold, ring, field);
}

/** A function from a direction to light: the camera at its height, tipped by its tilt. */
function camera(world, height, tiltDeg) {
  const angle = (tiltDeg * Math.PI) / 180;
  const [sin, cos] = [Math.sin(angle), Math.cos(angle)];
  const boards = [...world.boards].sort((a, b) => a.z - b.z);
  return (x, y, focal) => {
    const up = -y * cos + focal * sin;
    const ahead = focal * cos + y * sin;
    const [side, slope] = [x / ahead, up / ahead];
    const horizon = slope < 0 ? -height / slope : Number.POSITIVE_INFINITY;
    for (const b of boards) {
      if (b.z > horizon) break;
      const [px, py] = [side * b.z, height + slope * b.z];
      if (px < b.x0 || px > b.x1 || py < b.y0 || py > b.y1) continue;
      const light = typeof b.light === "function" ? b.light(px, py) : b.light;
      if (light !== null) return light;
    }
    return horizon < 4000 ? world.ground(side * horizon, horizon) : world.sky(slope, side);
  };
}

/** Where the corners of every pixel lie in a picture without distortion, x and y by turns. */
function idealCorners(state) {
  const corners = new Float64Array(2 * (WIDTH + 1) * (HEIGHT + 1));
  let i = 0;
  for (let row = 0; row <= HEIGHT; row++)
    for (let column = 0; column <= WIDTH; column++) {
      const [x, y] = idealPoint(state, column * PITCH - AREA.width / 2, row * PITCH - AREA.height / 2);
      corners[i++] = x;
      corners[i++] = y;
    }
  return corners;
}

/** Between the four corners of a pixel: the lens hardly bends anything within one. */
function within(corners, at, u, v) {
  const below = at + 2 * (WIDTH + 1);
  const top = corners[at] + (corners[at + 2] - corners[at]) * u;
  return top + (corners[below] + (corners[below + 2] - corners[below]) * u - top) * v;
}

/**
 * @param {{ picture: string, height: number, tilt: number }} shot
 * @param {ReturnType<typeof import("./lens-model.mjs").lensState> & { focal: number }} state
 * @returns {Uint8Array} a PNG
 */
export function still(shot, state) {
  const chart = shot.picture === "grid";
  const look = chart ? null : camera(WORLDS[shot.picture](), shot.height, shot.tilt);
  const channels = chart ? 1 : 3;
  const samples = chart ? 3 : 2;
  const corners = idealCorners(state);
  const pixels = new Uint8Array(WIDTH * HEIGHT * channels);
  const sum = [0, 0, 0];
  for (let row = 0; row < HEIGHT; row++)
    for (let column = 0; column < WIDTH; column++) {
      sum.fill(0);
      const at = 2 * (row * (WIDTH + 1) + column);
      for (let s = 0; s < samples * samples; s++) {
        const u = ((s % samples) + 0.5) / samples;
        const v = (Math.floor(s / samples) + 0.5) / samples;
        const x = within(corners, at, u, v);
        const y = within(corners, at + 1, u, v);
        if (look === null) sum[0] += grid(x, y);
        else {
          const light = look(x, y, state.focal);
          for (let c = 0; c < 3; c++) sum[c] += light[c];
        }
      }
      const x = (column + 0.5) * PITCH - AREA.width / 2;
      const y = (row + 0.5) * PITCH - AREA.height / 2;
      const by = brightness(state, x, y) / (samples * samples);
      for (let c = 0; c < channels; c++) pixels[(row * WIDTH + column) * channels + c] = code(sum[c] * by);
    }
  return png(WIDTH, HEIGHT, channels, pixels);
}
