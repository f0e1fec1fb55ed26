/**
 * What lens.csv says of a frame, in the other files of a take: OpenTrackIO (metres), the USD camera (centimetres), the header of
 * each map (metres, mm), and the extremes that day.json has of the take. The demo's plates, every frame.
 */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, inject, it } from "vitest";
import { readExr } from "../export/vfx/exr-bytes.ts";
import { numberOf, type Row, readJson, readTable, readUsd } from "../helpers/pack-files.ts";

const out = inject("demoOut");
const FOLDERS = readdirSync(join(out, "packs")).flatMap((date) =>
  readdirSync(join(out, "packs", date, "vfx")).map((address) => [date, address] as const),
);
/** Twelve significant digits, of the value and of its dioptres. */
const NEAR = 1e-10;
const FIRST_TIME_CODE = 1001;

// biome-ignore lint/suspicious/noExplicitAny: the shape is what is tested
type Json = any;

/** What differs; empty when nothing does. Thousands of frames: one comparison a frame would take longer than the build. */
class Differences {
  readonly list: string[] = [];
  compare(what: string, seen: number | null | undefined, wanted: number | null): void {
    const both = seen === null || seen === undefined || wanted === null ? (seen ?? null) === wanted : near(seen, wanted);
    if (!both) this.list.push(`${what}: ${seen} where lens.csv has ${wanted}`);
  }
}

const near = (a: number, b: number): boolean => a === b || Math.abs(a - b) <= NEAR * Math.max(Math.abs(a), Math.abs(b));
const cell = (row: Row, name: string): number | null => (row[name] === "" ? null : numberOf(row[name] ?? ""));
const times = (value: number | null, factor: number): number | null => (value === null ? null : value * factor);

describe.each(FOLDERS)("%s %s", (date, address) => {
  const pack = join(out, "packs", date);
  const folder = join(pack, "vfx", address);
  const take: Json = readJson(pack, "day.json").takes.find((t: Json) => t.address === address);
  const rows = readTable(folder, "lens.csv");
  const logged = rows.filter((row) => row.calibration !== "");
  const samples: readonly Json[] = readFileSync(join(folder, "lens.opentrackio.jsonl"), "utf8")
    .trimEnd()
    .split("\n")
    .map((line) => JSON.parse(line));

  it("lens.csv has the frames, the gaps and the extremes of day.json", () => {
    const seen = new Differences();
    expect([rows.length, logged.length]).toEqual([take.durationFrames, take.log.framesLogged]);
    expect(logged.length).toBeGreaterThan(0);
    const extremes = (name: string) => {
      const values = logged.map((row) => cell(row, name)).filter((value) => value !== null);
      return { min: Math.min(...values), max: Math.max(...values) };
    };
    const value = (figure: unknown) => (figure === null || figure === undefined ? null : numberOf(String(figure)));
    const check = (name: string, min: unknown, max: unknown) => {
      if (value(min) === null) return;
      const found = extremes(name);
      seen.compare(`${name} smallest`, value(min), found.min);
      seen.compare(`${name} largest`, value(max), found.max);
    };
    check("focal_mm", take.focalMm?.min, take.focalMm?.max);
    check("t", take.tStop?.widest, take.tStop?.deepest);
    check("focus_m", take.focus?.nearestM, take.focus?.farthestM);
    check("hyperfocal_m", take.hyperfocalM?.min, take.hyperfocalM?.max);
    check("entrance_pupil_mm", take.entrancePupilMm?.min, take.entrancePupilMm?.max);
    const middle = logged[Math.floor((logged.length - 1) / 2)] as Row;
    seen.compare("horizontal angle", take.angleOfViewDeg?.horizontal ?? null, cell(middle, "aov_h_deg"));
    seen.compare("vertical angle", take.angleOfViewDeg?.vertical ?? null, cell(middle, "aov_v_deg"));
    seen.compare("distortion", take.distortionPercent?.corner ?? null, cell(middle, "distortion_corner_percent"));
    seen.compare("shading", take.shadingStops?.corner ?? null, cell(middle, "shading_corner_stops"));
    const { shallowest } = take.depthOfField;
    const at = rows.find((row) => row.timecode === shallowest.timecode) as Row;
    for (const [name, figure] of [
      ["focus_m", "focusM"],
      ["near_m", "nearM"],
      ["far_m", "farM"],
    ] as const) {
      seen.compare(`shallowest ${name}`, value(shallowest[figure]), cell(at, name));
    }
    expect(seen.list).toEqual([]);
  });

  it("OpenTrackIO says the same of every frame, in metres where it counts in metres", () => {
    const seen = new Differences();
    expect(samples).toHaveLength(rows.length);
    for (const [i, row] of rows.entries()) {
      const { lens = {}, timing, custom } = samples[i];
      const put = (name: string, value: number | undefined, wanted: number | null) =>
        seen.compare(`frame ${i} ${name}`, value, wanted);
      const focus = cell(row, "focus_m");
      put("pinholeFocalLength", lens.pinholeFocalLength, cell(row, "focal_mm"));
      put("focusDistance", lens.focusDistance, focus === Number.POSITIVE_INFINITY ? null : focus);
      put("focusDioptres", custom.focusDioptres, focus === null ? null : 1 / focus);
      put("tStop", lens.tStop, cell(row, "t"));
      put("fStop", lens.fStop, cell(row, "f"));
      put("entrancePupilOffset", lens.entrancePupilOffset, times(cell(row, "entrance_pupil_mm"), 0.001));
      // numerator terms stand at even places, zeros at the end are left off
      const radial: readonly number[] = lens.distortion?.[0].radial ?? [];
      const tangential: readonly number[] = lens.distortion?.[0].tangential ?? [];
      const none = lens.distortion === undefined ? undefined : 0;
      for (const [k, name] of ["k1", "k2", "k3"].entries()) put(name, radial[2 * k] ?? none, cell(row, name));
      for (const [p, name] of ["p1", "p2"].entries()) put(name, tangential[p] ?? none, cell(row, name));
      if (lens.distortionOffset !== undefined) put("cx_mm", lens.distortionOffset.x, cell(row, "cx_mm"));
      for (const name of ["a1", "a2", "a3"]) put(name, lens.exposureFalloff?.[name], cell(row, name));
      const label = row.timecode?.split(/[:;]/).map(Number);
      const { hours, minutes, seconds, frames } = timing.timecode;
      if ([hours, minutes, seconds, frames].join() !== label?.join()) seen.list.push(`frame ${i}: ${row.timecode}`);
    }
    expect(seen.list).toEqual([]);
  });

  it("the USD camera says the same of every frame, focus in centimetres, and has no sample in a gap", () => {
    const seen = new Differences();
    const usd = readUsd(folder, "camera.usda");
    const { activeSensorPhysicalDimensions: sensor, anamorphicSqueeze: squeeze } = samples[0].static.camera;
    seen.compare("aperture", usd.at("horizontalAperture", 0), (sensor.width * squeeze.num) / squeeze.denom);
    seen.compare("aperture", usd.at("verticalAperture", 0), sensor.height);
    const columns = {
      focalLength: ["focal_mm", 1],
      focusDistance: ["focus_m", 100],
      fStop: ["f", 1],
      "lens:tStop": ["t", 1],
      "lens:entrancePupilMm": ["entrance_pupil_mm", 1],
      "lens:angleOfViewHorizontalDeg": ["aov_h_deg", 1],
      "lens:k1": ["k1", 1],
      "lens:p1": ["p1", 1],
      "lens:distortionCornerPercent": ["distortion_corner_percent", 1],
      "lens:a1": ["a1", 1],
      "lens:shadingCornerStops": ["shading_corner_stops", 1],
    } as const;
    for (const row of logged) {
      for (const [name, [column, factor]] of Object.entries(columns)) {
        const time = Number(row.frame) + FIRST_TIME_CODE;
        seen.compare(`frame ${row.frame} ${name}`, usd.at(name, time), times(cell(row, column), factor));
      }
    }
    const missing = rows.filter((row) => row.calibration === "");
    expect(missing.filter((row) => usd.hasSample(Number(row.frame) + FIRST_TIME_CODE))).toEqual([]);
    expect(seen.list).toEqual([]);
  });

  it("maps.csv gives every logged frame one map of each kind, and each map's header has the lens of its frame", () => {
    const seen = new Differences();
    const ranges = readTable(folder, "maps.csv");
    const files = readdirSync(folder).filter((name) => name.endsWith(".exr"));
    expect([...new Set(ranges.map((range) => range.map))].sort()).toEqual(files.sort());
    for (const kind of ["undistort", "redistort", "shading"]) {
      const served = ranges
        .filter((range) => range.map?.startsWith(kind))
        .flatMap((range) => rows.slice(Number(range.frame_from), Number(range.frame_to) + 1).map((row) => row.frame));
      expect(served, kind).toEqual(logged.map((row) => row.frame));
    }
    for (const file of files) {
      const { attributes, window } = readExr(readFileSync(join(folder, file)));
      const float = (name: string) => attributes.get(name)?.bytes.readFloatLE(0);
      const frame = attributes.get("mapFrame")?.bytes.readInt32LE(0) ?? -1;
      const row = rows[frame] as Row;
      const rounded = (name: string) => (cell(row, name) === null ? null : Math.fround(cell(row, name) as number));
      const focus = rounded("focus_m");
      seen.compare(`${file} pinholeFocalLength`, float("pinholeFocalLength"), rounded("focal_mm"));
      seen.compare(`${file} focus`, float("focus"), focus === Number.POSITIVE_INFINITY ? null : focus);
      seen.compare(`${file} tStop`, float("tStop"), rounded("t"));
      seen.compare(`${file} aperture`, float("aperture"), rounded("f"));
      seen.compare(`${file} entrancePupilOffset`, float("entrancePupilOffset"), rounded("entrance_pupil_mm"));
      const display = attributes.get("displayWindow")!.bytes;
      const [width, height] = [display.readInt32LE(8) + 1, display.readInt32LE(12) + 1];
      const over = Math.max((window.right - window.left + 1) / width, (window.bottom - window.top + 1) / height);
      const mine = ranges.filter((range) => range.map === file);
      for (const range of mine) seen.compare(`${file} overscan`, over, cell(range, "overscan"));
      expect(
        mine.some((range) => Number(range.frame_from) <= frame && frame <= Number(range.frame_to)),
        file,
      ).toBe(true);
    }
    expect(seen.list).toEqual([]);
  });
});
