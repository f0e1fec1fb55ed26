import { describe, expect, it } from "vitest";
import { collectFindings } from "../../src/core/findings/collect.ts";
import { readCalibrationFile } from "../../src/ingest/kit/calibration-file.ts";
import { readCameras } from "../../src/ingest/kit/cameras.ts";
import { readLenses } from "../../src/ingest/kit/lenses.ts";
import type { Lens } from "../../src/ingest/records.ts";

const HEAD = "lens,kind,focal_mm,focal_min_mm,focal_max_mm,widest_t,widest_f,transmittance,squeeze\n";

function lens(row: string): { lens: Lens | undefined; codes: readonly string[] } {
  const found = collectFindings();
  const [first] = readLenses(`${HEAD}${row}\n`, "kit/lenses.csv", found);
  return { lens: first, codes: found.list().map((f) => f.code) };
}

describe("readLenses", () => {
  it("takes widest stops as exact series values and other numbers as written", () => {
    expect(lens("A,prime,50,,,2.8,,,").lens?.widestT).toBeCloseTo(2 * Math.SQRT2, 12);
    expect(lens("A,prime,50,,,2.3,,,").lens?.widestT).toBe(2.3);
    expect(lens("A,prime,50,,,T2.8,,,").lens?.widestT).toBeCloseTo(2 * Math.SQRT2, 12);
  });

  it("takes the transmittance from its column, else from both widest stops", () => {
    expect(lens("A,prime,50,,,2.3,2.1,0.8,").lens?.transmittance).toBe(0.8);
    // (2.1 / 2.3)^2 = 0.833648
    expect(lens("A,prime,50,,,2.3,2.1,,").lens?.transmittance).toBeCloseTo(0.833648, 6);
    expect(lens("A,prime,50,,,2.3,,,").lens?.transmittance).toBeNull();
    expect(lens("A,prime,50,,,2.0,2.8,,")).toMatchObject({ lens: { transmittance: null }, codes: ["KIT506"] });
  });

  it("gives a prime its focal length and a zoom its range", () => {
    expect(lens("A,prime,50,,,2,,,1.8").lens).toMatchObject({ kind: "prime", focalMm: 50, focalMinMm: null, squeeze: 1.8 });
    expect(lens("Z,zoom,,28,80,2.8,,,").lens).toMatchObject({
      kind: "zoom",
      focalMm: null,
      focalMinMm: 28,
      focalMaxMm: 80,
      squeeze: null,
    });
  });

  it("keeps a lens without a usable focal length, with an error", () => {
    expect(lens("Z,zoom,,80,28,2.8,,,")).toMatchObject({ lens: { focalMinMm: null, focalMaxMm: null }, codes: ["KIT503"] });
  });

  it("refuses an f-stop in the column of T-stops", () => {
    expect(lens("A,prime,50,,,f/2,,,")).toMatchObject({ lens: { widestT: null }, codes: ["KIT517"] });
  });
});

describe("readCameras", () => {
  it("keeps the modes in file order, with no squeeze where none is said (the model takes 1)", () => {
    const text =
      "camera,sensor_mode,active_width_mm,active_height_mm,resolution_x,squeeze\nA,OPEN,26.1,17.4,5220,\nA,SQZ,20.88,17.4,,1.8\n";
    const modes = readCameras(text, "kit/cameras.csv", collectFindings());
    expect(modes.map((mode) => [mode.sensorMode, mode.activeWidthMm, mode.resolutionX, mode.squeeze])).toEqual([
      ["OPEN", 26.1, 5220, null],
      ["SQZ", 20.88, null, 1.8],
    ]);
  });
});

describe("readCalibrationFile", () => {
  function table(text: string): { table: ReturnType<typeof readCalibrationFile>; codes: readonly string[] } {
    const found = collectFindings();
    const read = readCalibrationFile(text, { file: "kit/calibration/P50.csv", lens: "P50", sha256: "0" }, found);
    return { table: read, codes: found.list().map((f) => f.code) };
  }

  it("reads keys and points; a blank t serves every stop and inf is 0 dioptres", () => {
    const { table: read, codes } = table(
      "# model: division\n# direction: distort\n# radius: half-diagonal\n# area_mm: 26.10x17.40\n# shading_radius: mm\n# made_on: 2030-01-02\n" +
        "focal_mm,focus_m,t,lambda,a1,cx_mm\n50,0.5,,-0.02,6.1e-4,\n50,inf,,-0.01,5e-4,0.3\n",
    );
    expect(codes).toEqual([]);
    expect(read).toMatchObject({
      convention: {
        model: "division",
        direction: "distort",
        radius: "half-diagonal",
        areaMm: { width: 26.1, height: 17.4 },
        shadingValues: "loss",
      },
      madeOn: "2030-01-02",
      madeBy: null,
    });
    expect(read?.points.map((p) => [p.focusDioptres, p.tStop, p.coefficients])).toEqual([
      [2, null, { lambda: -0.02, a1: 6.1e-4 }],
      [0, null, { lambda: -0.01, a1: 5e-4, cx_mm: 0.3 }],
    ]);
  });

  it("reads a table that says neither direction nor radius as it is, with a check", () => {
    const { table: read, codes } = table("# model: brown-conrady\nfocal_mm,focus_m,k1\n50,1,0.1\n");
    expect(codes).toEqual(["KIT508"]);
    expect(read?.points).toHaveLength(1);
    expect(read?.convention).toMatchObject({ direction: null, radius: null });
  });

  it("takes labels of the t column as exact series values", () => {
    const head = "# model: brown-conrady\n# direction: undistort\n# radius: mm\nfocal_mm,focus_m,t,k1\n";
    expect(table(`${head}50,1,2.8,0.1\n`).table?.points[0]?.tStop).toBeCloseTo(2 * Math.SQRT2, 12);
  });

  it("tells of a missing cell of the grid once for its focal length", () => {
    const head = "# model: brown-conrady\n# direction: undistort\n# radius: mm\nfocal_mm,focus_m,t,k1\n";
    expect(table(`${head}50,1,2,0.1\n50,1,4,0.1\n50,inf,2,0.1\n`).codes).toEqual(["KIT513"]);
    expect(table(`${head}50,1,2,0.1\n50,1,4,0.1\n50,inf,2,0.1\n50,inf,4,0.1\n`).codes).toEqual([]);
  });
});
