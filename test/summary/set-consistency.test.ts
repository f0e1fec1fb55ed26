import { describe, expect, it } from "vitest";
import { readShow } from "../../src/ingest/read-show.ts";
import { setConsistency } from "../../src/summary/set-consistency.ts";
import { memoryFolder, SMALL_KIT } from "../helpers/memory-show.ts";

function kitOf(lenses: string) {
  const { input } = readShow(memoryFolder({ ...SMALL_KIT, "kit/lenses.csv": lenses }));
  if (input === null) throw new Error("no show");
  return setConsistency(input.kit.lenses, input.kit.modes);
}

describe("a lens set compared", () => {
  const set = kitOf(
    "lens,kind,focal_mm,focal_min_mm,focal_max_mm,widest_t,front_diameter_mm,mass_g,close_focus_m,image_circle_mm\n" +
      "A25,prime,25,,,2.1,95,1100,0.3,31.5\nB50,prime,50,,,2.1,95,1200,0.5,31.0\nC100,prime,100,,,2.9,114,1900,1,\nZ,zoom,,30,80,2.9,114,2700,0.8,33\n",
  );

  it("spreads from T2.1 to T2.9 by 0.931 stop, a light ratio of 1.907 (CV30, common practice)", () => {
    expect(set.widestT?.spreadStops).toBeCloseTo(0.9313, 4);
    expect(set.widestT?.lightRatio).toBeCloseTo(1.907, 3);
  });
  it("groups the fronts, the commonest first", () => {
    expect(set.fronts).toEqual([
      { diameterMm: 95, lenses: ["A25", "B50"] },
      { diameterMm: 114, lenses: ["Z", "C100"] },
    ]);
  });
  it("holds the image circles against the largest active diagonal (24.89 x 18.66 mm has 31.11 mm)", () => {
    expect(set.imageCircle?.largestDiagonalMm).toBeCloseTo(31.11, 2);
    expect(set.imageCircle).toMatchObject({ smallestMm: 31, tooSmall: ["B50"] });
  });
  it("names the largest change of mass between neighbouring primes; the zoom is no neighbour", () => {
    expect(set.massG).toEqual({ lightest: 1100, heaviest: 2700, largestStep: { from: "B50", to: "C100", grams: 700 } });
  });
});
