import { describe, expect, it } from "vitest";
import { looksOf } from "../../src/client/take/look-at.ts";
import { lightOf, paintPixels, placesFor, plainCard, roomFor, type View } from "../../src/client/take/look-pixels.ts";
import { completeCanonical } from "../../src/optics/distortion/canonical.ts";
import { recordedFromIdeal } from "../../src/optics/distortion/map.ts";
import { exactMap } from "../../src/optics/distortion/map-grid.ts";
import { lookOnArea } from "../../src/still/middle-look.ts";
import type { Picture } from "../../src/still/picture.ts";
import { takeOff } from "../../src/still/take-off.ts";
import { lensLookFrames } from "../../src/summary/lens-look-frames.ts";
import { takeRecord } from "../../src/view/take/take-data.ts";
import { lensTake } from "../summary/lens-show.ts";

const AREA = { widthMm: 28.8, heightMm: 16.2 };
const SIZE = { widthPx: 480, heightPx: 270 };
const SHADING = { b1: -0.0015, b2: 0, b3: 0, centreXMm: 0, centreYMm: 0, squeeze: 1 };
const LENSES = {
  "barrel, undistort": completeCanonical("brown-conrady", { k1: 1.2e-4, k2: -2e-8 }, { direction: "undistort" }),
  "barrel, distort": completeCanonical("brown-conrady", { k1: -1.2e-4, k2: 3e-8, p1: 2e-5 }, { direction: "distort" }),
  "pincushion, division": completeCanonical("division", { lambda: 1e-4 }, { direction: "undistort", centreXMm: 0.3 }),
  anamorphic: completeCanonical("anamorphic-even", { ax2: 8e-5, by2: -6e-5, ay2: 1e-5 }, { direction: "undistort" }),
};

/** Waves, ramps and hard edges; nothing is alike from pixel to pixel. */
const still: Picture = {
  ...SIZE,
  rgba: Uint8Array.from({ length: 4 * SIZE.widthPx * SIZE.heightPx }, (_, i) => {
    const x = (i >> 2) % SIZE.widthPx;
    const y = Math.floor((i >> 2) / SIZE.widthPx);
    return [128 + 100 * Math.sin(x / 7), (x * 255) / 480, ((x >> 4) + (y >> 4)) % 2 === 0 ? 40 : 210, 255][i & 3] ?? 0;
  }),
};

describe("the pixels of the panel", () => {
  for (const [name, distortion] of Object.entries(LENSES)) {
    for (const shading of [null, SHADING]) {
      it(`are the builder's, to one step of 255, with distortion${shading === null ? "" : " and shading"} taken off: ${name}`, () => {
        const look = lookOnArea(AREA, 1, distortion, shading);
        const built = look === null ? null : takeOff(still, look, { distortion: true, shading: shading !== null });
        if (look?.idealBox == null || built === null) throw new Error("no picture");
        const view: View = { columns: built.widthPx, rows: built.heightPx, box: look.idealBox, ...AREA };
        const places = roomFor(view);
        placesFor(view, SIZE, distortion, places);
        const out = new Uint32Array(view.columns * view.rows);
        paintPixels(view, lightOf(still), places, shading, "taken off", out, 0, view.columns);
        const bytes = new Uint8Array(out.buffer);
        let off = 0;
        for (let i = 0; i < bytes.length; i++) off = Math.max(off, Math.abs((bytes[i] ?? 0) - (built.rgba[i] ?? 0)));
        expect(off).toBeLessThanOrEqual(1);
      });
    }

    it(`come from where the exact map says, to a twentieth of a pixel: ${name}`, () => {
      const look = lookOnArea(AREA, 1, distortion, null);
      if (look?.idealBox == null) throw new Error("no look");
      const view: View = { columns: 200, rows: 113, box: look.idealBox, ...AREA };
      const places = roomFor(view);
      placesFor(view, SIZE, distortion, places);
      const stepXMm = (view.box.rightMm - view.box.leftMm) / 200;
      const stepYMm = (view.box.bottomMm - view.box.topMm) / 113;
      const firstXMm = view.box.leftMm + stepXMm / 2;
      const firstYMm = view.box.topMm + stepYMm / 2;
      const exact = { x: new Float64Array(200 * 113), y: new Float64Array(200 * 113) };
      const grid = { columns: 200, rows: 113, firstXMm, firstYMm, stepXMm, stepYMm };
      const units = { xPerMm: 480 / 28.8, xAtMiddle: 239.5, yPerMm: 270 / 16.2, yAtMiddle: 134.5 };
      exactMap(distortion, "recorded", grid, units, exact.x, exact.y);
      const off = Math.max(
        ...exact.x.map((x, i) => Math.max(Math.abs(x - (places.x[i] ?? 0)), Math.abs((exact.y[i] ?? 0) - (places.y[i] ?? 0)))),
      );
      expect(off).toBeLessThan(0.05);
    });
  }

  it("are the picture's own as recorded, and shading put on a card is what taking it off divides by", () => {
    const view: View = { columns: 480, rows: 270, box: { leftMm: -14.4, topMm: -8.1, rightMm: 14.4, bottomMm: 8.1 }, ...AREA };
    const places = roomFor(view);
    placesFor(view, SIZE, null, places);
    const out = new Uint32Array(480 * 270);
    paintPixels(view, lightOf(still), places, SHADING, "as it is", out, 0, 480);
    expect(Buffer.from(out.buffer).equals(Buffer.from(still.rgba))).toBe(true);
    const card = plainCard([0.5, 0.5, 0.5]);
    placesFor(view, card, null, places);
    paintPixels(view, card, places, SHADING, "put on", out, 0, 480);
    // top left pixel: r^2 = 14.37^2 + 8.07^2 = 271.6 mm2, factor 1 - 0.0015 x 271.6 = 0.5926, light 0.2963, sRGB code 148.5
    expect((out[0] ?? 0) & 0xff).toBeGreaterThanOrEqual(148);
    expect((out[0] ?? 0) & 0xff).toBeLessThanOrEqual(149);
    // the middle keeps 0.5, whose sRGB code is 188
    expect((out[135 * 480 + 240] ?? 0) & 0xff).toBe(188);
  });

  it("leave columns alone that are not asked for", () => {
    const view: View = { columns: 480, rows: 270, box: { leftMm: -14.4, topMm: -8.1, rightMm: 14.4, bottomMm: 8.1 }, ...AREA };
    const places = roomFor(view);
    placesFor(view, SIZE, null, places);
    const out = new Uint32Array(480 * 270).fill(7);
    paintPixels(view, lightOf(still), places, null, "as it is", out, 100, 200);
    expect(out[99]).toBe(7);
    expect(out[100]).not.toBe(7);
    expect(out[200]).toBe(7);
  });
});

describe("the look of a frame in the page", () => {
  it("is the builder's to a hundredth of a pixel of a 4K frame, on every frame", () => {
    const take = lensTake({
      frames: 200,
      keys: [
        "model: brown-conrady",
        "direction: distort",
        "radius: half-diagonal",
        "area_mm: 24.89 x 18.66",
        "shading_radius: half-diagonal",
      ],
      table: {
        header: "focal_mm,focus_m,t,k1,k2,p1,cx_mm,a1",
        rows: ["50,0.6,2.8,-0.052341,0.004417,0.000713,0.1234,0.31", "50,8,2.8,-0.061234,0.006113,0.000402,0.0567,0.22"],
      },
      cells: (i) => `${(3 + 2 * Math.sin(i / 20)).toFixed(3)},${i < 190 ? 2.8 : ""}`,
      logged: 195,
    });
    const record = takeRecord(take, "metric");
    const built = lensLookFrames(take);
    if (record?.look == null || built === null) throw new Error("no look");
    const lookAt = looksOf(record.look, record.frames);
    let largest = 0;
    for (let frame = 0; frame < 195; frame++) {
      const here = lookAt(frame);
      const there = built.look(frame);
      if (here?.distortion == null || there?.distortion == null || here.shading === null || there.shading === null) {
        throw new Error(`frame ${frame} has no look`);
      }
      for (const [x, y] of [
        [12.4, 9.3],
        [-12.4, 9.3],
        [12.4, 0],
        [3, -9.3],
      ] as const) {
        const a = recordedFromIdeal(here.distortion, x, y);
        const b = recordedFromIdeal(there.distortion, x, y);
        largest = Math.max(largest, (Math.hypot((a?.xMm ?? 99) - (b?.xMm ?? 0), (a?.yMm ?? 99) - (b?.yMm ?? 0)) * 4096) / 24.89);
      }
      expect(here.shading.b1).toBeCloseTo(there.shading.b1, 8);
    }
    expect(largest).toBeLessThan(0.01);
    expect(lookAt(197)).toBeNull();
  });
});
