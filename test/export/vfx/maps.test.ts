import { describe, expect, it } from "vitest";
import { planMaps } from "../../../src/export/vfx/map-plan.ts";
import { dataWindow, mapSize } from "../../../src/export/vfx/map-size.ts";
import { mergeStates } from "../../../src/export/vfx/map-states.ts";
import { mapsCsv } from "../../../src/export/vfx/maps-csv.ts";
import { DEFAULT_VFX } from "../../../src/export/vfx/options.ts";
import { makeVfx, planVfx } from "../../../src/export/vfx/take-files.ts";
import { readExr } from "./exr-bytes.ts";
import { dayOf, FOUR_FRAMES, firstTake } from "./fixture.ts";

const FULL = { takes: "all", maps: "all", mapWidth: "full" } as const;
const point = (...values: number[]) => Float64Array.from(values);

describe("mergeStates", () => {
  it("puts states together that lie within the tolerance of the one that stands for them", () => {
    // 0, 0.09 and 0.18 px along a line: the middle one stands for all three
    const merged = mergeStates([point(0, 0), point(0.09, 0), point(0.18, 0), point(5, 5)], 0.1, 2);
    expect([...merged.groupOf]).toEqual([0, 0, 0, 1]);
    expect(merged.reference).toEqual([1, 3]);
  });
  it("measures points as points: 0.08 right and 0.08 down is more than 0.1", () => {
    expect([...mergeStates([point(0, 0), point(0.08, 0.08)], 0.1, 2).groupOf]).toEqual([0, 1]);
    expect([...mergeStates([point(0, 0), point(0.08, 0.08)], 0.1, 1).groupOf]).toEqual([0, 0]);
  });
  it("leaves out states without a vector", () => {
    expect([...mergeStates([null, point(0)], 0.1, 1).groupOf]).toEqual([-1, 0]);
  });
});

describe("mapSize", () => {
  const recorded = { width: 4608, height: 2592 };
  it("is a quarter of the recorded width unless another is asked for", () => {
    expect(mapSize(recorded, null)).toMatchObject({ width: 1152, height: 648 });
  });
  it("is what was asked for, at most the recorded width", () => {
    expect(mapSize(recorded, 960)).toMatchObject({ width: 960, height: 540 });
    expect(mapSize(recorded, "full").width).toBe(4608);
    expect(mapSize(recorded, 9999).width).toBe(4608);
  });
  it("rounds values to at most 1/64 px", () => {
    for (const width of [1600, 4096, 4608, 8192])
      expect(mapSize({ width, height: width / 2 }, null).step * width * 0.5).toBeLessThanOrEqual(1 / 64);
  });
});

describe("dataWindow", () => {
  const canvas = (widthPx: number, heightPx: number) => ({
    widthPx,
    heightPx,
    percent: 0,
    box: { leftPx: 0, topPx: 0, rightPx: 0, bottomPx: 0 },
  });
  it("reaches beyond the frame by the overscan, about its middle", () => {
    expect(dataWindow(mapSize({ width: 1000, height: 500 }, "full"), canvas(1040, 510))).toEqual({
      left: -20,
      top: -5,
      right: 1019,
      bottom: 504,
    });
  });
  it("has a margin of a pixel where the map will be enlarged", () => {
    expect(dataWindow(mapSize({ width: 1000, height: 500 }, 250), canvas(1040, 510))).toEqual({
      left: -6,
      top: -3,
      right: 255,
      bottom: 127,
    });
  });
  it("is the frame where the canvas is smaller", () => {
    expect(dataWindow(mapSize({ width: 1000, height: 500 }, "full"), canvas(990, 495))).toEqual({
      left: 0,
      top: 0,
      right: 999,
      bottom: 499,
    });
  });
});

describe("the maps of a take", () => {
  it("are named in maps.csv with the frames they serve; a gap has none", () => {
    const plan = planMaps(firstTake(dayOf({ rows: FOUR_FRAMES })), "full");
    if ("none" in plan) throw new Error(plan.none);
    const lines = mapsCsv(plan).trimEnd().split("\n");
    expect(lines[0]).toBe("frame_from,frame_to,map,overscan");
    expect(lines.slice(1).map((line) => line.split(",").slice(0, 3).join())).toEqual([
      "0,1,undistort-0001.exr",
      "3,3,undistort-0002.exr",
      "0,1,redistort-0001.exr",
      "3,3,redistort-0002.exr",
      "0,1,shading-0001.exr",
      "3,3,shading-0001.exr",
    ]);
  });

  it("hold u from the left and v from the top, B = 0: redistort is the table's own equation", async () => {
    const day = dayOf({ rows: ["inf,4"] });
    const files = planVfx(day, FULL).files;
    const bytes = await files.find((f) => f.name === "vfx/a-1a-1/redistort-0001.exr")!.bytes();
    const { planes, window } = readExr(bytes);
    expect(window).toEqual({ left: 0, top: 0, right: 1599, bottom: 1199 });
    for (const [column, row] of [
      [0, 0],
      [1599, 0],
      [800, 600],
      [1599, 1199],
    ] as const) {
      const i = row * 1600 + column;
      // mm from the distortion centre at (0.1, -0.2); undistort: ideal = recorded (1 + 1e-4 r^2)
      const x = ((column + 0.5) / 1600 - 0.5) * 24 - 0.1;
      const y = ((row + 0.5) / 1200 - 0.5) * 18 + 0.2;
      const factor = 1 + 1e-4 * (x * x + y * y);
      expect(Math.abs(planes.get("R")![i]! - ((x * factor + 0.1) / 24 + 0.5)) * 1600).toBeLessThan(0.02);
      expect(Math.abs(planes.get("G")![i]! - ((y * factor - 0.2) / 18 + 0.5)) * 1200).toBeLessThan(0.02);
      expect(planes.get("B")![i]).toBe(0);
    }
  });

  it("say -1, -1 where the coefficients define nothing, and are never NaN", async () => {
    // ideal = recorded (1 - 0.0008 r^2) turns back at r = 1 / sqrt(0.0024) = 20.41 mm, outside the frame (15 mm), and has taken
    // that to 20.41 x 2/3 = 13.61 mm: no recorded point belongs to an ideal one further out, such as the frame's corner.
    const keys = ["lens: P50", "model: brown-conrady", "direction: undistort", "radius: mm"];
    const day = dayOf({ rows: ["2,4,-0.0008"], header: "focus_m,t,k1", keys });
    const file = planVfx(day, { ...FULL, mapWidth: 400 }).files.find((f) => f.name.endsWith("undistort-0001.exr"));
    const { planes, window } = readExr(await file!.bytes());
    const width = window.right - window.left + 1;
    const counts = { undefined: 0, wrong: 0 };
    planes.get("R")!.forEach((u, i) => {
      const v = planes.get("G")![i]!;
      const x = (((i % width) + window.left + 0.5) / 400 - 0.5) * 24;
      const y = ((Math.floor(i / width) + window.top + 0.5) / 300 - 0.5) * 18;
      const radius = Math.hypot(x, y);
      if (u === -1 && v === -1) counts.undefined++;
      if (!Number.isFinite(u) || (radius > 13.62 && u !== -1) || (radius < 13.6 && u === -1)) counts.wrong++;
    });
    expect(counts.undefined).toBeGreaterThan(0);
    expect(counts.wrong).toBe(0);
  });

  it("of shading are the brightness factor, three times the same", async () => {
    const day = dayOf({ rows: ["inf,4"] });
    const bytes = await planVfx(day, FULL)
      .files.find((f) => f.name.endsWith("shading-0001.exr"))!
      .bytes();
    const { planes } = readExr(bytes);
    const x = (0.5 / 1600 - 0.5) * 24 - 0.1;
    const y = (0.5 / 1200 - 0.5) * 18 + 0.2;
    expect(planes.get("R")![0]).toBeCloseTo(1 - 1e-3 * (x * x + y * y), 4);
    // as bytes: two million numbers one by one take ten seconds
    const [red, green, blue] = ["R", "G", "B"].map((name) => Buffer.from(planes.get(name)!.buffer));
    expect(red!.equals(green!) && red!.equals(blue!)).toBe(true);
  });

  it("are told with a reason where there are none", () => {
    const none = (day: ReturnType<typeof dayOf>) => planMaps(firstTake(day), null);
    expect(none(dayOf({ rows: ["2,4,50"], header: "focus_m,t,focal_mm", keys: ["lens: Z2880"] }))).toEqual({
      none: "lens Z2880 has no calibration table",
    });
    const cameras = "camera,sensor_mode,active_width_mm,active_height_mm\nA,OPEN,24,18\n";
    expect(none(dayOf({ rows: ["2,4"], files: { "kit/cameras.csv": cameras } }))).toEqual({
      none: "the kit does not say the recorded resolution",
    });
  });
});

describe("planVfx", () => {
  const names = (options: Partial<typeof DEFAULT_VFX>, note = "180,800,hero") =>
    planVfx(dayOf({ rows: ["2,4"], note }), { ...DEFAULT_VFX, ...options }).files.map((f) => f.name.replace("vfx/a-1a-1/", ""));
  const TEXTS = ["lens.csv", "lens.opentrackio.jsonl", "camera.usda", "datapackage.json"];

  it("gives plates their folder with maps", () => {
    expect(names({})).toEqual([...TEXTS, "maps.csv", "undistort-0001.exr", "redistort-0001.exr", "shading-0001.exr"]);
  });
  it("gives takes that are no plates a folder only when all are asked for, and maps only when all maps are", () => {
    expect(names({}, "180,800,")).toEqual([]);
    expect(names({ takes: "all" }, "180,800,")).toEqual(TEXTS);
    expect(names({ takes: "all", maps: "all" }, "180,800,")).toHaveLength(8);
  });
  it("leaves out maps or everything", () => {
    expect(names({ maps: "none" })).toEqual(TEXTS);
    expect(names({ takes: "none" })).toEqual([]);
  });
  it("makes the same bytes every time, in the order of the plan", async () => {
    const run = async () => {
      const written: [string, string][] = [];
      const plan = planVfx(dayOf({ rows: FOUR_FRAMES }), { takes: "all", maps: "all", mapWidth: 200 });
      const total = await makeVfx(plan, (name, bytes) => written.push([name, Buffer.from(bytes).toString("base64")]));
      expect(written.map(([name]) => name)).toEqual(plan.files.map((f) => f.name));
      expect(total).toBeGreaterThan(1000);
      return written;
    };
    expect(await run()).toEqual(await run());
  });
});
