import { describe, expect, it } from "vitest";
import type { CalibrationTable, Kit } from "../../src/ingest/records.ts";
import { calibrationCoverage } from "../../src/summary/coverage.ts";
import { type CoveragePicture, tableReach } from "../../src/summary/coverage-reach.ts";
import { digestDay } from "../../src/summary/digest.ts";
import type { LensStates, StateHistogram } from "../../src/summary/state-histogram.ts";
import { LENS_50, LENS_ZOOM, MODE_A, NO_CONVENTION, placeAt } from "../fixtures/day-summary-kit.ts";
import { lensShow } from "./lens-show.ts";

/** 100 px a mm: half sides 12.445 and 9.33 mm, the corner at r = 15.554 mm, r^3 = 3762.9. */
const MODE = { ...MODE_A, activeWidthMm: 24.89, activeHeightMm: 18.66, resolutionX: 2489, resolutionY: 1866 };
const PICTURE: CoveragePicture = { widthMm: 24.89, heightMm: 18.66, widthPx: 2489, heightPx: 1866, squeeze: 1 };

/** Rows of focal length, dioptres, T (null: any) and k1 in mm^-2, recorded to ideal. */
function table(lens: string, rows: readonly (readonly [number, number, number | null, number])[]): CalibrationTable {
  const file = `kit/calibration/${lens}.csv`;
  return {
    ...{ lens, file, sha256: "", madeOn: null, madeBy: null, source: null },
    convention: { ...NO_CONVENTION, model: "brown-conrady", direction: "undistort", radius: "mm" },
    points: rows.map(([focalMm, focusDioptres, tStop, k1]) => {
      return { focalMm, focusDioptres, tStop, coefficients: { k1 }, place: placeAt(file, 5, 1) };
    }),
  };
}

const STRAIGHT = table("P50", [
  [50, 0, null, 1e-4],
  [50, 0.5, null, 1.1e-4],
  [50, 1, null, 1.2e-4],
]);

function kit(tables: readonly CalibrationTable[]): Kit {
  return { modes: [MODE], lenses: [LENS_50, LENS_ZOOM], calibration: new Map(tables.map((one) => [one.lens, one])) };
}

/** Keys are half millimetres, fiftieths of a dioptre, thirds of a stop: 100 is 50 mm, 9 is T2.8. */
function digest(lens: string, plates: StateHistogram, more: Partial<LensStates> = {}) {
  const modes = [{ camera: MODE.camera, sensorMode: MODE.sensorMode }];
  return { lensStates: [{ lens, modes, plates, grids: {}, all: plates, platesUnknown: 0, allUnknown: 0, ...more }] };
}

function coverage(tables: readonly CalibrationTable[], digests: readonly ReturnType<typeof digest>[], lens = "P50") {
  const found = calibrationCoverage(kit(tables), digests).find((one) => one.lens === lens);
  if (found === undefined) throw new Error("no such lens");
  return found;
}

describe("how far apart a table's points may be", () => {
  it("is told from its last slope outside: 3.763 px over half a dioptre is half a pixel in 0.0664 dioptre", () => {
    const { focus, stop } = tableReach(STRAIGHT, PICTURE);
    // 1e-5 x 3762.9 mm^3 = 0.037629 mm = 3.7629 px
    expect(focus.above).toBeCloseTo((0.5 * 0.5) / 3.7629, 4);
    expect(focus.below).toBeCloseTo((0.5 * 0.5) / 3.7629, 4);
    expect(focus.tested).toBe(true);
    // rows for every stop serve any stop
    expect(stop.between).toBe(Number.POSITIVE_INFINITY);
  });

  it("is told from its curvature between points, and never believed over more than twice what was tested", () => {
    expect(tableReach(STRAIGHT, PICTURE).focus.between).toBeCloseTo(2, 9);
    const bent = table("P50", [
      [50, 0, null, 1e-4],
      [50, 0.5, null, 1.05e-4],
      [50, 1, null, 1.2e-4],
    ]);
    // left out, the middle reads 1.1e-4: 5e-6 x 3762.9 = 1.8815 px over gaps of 0.5 and 0.5, so that half a pixel is reached
    // over a gap g with 1.8815 / 0.25 x (g / 2)^2 = 0.5: g = 0.5155
    expect(tableReach(bent, PICTURE).focus.between).toBeCloseTo(2 * Math.sqrt((0.5 * 0.25) / 1.8815), 3);
  });

  it("counts a tenth of a stop of shading in the corner as much as half a pixel", () => {
    // corner brightness 0.5, 0.7071 and 1 at T2.8, T4 and T5.6: half a stop a stop, so that a tenth is 0.2 stop outside
    const shaded: CalibrationTable = { ...STRAIGHT, convention: { ...STRAIGHT.convention, shadingRadius: "mm" } };
    const points = [0.5, Math.SQRT1_2, 1].map((brightness, i) => ({
      ...{ focalMm: 50, focusDioptres: 0, tStop: 2 ** (1.5 + i / 2), place: placeAt(shaded.file, 5, 1) },
      coefficients: { k1: 1e-4, a1: (1 - brightness) / 241.926925 },
    }));
    const { stop } = tableReach({ ...shaded, points }, PICTURE);
    expect([stop.below, stop.above]).toEqual([expect.closeTo(0.2, 6), expect.closeTo(0.2, 6)]);
    // left out, the middle reads 0.75: log2 is -0.41504 for -0.5, and 0.08496 (g / 2)^2 = 0.1 at g = 2.170
    expect(stop.between).toBeCloseTo(2.17, 3);
  });

  it("is the plain step where there are too few points to tell", () => {
    const { focal, focus } = tableReach(table("P50", [[50, 0, null, 1e-4]]), PICTURE);
    expect(focal.between).toBeCloseTo(Math.log(1.1), 12);
    expect(focus).toEqual({ between: 0.5, below: 0.25, above: 0.25, tested: false });
  });
});

describe("calibration coverage", () => {
  it("counts plate frames inside and beyond the table, per axis by how much", () => {
    // 0.6 dioptre is inside, 1.5 and 2 dioptres are 0.5 and 1 beyond the row at 1 m
    const found = coverage([STRAIGHT], [digest("P50", { "100 30 9": 60, "100 75 9": 30, "100 100 9": 10 }, { platesUnknown: 7 })]);
    expect(found.table).toMatchObject({ refused: null, region: { focusDioptres: { min: 0, max: 1 }, tStop: null } });
    expect(found.plates).toMatchObject({ frames: 100, framesUnknown: 7, framesInside: 60, framesBeyond: 40, fractionInside: 0.6 });
    expect(found.plates?.focusDioptres).toEqual({ min: 0.6, max: 2 });
    expect(found.plates?.beyond).toEqual([{ axis: "focus", side: "above", frames: 40, asked: 2, used: 1, by: 1 }]);
  });

  it("does not count less than half a step of the histogram as beyond", () => {
    // frames at 0.99 dioptre fall into the step at 1.00, those at 0.985 into 0.98 or lower
    const to = (dioptres: number) =>
      table("P50", [
        [50, 0, null, 1e-4],
        [50, dioptres, null, 1.2e-4],
      ]);
    expect(coverage([to(0.99)], [digest("P50", { "100 50 9": 5 })]).plates?.fractionInside).toBe(1);
    expect(coverage([to(0.985)], [digest("P50", { "100 50 9": 5 })]).plates?.fractionInside).toBe(0);
  });

  it("proposes the fewest charts for what is missing, and states its tolerance", () => {
    const found = coverage([STRAIGHT], [digest("P50", { "100 75 9": 30 }), digest("P50", { "100 75 12": 5, "100 100 9": 10 })]);
    // a chart at 2 dioptres reads back as far as 1 dioptre: it serves 1.5 too, at every stop
    expect(found.setups).toEqual([{ lens: "P50", focalMm: 50, focusDioptres: 2, focusM: 0.5, tStop: null, frames: 45 }]);
    expect(found).toMatchObject({ framesMissing: 45, framesOnGrids: 0 });
    expect(found.rule).toMatchObject({ kind: "corner-error", cornerPx: 0.5, widthPx: 2489, heightPx: 1866, untested: [] });
  });

  it("asks for nothing where the nearest point serves: 0.06 dioptre past the end is 0.45 px, 0.1 is 0.75 px", () => {
    expect(coverage([STRAIGHT], [digest("P50", { "100 53 9": 30 })])).toMatchObject({ framesMissing: 0, setups: [] });
    expect(coverage([STRAIGHT], [digest("P50", { "100 55 9": 30 })])).toMatchObject({ framesMissing: 30 });
  });

  it("asks for a chart inside the table too, where its points are too far apart for its curvature", () => {
    const bent = table("P50", [
      [50, 0, null, 1e-4],
      [50, 1, null, 1.4e-4],
      [50, 2, null, 1.2e-4],
    ]);
    const found = coverage([bent], [digest("P50", { "100 25 9": 30, "100 50 9": 9 })]);
    expect(found.plates?.fractionInside).toBe(1);
    // at the row itself (1 dioptre) nothing is missing
    expect(found.setups.map((one) => [one.focusDioptres, one.frames])).toEqual([[0.5, 30]]);
  });

  it("counts a grid that was shot on the day as a chart", () => {
    const found = coverage([STRAIGHT], [digest("P50", { "100 75 9": 30, "100 76 9": 8 }, { grids: { "100 76 9": 8 } })]);
    expect(found).toMatchObject({ framesMissing: 38, framesOnGrids: 38, setups: [] });
  });

  it("uses plain steps, and says so, without a table that can be read", () => {
    const without = coverage([], [digest("P50", { "100 50 9": 30, "100 60 9": 10, "100 80 9": 5 })]);
    expect(without.table).toBeNull();
    expect(without.plates?.fractionInside).toBeNull();
    // 1.0 and 1.2 dioptres share a chart, 1.6 is 0.6 from the first
    expect(without.setups.map(({ focusDioptres, frames }) => [focusDioptres, frames])).toEqual([
      [1, 40],
      [1.6, 5],
    ]);
    expect(without.setups[0]?.tStop).toBeCloseTo(2 ** 1.5, 12);
    expect(without.rule).toMatchObject({ kind: "steps", focalRatio: 1.1, focusDioptres: 0.5, stops: 1 });
    const unsaid = { ...STRAIGHT, convention: { ...STRAIGHT.convention, direction: null } };
    const refused = coverage([unsaid], [digest("P50", { "100 50 9": 30 })]);
    expect(refused.table?.refused).toBe("the coefficients do not say their direction");
    expect(refused.rule).toMatchObject({ kind: "steps", reason: "the coefficients do not say their direction" });
  });

  it("takes a prime's marked focal length, and a zoom's as it was", () => {
    expect(coverage([], [digest("P50", { "97 50 9": 30 })]).setups[0]?.focalMm).toBe(50);
    expect(coverage([], [digest("Z2880", { "97 50 9": 30 })], "Z2880").setups[0]?.focalMm).toBe(48.5);
  });

  it("has nothing for a lens that was on no plate, and reads digests that have no states", () => {
    const [prime, zoom] = calibrationCoverage(kit([STRAIGHT]), [{}, digest("P50", {}, { all: { "100 75 9": 30 } })]);
    expect(prime).toMatchObject({ plates: null, setups: [], framesMissing: 0, all: { frames: 30, framesBeyond: 30 } });
    expect(zoom).toMatchObject({ lens: "Z2880", plates: null, all: null });
  });
});

describe("the lens states of a day", () => {
  it("are counted in steps of 0.5 mm, 0.02 dioptre and a third of a stop, plates and grids apart", () => {
    const show = (plate: string) =>
      digestDay(
        lensShow({
          frames: 48,
          logged: 40,
          noteHeader: ",plate",
          note: `,${plate}`,
          cells: (i) => `${i < 30 ? "2.000" : "inf"},2.83`,
        }).summary,
        [],
      ).lensStates;
    const all = { "100 25 9": 30, "100 0 9": 10 };
    const modes = [{ camera: "A", sensorMode: "OPEN" }];
    const [plain] = show("");
    expect(plain).toEqual({ lens: "P50", modes, plates: {}, grids: {}, all, platesUnknown: 0, allUnknown: 8 });
    expect(show("hero")).toEqual([{ lens: "P50", modes, plates: all, grids: {}, all, platesUnknown: 8, allUnknown: 8 }]);
    expect(show("grid")[0]).toMatchObject({ plates: all, grids: all });
  });
});
