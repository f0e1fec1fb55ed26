/**
 * What stood before the camera: small painted worlds of flat shapes, in metres. X is to the right, Y up, Z away from the camera,
 * which stands at X = 0, Z = 0. Light is linear, 0 to 1. Everything straight here is straight in a picture without distortion.
 *
 * @typedef {readonly [number, number, number]} Light
 * @typedef {{ z: number, x0: number, x1: number, y0: number, y1: number, light: Light | ((x: number, y: number) => Light | null) }} Board
 *   an upright rectangle that faces the camera; a function may leave parts of it open
 * @typedef {{ boards: readonly Board[], ground: (x: number, z: number) => Light, sky: (slope: number, side: number) => Light }} World
 *   slope and side: height and width of the direction over its depth
 */

const mix = (a, b, u) => [a[0] + (b[0] - a[0]) * u, a[1] + (b[1] - a[1]) * u, a[2] + (b[2] - a[2]) * u];
const scale = (light, by) => [light[0] * by, light[1] * by, light[2] * by];
const clamp = (u) => Math.min(1, Math.max(0, u));

/** A clinker dinghy seen from the side, its keel on the ground. */
function boat(z, x, length, y, light, trim) {
  return {
    z,
    x0: x,
    x1: x + length,
    y0: y,
    y1: y + length * 0.62,
    light: (px, py) => {
      const u = (px - x) / length;
      const v = (py - y) / length;
      const sheer = 0.2 + 0.1 * (2 * u - 1) * (2 * u - 1);
      const keel = 0.62 * (u - 0.5) * (u - 0.5);
      if (v > keel && v < sheer) return v > sheer - 0.03 ? trim : scale(light, Math.floor((v - keel) / 0.035) % 2 === 0 ? 1 : 0.82);
      return Math.abs(u - 0.58) < 0.012 && v >= sheer && v < 0.6 ? trim : null;
    },
  };
}

/** Marker posts along the causeway, nearest last so that the nearer ones are painted over the farther. */
function posts(light, cap) {
  const boards = [];
  for (let z = 70; z >= 4; z -= 6)
    for (const x of [-2.5, 2.5]) {
      const top = 2.1 + 0.12 * Math.sin(z * 1.7 + x);
      boards.push({ z, x0: x - 0.08, x1: x + 0.08, y0: 0, y1: top, light: (_, y) => (y > top - 0.22 ? cap : light) });
    }
  return boards;
}

/** @returns {World} */
function causeway({ dark, afloat }) {
  const tone = (r, g, b) => (dark ? [r * 0.055, g * 0.07, b * 0.11] : [r, g, b]);
  const [stone, joint, sand, water, sheen] = [
    tone(0.34, 0.33, 0.3),
    tone(0.16, 0.16, 0.15),
    tone(0.42, 0.37, 0.29),
    tone(0.2, 0.27, 0.3),
    tone(0.5, 0.56, 0.58),
  ];
  const lantern = dark ? (x, z) => 0.5 / (0.4 + (x - 1.1) * (x - 1.1) + (z - 6.5) * (z - 6.5)) : () => 0;
  const post = tone(0.12, 0.1, 0.085);
  const hut = {
    z: 34,
    x0: 5,
    x1: 10.5,
    y0: 0,
    y1: 8.2,
    light: (x, y) => {
      const wall = y > 3.6 && y < 6.4 && x > 5.3 && x < 10.2;
      if (wall)
        return x > 7.1 && x < 8.1 && y > 4.4 && y < 5.5
          ? dark
            ? [0.95, 0.6, 0.22]
            : tone(0.07, 0.09, 0.1)
          : tone(0.36, 0.35, 0.33);
      if (y >= 6.4) return Math.abs(x - 7.75) < (8.2 - y) * 1.53 ? tone(0.2, 0.17, 0.15) : null;
      return y <= 3.6 && [5.5, 7.05, 8.45, 10].some((leg) => Math.abs(x - leg) < 0.13) ? post : null;
    },
  };
  const boards = [hut, ...posts(post, dark ? tone(0.6, 0.6, 0.6) : [0.62, 0.12, 0.08])];
  if (afloat) boards.push(boat(dark ? 13.2 : 8.4, dark ? -5.3 : -6.2, 3.4, 0, tone(0.1, 0.22, 0.27), tone(0.7, 0.66, 0.56)));
  if (dark) boards.push({ z: 6.5, x0: 1, x1: 1.2, y0: 0.02, y1: 0.34, light: [1, 0.8, 0.42] });
  return {
    boards,
    ground: (x, z) => {
      const glow = lantern(x, z);
      const lit = (light) => (glow > 0.004 ? [light[0] + glow * 0.5, light[1] + glow * 0.3, light[2] + glow * 0.1] : light);
      const side = Math.abs(x);
      if (side < 2.2) {
        const seam = z < 26 && (z % 1.1 < 0.06 || Math.abs(side - 0.73) < 0.03);
        return lit(seam ? joint : stone);
      }
      const edge = 3.4 + 1.6 * Math.sin(z * 0.23 + (x > 0 ? 1 : 4)) + z * 0.02;
      if (side < edge) return lit(scale(sand, 0.9 + 0.1 * Math.sin(z * 2.1)));
      return mix(water, sheen, clamp(z / 90) * 0.8 + 0.08 * Math.sin(z * 0.9 + side * 0.2));
    },
    sky: (slope, side) => {
      if (slope < 0.022 + 0.012 * Math.sin(side * 5.1) + 0.008 * Math.sin(side * 13 + 2)) return tone(0.3, 0.34, 0.38);
      return mix(tone(0.86, 0.85, 0.82), tone(0.42, 0.54, 0.68), clamp(slope * 2.2));
    },
  };
}

/** @returns {World} the boathouse: a plank wall with its doors open to the sea */
function boathouse({ inside }) {
  const plank = (x, y) =>
    scale(
      [0.15, 0.12, 0.09],
      x - Math.floor(x / 0.2) * 0.2 < 0.016 ? 0.35 : 0.85 + 0.15 * Math.sin(Math.floor(x / 0.2) * 3.7 + y * 0.2),
    );
  const wall = {
    z: 7.2,
    x0: -9,
    x1: 9,
    y0: 0,
    y1: 6,
    light: (x, y) => {
      if (Math.abs(x + 0.3) < 1.25 && y < 2.5) return null;
      const pane = x > 1.55 && x < 2.75 && y > 1.15 && y < 2.2;
      if (pane) return (x - 1.55) % 0.4 < 0.035 || (y - 1.15) % 0.35 < 0.035 ? [0.07, 0.06, 0.05] : null;
      return Math.abs(y - 2.62) < 0.1 ? [0.24, 0.2, 0.15] : plank(x, y);
    },
  };
  const beams = [0, 1, 2].map((n) => ({
    z: 6.6 - n * 1.4,
    x0: -9,
    x1: 9,
    y0: 2.95 + n * 0.02,
    y1: 3.15 + n * 0.02,
    light: scale([0.2, 0.16, 0.12], 1 - n * 0.15),
  }));
  const boards = [wall, ...beams];
  if (inside === "boat")
    boards.push(boat(5.6, -1.72, 1.9, 0.3, [0.3, 0.09, 0.06], [0.55, 0.5, 0.4]), trestle(5.5, -1.25), trestle(5.5, -0.35));
  if (inside === "balls")
    boards.push(
      ball(4.2, -0.75, 1.25, [0.2, 0.2, 0.2], false),
      ball(4.2, -0.15, 1.25, [0.62, 0.66, 0.68], true),
      chart(4.2, 0.35, 1.0),
    );
  return {
    boards,
    ground: (x, z) => {
      if (z > 7.2) return mix([0.3, 0.36, 0.38], [0.62, 0.66, 0.66], clamp((z - 20) / 120));
      return scale(
        [0.2, 0.165, 0.125],
        x - Math.floor(x / 0.24) * 0.24 < 0.014 ? 0.4 : 0.75 + 0.2 * Math.sin(Math.floor(x / 0.24) * 2.3),
      );
    },
    sky: (slope) => mix([0.86, 0.87, 0.86], [0.6, 0.68, 0.76], clamp(slope * 3)),
  };
}

const trestle = (z, x) => ({
  z,
  x0: x - 0.2,
  x1: x + 0.2,
  y0: 0,
  y1: 0.36,
  light: (px, py) => (py > 0.28 || Math.abs(Math.abs(px - x) - (0.16 - py * 0.2)) < 0.025 ? [0.22, 0.18, 0.12] : null),
});

const ball = (z, x, y, light, mirror) => ({
  z,
  x0: x - 0.2,
  x1: x + 0.2,
  y0: y - 1.3,
  y1: y + 0.2,
  light: (px, py) => {
    const [u, v] = [(px - x) / 0.19, (py - y) / 0.19];
    if (u * u + v * v < 1) {
      if (mirror) return v > 0.05 ? scale(light, 0.75 + 0.4 * v) : scale([0.2, 0.16, 0.12], 1 + v * 0.6);
      return scale(light, clamp(0.35 + 0.65 * (v * 0.7 + u * 0.35 + Math.sqrt(1 - u * u - v * v) * 0.5)));
    }
    return Math.abs(px - x) < 0.015 && py < y ? [0.05, 0.05, 0.05] : null;
  },
});

/** Six grey steps over a row of squares. */
const chart = (z, x, y) => ({
  z,
  x0: x,
  x1: x + 0.6,
  y0: y,
  y1: y + 0.42,
  light: (px, py) => {
    const column = Math.floor((px - x) / 0.1);
    if (py > y + 0.2) return scale([0.9, 0.9, 0.9], 0.03 + 0.194 * column);
    return (column + Math.floor((py - y) / 0.1)) % 2 === 0 ? [0.03, 0.03, 0.03] : [0.85, 0.85, 0.85];
  },
});

/** Worlds by the name that the schedule uses; `grid` is drawn on the sensor by stills.mjs. */
export const WORLDS = {
  "causeway-boat": () => causeway({ dark: false, afloat: true }),
  causeway: () => causeway({ dark: false, afloat: false }),
  "night-boat": () => causeway({ dark: true, afloat: true }),
  night: () => causeway({ dark: true, afloat: false }),
  "boathouse-boat": () => boathouse({ inside: "boat" }),
  boathouse: () => boathouse({ inside: null }),
  "boathouse-balls": () => boathouse({ inside: "balls" }),
};
