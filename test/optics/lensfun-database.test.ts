/** Some thousand lenses that were really measured, as bounds for the lens maths: all of Debian's liblensfun-data-v1, where installed. */
import { beforeAll, describe, expect, it } from "vitest";
import { type CanonicalDistortion, canonicalDistortion } from "../../src/optics/distortion/canonical.ts";
import { idealFromRecorded, recordedFromIdeal } from "../../src/optics/distortion/map.ts";
import { canonicalShading, shadingAt, shadingFactor } from "../../src/optics/shading.ts";
import { accepted, CONVENTION } from "./lens-quantities.ts";
import { type Distortion, type LensEntry, lensfunFolder, readLensfun } from "./lensfun.ts";

const folder = lensfunFolder();

interface Held {
  readonly lens: LensEntry;
  readonly curve: Distortion;
  /** rd = ru' (1 + k1 ru'^2 + k2 ru'^4 + k3 ru'^6) with ru' = scale x ru: the scale is the ideal picture's size and no distortion. */
  readonly k: readonly [number, number, number];
  readonly exact: boolean;
}

describe.skipIf(folder === null && process.env.CI !== "true")("the lens database of liblensfun-data-v1", () => {
  let lenses: readonly LensEntry[] = [];
  beforeAll(() => {
    if (folder === null) throw new Error("liblensfun-data-v1 is not installed: nothing in /usr/share/lensfun");
    lenses = readLensfun(folder);
  });

  it("holds more than a thousand lenses with distortion and more than four hundred with shading", () => {
    expect(lenses.filter((lens) => lens.distortions.length > 0).length).toBeGreaterThan(1000);
    expect(lenses.filter((lens) => lens.shadings.length > 0).length).toBeGreaterThan(400);
  });

  it("every distortion is right at every radius, guarded where it turns back, and inverted to 1e-9 mm", () => {
    const held = lenses.flatMap((lens) => lens.distortions.map((curve) => hold(lens, curve)));
    let turning = 0;
    let largest = 0;
    let points = 0;
    for (const one of held) {
      const { areaMm } = one.lens;
      const d = inMm(one);
      const corner = Math.hypot(areaMm.width, areaMm.height) / 2;
      const defined = idealFromRecorded(d, areaMm.width / 2, areaMm.height / 2) !== null;
      // Walked in small steps, without our limit: does the curve reach the recorded corner before it turns back?
      expect(defined, JSON.stringify(one.curve)).toBe(reaches(one.k, corner / (areaMm.height / 2)));
      if (!defined) turning++;
      for (let i = 0; i <= 24; i++) {
        const [x, y] = [((i % 5) / 4) * (areaMm.width / 2), (Math.floor(i / 5) / 4) * (areaMm.height / 2)];
        const ideal = idealFromRecorded(d, x, y);
        if (ideal === null) {
          expect(defined).toBe(false);
          continue;
        }
        points++;
        const again = recordedFromIdeal(d, ideal.xMm, ideal.yMm)!;
        largest = Math.max(largest, Math.hypot(again.xMm - x, again.yMm - y));
        if (one.exact && i > 0)
          expect(Math.abs(curveMiss(one, Math.hypot(ideal.xMm, ideal.yMm), Math.hypot(x, y)))).toBeLessThan(1e-9);
      }
    }
    const exact = held.filter((one) => one.exact).length;
    console.log(
      `lens database: ${held.length} distortions of ${lenses.filter((lens) => lens.distortions.length > 0).length} lenses; ` +
        `${exact} held exactly, ${held.length - exact} with odd powers of the radius by their best even polynomial; ` +
        `${turning} turn back inside the frame and are not defined at its corner; ${points} points there and back, largest ${largest.toExponential(1)} mm`,
    );
    expect(held.length).toBeGreaterThan(4000);
    expect(exact).toBeGreaterThan(500);
    expect(largest).toBeLessThan(1e-9);
  });

  it("every shading is its polynomial at every radius, off and on again is the identity, and what cannot be a lens says so", () => {
    let brighter = 0;
    let black = 0;
    let rising = 0;
    let count = 0;
    let wrong = 0;
    for (const { areaMm, shadings } of lenses) {
      const corner = { x: areaMm.width / 2, y: areaMm.height / 2 };
      for (const [k1, k2, k3] of shadings) {
        count++;
        const s = accepted(
          canonicalShading(
            { ...CONVENTION, areaMm, shadingRadius: "half-diagonal", shadingValues: "gain" },
            { a1: k1, a2: k2, a3: k3 },
            50,
          ),
        );
        const values = Array.from({ length: 11 }, (_, i) => shadingFactor(s, (corner.x * i) / 10, (corner.y * i) / 10));
        values.forEach((value, i) => {
          const r2 = (i / 10) ** 2;
          const miss = Math.abs(value - (1 + k1 * r2 + k2 * r2 ** 2 + k3 * r2 ** 3)) / (1 + Math.abs(k2) + Math.abs(k3));
          // NaN would pass a comparison the other way round.
          if (!(miss < 1e-12)) wrong++;
          if (value > 0 && !(Math.abs((0.18 / value) * value - 0.18) < 1e-15)) wrong++;
        });
        const { problem, stops } = shadingAt(s, { widthMm: areaMm.width, heightMm: areaMm.height }).corner;
        const atCorner = 1 + k1 + k2 + k3;
        const expected = atCorner <= 0 ? "not above zero" : atCorner > 1 ? "brighter than the centre" : null;
        if (Math.abs(atCorner - 1) > 1e-12 && problem !== expected) wrong++;
        if (atCorner > 0 && !(Math.abs((stops ?? Number.NaN) - Math.log2(atCorner)) < 1e-9)) wrong++;
        if (atCorner > 1) brighter++;
        if (atCorner <= 0) black++;
        if (values.some((value, i) => i > 0 && value > values[i - 1]! + 1e-12)) rising++;
      }
    }
    console.log(
      `lens database: ${count} shadings of ${lenses.filter((lens) => lens.shadings.length > 0).length} lenses; ` +
        `${rising} grow brighter somewhere on the way out, ${brighter} are brighter in the corner than in the middle, ${black} are black there`,
    );
    expect(count).toBeGreaterThan(10_000);
    expect(wrong).toBe(0);
  });
});

/** Even powers are held as they are; an odd one by the even polynomial nearest to the curve out to the corner. */
function hold(lens: LensEntry, curve: Distortion): Held {
  const { scale } = curve;
  const odd = curve.terms.some(([power, coefficient]) => power % 2 === 1 && coefficient !== 0);
  if (!odd) {
    const term = (power: number) => (curve.terms.find(([p]) => p === power)?.[1] ?? 0) / scale ** (power + 1);
    return { lens, curve, k: [term(2), term(4), term(6)], exact: true };
  }
  const reach = (1.1 * Math.hypot(lens.areaMm.width, lens.areaMm.height)) / lens.areaMm.height;
  const samples = Array.from({ length: 60 }, (_, i) => (reach * (i + 1)) / 60);
  const bend = (u: number) => curve.terms.reduce((sum, [power, coefficient]) => sum + coefficient * u ** power, 0) / scale;
  return { lens, curve, k: leastSquares(samples.map((u) => [scale * u, bend(u)])), exact: false };
}

/** k1, k2, k3 of the polynomial k1 x^2 + k2 x^4 + k3 x^6 nearest to the given points. */
function leastSquares(points: readonly (readonly [number, number])[]): [number, number, number] {
  const rows = [0, 1, 2].map((i) =>
    [0, 1, 2, 3].map((j) => points.reduce((sum, [x, y]) => sum + x ** (2 * i + 2) * (j < 3 ? x ** (2 * j + 2) : y), 0)),
  );
  for (let i = 0; i < 3; i++) {
    for (let other = 0; other < 3; other++) {
      if (other === i) continue;
      const factor = rows[other]![i]! / rows[i]![i]!;
      rows[other] = rows[other]!.map((value, j) => value - factor * rows[i]![j]!);
    }
  }
  return [rows[0]![3]! / rows[0]![0]!, rows[1]![3]! / rows[1]![1]!, rows[2]![3]! / rows[2]![2]!];
}

function inMm({ lens, k }: Held): CanonicalDistortion {
  const convention = { ...CONVENTION, direction: "distort", radius: "half-height", areaMm: lens.areaMm } as const;
  return accepted(canonicalDistortion(convention, { k1: k[0], k2: k[1], k3: k[2] }, 50));
}

/** How far the database's own formula, at our ideal radius, is from the recorded one; mm. */
function curveMiss({ lens, curve }: Held, idealMm: number, recordedMm: number): number {
  const unit = lens.areaMm.height / 2;
  const u = idealMm / unit / curve.scale;
  const recorded = u * curve.terms.reduce((sum, [power, coefficient]) => sum + coefficient * u ** power, curve.scale);
  return recorded * unit - recordedMm;
}

function reaches(k: readonly [number, number, number], recorded: number): boolean {
  const at = (r: number) => r * (1 + r ** 2 * (k[0] + r ** 2 * (k[1] + r ** 2 * k[2])));
  let last = 0;
  for (let i = 1; i <= 40_000; i++) {
    const next = at(i / 2000);
    if (next >= recorded) return true;
    if (next <= last) return false;
    last = next;
  }
  return false;
}
