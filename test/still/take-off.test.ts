import { describe, expect, it } from "vitest";
import { completeCanonical } from "../../src/optics/distortion/canonical.ts";
import { fitsArea, lookOnArea } from "../../src/still/middle-look.ts";
import type { Picture } from "../../src/still/picture.ts";
import { byteFromLinear, linearFromByte } from "../../src/still/srgb.ts";
import { takeOff } from "../../src/still/take-off.ts";

function painted(widthPx: number, heightPx: number, at: (x: number, y: number) => number): Picture {
  const rgba = new Uint8Array(4 * widthPx * heightPx).fill(255);
  for (let i = 0; i < widthPx * heightPx; i++) rgba.fill(at(i % widthPx, Math.floor(i / widthPx)), 4 * i, 4 * i + 3);
  return { widthPx, heightPx, rgba };
}

const pixel = (picture: Picture, x: number, y: number) => [
  ...picture.rgba.subarray(4 * (y * picture.widthPx + x), 4 * (y * picture.widthPx + x) + 4),
];
const shading = (b1: number) => ({ b1, b2: 0, b3: 0, centreXMm: 0, centreYMm: 0, squeeze: 1 });
const radial = (k1: number) => completeCanonical("brown-conrady", { k1 }, { direction: "undistort" });
const look = (area: { widthMm: number; heightMm: number }, k1: number | null, b1: number | null) =>
  lookOnArea(area, 1, k1 === null ? null : radial(k1), b1 === null ? null : shading(b1))!;

describe("sRGB", () => {
  it("goes to linear light and back for every byte", () => {
    for (let byte = 0; byte < 256; byte++) expect(byteFromLinear(linearFromByte(byte))).toBe(byte);
  });

  it("has 0.2140 of the light at half the scale, as IEC 61966-2-1 gives it", () => {
    expect(linearFromByte(127) * 0.5 + linearFromByte(128) * 0.5).toBeCloseTo(0.214, 3);
  });

  it("is black below black and white above white", () => {
    expect([byteFromLinear(-1), byteFromLinear(Number.NaN), byteFromLinear(1.7)]).toEqual([0, 0, 255]);
  });
});

describe("shading taken off", () => {
  it("doubles the light where the lens let half of it through", () => {
    // Pixels stand at -2, 0 and 2 mm; 1 - 0.125 x 4 = 0.5. Byte 128 is 0.21586 of the light; 0.43172 is
    // 1.055 x 0.43172^(1/2.4) - 0.055 = 0.68846, byte 175.6.
    const off = takeOff(
      painted(3, 1, () => 128),
      look({ widthMm: 6, heightMm: 2 }, null, -0.125),
      { distortion: false, shading: true },
    );
    expect([0, 1, 2].map((x) => pixel(off!, x, 0)[0])).toEqual([176, 128, 176]);
  });

  it("keeps what is white white", () => {
    const off = takeOff(
      painted(3, 1, () => 250),
      look({ widthMm: 6, heightMm: 2 }, null, -0.125),
      { distortion: false, shading: true },
    );
    expect(pixel(off!, 0, 0)).toEqual([255, 255, 255, 255]);
  });
});

describe("distortion taken off", () => {
  it("changes nothing on a lens without distortion", () => {
    const still = painted(40, 30, (x, y) => (7 * x + 5 * y) % 256);
    const off = takeOff(still, look({ widthMm: 8, heightMm: 6 }, 0, null), { distortion: true, shading: false });
    expect(off).toMatchObject({ widthPx: 40, heightPx: 30 });
    expect([...off!.rgba]).toEqual([...still.rgba]);
  });

  it("moves a line to where the equation puts it", () => {
    // 10 pixels a mm; column 220 has its middle at 10.05 mm, and 10.05 (1 + 0.001 x 10.05^2) = 11.0651 mm.
    const area = { widthMm: 24, heightMm: 13.5 };
    const still = painted(240, 135, (x) => (x === 220 ? 255 : 0));
    const at = look(area, 0.001, null);
    const off = takeOff(still, at, { distortion: true, shading: false })!;
    // the corner: r^2 = 144 + 45.5625, so 12 x 1.1895625 = 14.2748 mm to each side, 285.5 pixels
    expect(off.widthPx).toBe(285);
    const perMm = off.widthPx / (2 * 14.2748);
    const row = Math.floor(off.heightPx / 2);
    let sum = 0;
    let moment = 0;
    for (let x = 0; x < off.widthPx; x++) {
      const [light = 0, , , opacity] = pixel(off, x, row);
      if (opacity === 0) continue;
      sum += linearFromByte(light);
      moment += linearFromByte(light) * ((x + 0.5) / perMm - 14.2748);
    }
    expect(moment / sum).toBeCloseTo(11.0651, 2);
  });

  it("is clear where the still has nothing", () => {
    const off = takeOff(
      painted(240, 135, () => 90),
      look({ widthMm: 24, heightMm: 13.5 }, 0.001, null),
      { distortion: true, shading: false },
    )!;
    const middle = Math.floor(off.heightPx / 2);
    expect(pixel(off, 0, middle)).toEqual([0, 0, 0, 0]);
    expect(pixel(off, Math.floor(off.widthPx / 2), middle)).toEqual([90, 90, 90, 255]);
  });

  it("takes shading off at the place on the sensor, not in the straightened picture", () => {
    // flat light recorded through a loss of 0.002 r^2: with both off it is flat again
    const area = { widthMm: 24, heightMm: 13.5 };
    const loss = (x: number, y: number) => 1 - 0.002 * (((x + 0.5) / 10 - 12) ** 2 + ((y + 0.5) / 10 - 6.75) ** 2);
    const still = painted(240, 135, (x, y) => byteFromLinear(0.5 * loss(x, y)));
    const off = takeOff(still, look(area, 0.001, -0.002), { distortion: true, shading: true })!;
    for (const [x, y] of [
      [142, 80],
      [60, 80],
      [200, 30],
      [142, 20],
    ] as const) {
      expect(Math.abs((pixel(off, x, y)[0] ?? 0) - byteFromLinear(0.5))).toBeLessThanOrEqual(2);
    }
  });

  it("is refused where the frame's edge is not defined, and for a part that the look has not", () => {
    // r (1 - 0.02 r^2) turns back at r = 4.1 mm
    const broken = look({ widthMm: 24, heightMm: 13.5 }, -0.02, null);
    const still = painted(24, 13, () => 9);
    expect(takeOff(still, broken, { distortion: true, shading: false })).toBeNull();
    expect(takeOff(still, look({ widthMm: 24, heightMm: 13.5 }, 0.001, null), { distortion: false, shading: true })).toBeNull();
  });
});

describe("a still of the shape of the sensor mode", () => {
  it("may be squeezed or not, to 2 %", () => {
    const anamorphic = { widthMm: 24, heightMm: 20, squeeze: 2 };
    expect(fitsArea({ widthPx: 1200, heightPx: 1000 }, anamorphic)).toBe(true);
    expect(fitsArea({ widthPx: 2400, heightPx: 1000 }, anamorphic)).toBe(true);
    expect(fitsArea({ widthPx: 1920, heightPx: 1080 }, anamorphic)).toBe(false);
  });
});
