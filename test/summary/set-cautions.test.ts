import { describe, expect, it } from "vitest";
import { setCautions } from "../../src/summary/set-cautions.ts";
import { setConsistency } from "../../src/summary/set-consistency.ts";
import { LENS_50, MODE_A } from "../fixtures/day-summary-kit.ts";

const lens = (id: string, focalMm: number, more: Partial<typeof LENS_50> = {}) => ({
  ...LENS_50,
  ...{ id, focalMm, widestT: 2, frontDiameterMm: 95, massG: 1000, mount: "K", squeeze: 1, imageCircleMm: 40 },
  ...more,
});
const kinds = (...lenses: readonly (typeof LENS_50)[]) => setCautions(setConsistency(lenses, [MODE_A])).map((c) => c.kind);

describe("cautions on a set of lenses", () => {
  it("are none for lenses that match", () => {
    expect(kinds(lens("A", 35), lens("B", 50), lens("C", 75, { widestT: 2.05 }))).toEqual([]);
  });
  it("speak of light from a sixth of a stop on", () => {
    // 2 log2(2.12 / 2) = 0.168, 2 log2(2.11 / 2) = 0.155
    expect(kinds(lens("A", 35), lens("B", 50, { widestT: 2.12 }))).toEqual(["light"]);
    expect(kinds(lens("A", 35), lens("B", 50, { widestT: 2.11 }))).toEqual([]);
  });
  it("speak of fronts, mass, squeeze, mounts and circles that differ", () => {
    const odd = { frontDiameterMm: 110, massG: 1200, squeeze: 2, mount: "L", imageCircleMm: 30 };
    // the diagonal of 28.8 x 16.2 mm is 33.04 mm
    expect(kinds(lens("A", 35), lens("B", 50), lens("C", 75, odd))).toEqual(["fronts", "mass", "squeeze", "mounts", "circle"]);
    expect(kinds(lens("A", 35), lens("B", 50, { massG: 1199 }))).toEqual([]);
  });
});
