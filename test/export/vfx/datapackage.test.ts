import { describe, expect, it } from "vitest";
import { LENS_COLUMNS } from "../../../src/export/vfx/lens-rows.ts";
import { planVfx, VFX_LOSSES } from "../../../src/export/vfx/take-files.ts";
import { dayOf, type FixtureOptions, FOUR_FRAMES } from "./fixture.ts";

async function packageOf(options: FixtureOptions, maps: "none" | "all" = "all") {
  const plan = planVfx(dayOf(options), { takes: "all", maps, mapWidth: 64 });
  const file = plan.files.find((f) => f.name.endsWith("datapackage.json"));
  return JSON.parse(Buffer.from(await file!.bytes()).toString("utf8"));
}

describe("the data package of a take", () => {
  it("has a field for each column in order, every number with a unit, every column with its provenance", async () => {
    const { resources } = await packageOf({ rows: ["2,4,x"], header: "focus_m,t,Rail [V]" });
    const fields = resources[0].schema.fields as { name: string; type: string; unit?: string; provenance: string }[];
    expect(fields.map((f) => f.name)).toEqual([...LENS_COLUMNS, "Rail [V]"]);
    expect(fields.filter((f) => f.type === "number" && f.unit === undefined)).toEqual([]);
    const from = Object.fromEntries(fields.map((f) => [f.name, f.provenance]));
    expect(from).toMatchObject({ focus_m: "logged", t: "logged", f: "none: not logged", focal_mm: "kit" });
    expect(from.k1).toBe("kit: kit/calibration/P50.csv, brought to mm");
    expect(from.entrance_pupil_mm).toBe("kit: calibration table");
    expect(from.near_m).toContain("f = T times the root of the kit's transmittance");
    expect(resources[0].schema.missingValues).toEqual([""]);
  });

  it("says the coefficient convention with its direction, and infinity by omission", async () => {
    const { conventions } = await packageOf({ rows: FOUR_FRAMES });
    expect(conventions.coefficients.direction).toMatch(/^undistort: /);
    expect(conventions.coefficients.radius).toMatch(/^mm on the recorded sensor/);
    expect(conventions.opentrackio).toContain("A lens at infinity has no focusDistance");
  });

  it("says what millimetres become pixels with: the corner of the area, half its width right of the middle, is the last pixel's end", async () => {
    const { sensor } = (await packageOf({ rows: FOUR_FRAMES })).conventions;
    expect(sensor).toMatchObject({ activeWidthMm: 24, activeHeightMm: 18, resolutionX: 1600, resolutionY: 1200, squeeze: 1 });
    expect((sensor.activeWidthMm / 2 / sensor.activeWidthMm + 0.5) * sensor.resolutionX).toBe(sensor.resolutionX);
    expect((await packageOf({ rows: ["2,4"], camera: "B" })).conventions.sensor.squeeze).toBe(2);
  });

  it("says why coefficient cells are empty", async () => {
    const keys = ["lens: P50", "model: division", "direction: undistort", "radius: mm"];
    const { conventions } = await packageOf({ rows: ["2,4,-0.0001"], header: "focus_m,t,lambda", keys });
    expect(conventions.coefficients.empty).toContain("division");
  });

  it("describes maps.csv where there are maps, else says why there are none", async () => {
    expect((await packageOf({ rows: ["2,4"] })).resources.map((r: { path: string }) => r.path)).toEqual(["lens.csv", "maps.csv"]);
    const without = await packageOf({ rows: ["2,4"] }, "none");
    expect(without.resources).toHaveLength(1);
    expect(without.conventions.maps).toBe("None: not asked for (--maps).");
  });

  it("names no licence: that is the show's owner's to give", async () => {
    expect(await packageOf({ rows: ["2,4"] })).not.toHaveProperty("licenses");
  });
});

describe("losses", () => {
  it("are told for every format of the folder", () => {
    expect(VFX_LOSSES.every(({ losses }) => losses.length > 0)).toBe(true);
    expect(VFX_LOSSES.map(({ files }) => files)).toEqual([
      "vfx/*/lens.csv",
      "vfx/*/lens.opentrackio.jsonl",
      "vfx/*/camera.usda",
      "vfx/*/*.exr",
      "vfx/*/datapackage.json",
    ]);
  });
});
