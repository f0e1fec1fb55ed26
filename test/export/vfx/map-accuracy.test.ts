/**
 * Maps of the default size against the exact mapping, in pixels of the recorded picture: each sample of the file is read as a user's
 * program reads it, with straight lines between samples. The strongest state of each lens that plates were shot with, both ways;
 * MAPS_PER_LENS=10000 takes every map and prints the figures.
 */
import { existsSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { mapExr } from "../../../src/export/vfx/map-exr.ts";
import { type MapFile, type MapPlan, planMaps } from "../../../src/export/vfx/map-plan.ts";
import { readDay } from "../../../src/ingest/read-day.ts";
import { readShow } from "../../../src/ingest/read-show.ts";
import { buildDay } from "../../../src/model/build-day.ts";
import { equationRoom } from "../../../src/optics/distortion/equation.ts";
import { mapPoint } from "../../../src/optics/distortion/map.ts";
import { summariseDay } from "../../../src/summary/day.ts";
import { type FrameLook, frameLook } from "../../../src/summary/frame-look.ts";
import type { TakeSummary } from "../../../src/summary/types.ts";
import { diskFolder } from "../../helpers/disk-folder.ts";
import { readExr } from "./exr-bytes.ts";

const ROOT = join(import.meta.dirname, "../../..");
const SHOWS = ["data", "../shared/example/basic", "../shared/example/wide"].filter((name) => existsSync(join(ROOT, name)));
/** Rounding of the file is under 1/64 px on each axis; the rest is for the straight lines. */
const ROUNDING_PX = Math.SQRT2 / 64;
const LINES_PX = 0.01;
/** Steps across the picture; corners and borders are among the points. */
const STEPS = 97;
const MAPS_PER_LENS = Number(process.env.MAPS_PER_LENS ?? 2);

const read = new Map<string, readonly TakeSummary[]>();
function platesOf(show: string): readonly TakeSummary[] {
  const plates = read.get(show) ?? readPlates(show);
  read.set(show, plates);
  return plates;
}

function readPlates(show: string): readonly TakeSummary[] {
  const folder = diskFolder(join(ROOT, show));
  const { input } = readShow(folder);
  if (input === null) throw new Error(`${show} cannot be read`);
  return input.dates.flatMap((date) => {
    const read = readDay(folder, input, date);
    return summariseDay(buildDay(input, read.input, read.findings), input.kit).takes.filter(({ take }) => take.plate !== null);
  });
}

/** How far the frame's corner moves, in mm: tells the strongest state. */
function strength({ look, kind }: MapFile, area: { widthMm: number; heightMm: number }): number {
  const room = equationRoom();
  const [x, y] = [area.widthMm / 2, area.heightMm / 2];
  if (kind === "shading" || look.distortion === null || !mapPoint(look.distortion, "ideal", x, y, room)) return -1;
  return Math.hypot((room[0] as number) - x, (room[1] as number) - y);
}

interface Candidate {
  readonly summary: TakeSummary;
  readonly plan: MapPlan;
  readonly file: MapFile;
  readonly strong: number;
}

interface Errors {
  readonly largest: number;
  readonly corner: number;
  readonly points: number;
}

async function errorsOf(summary: TakeSummary, plan: MapPlan, file: MapFile): Promise<Errors> {
  const mode = summary.take.sensorMode;
  const { distortion } = file.look;
  if (mode === null || distortion === null) throw new Error("a map has both");
  const { planes, window } = readExr(await mapExr(summary, plan, file));
  const [u, v] = [planes.get("R")!, planes.get("G")!];
  const { width, height, recordedWidth, recordedHeight } = plan.size;
  const columns = window.right - window.left + 1;
  const rows = window.bottom - window.top + 1;
  const read = (plane: Float32Array, x: number, y: number): number => {
    const column = Math.min(columns - 2, Math.max(0, Math.floor(x)));
    const row = Math.min(rows - 2, Math.max(0, Math.floor(y)));
    const at = (c: number, r: number) => plane[r * columns + c] as number;
    const [a, b] = [x - column, y - row];
    const above = at(column, row) * (1 - a) + at(column + 1, row) * a;
    return above * (1 - b) + (at(column, row + 1) * (1 - a) + at(column + 1, row + 1) * a) * b;
  };
  const room = equationRoom();
  let [largest, corner, points] = [0, 0, 0];
  for (let j = 0; j <= STEPS; j++) {
    for (let i = 0; i <= STEPS; i++) {
      // middles of recorded pixels, the outermost ones among them
      const px = Math.round((i / STEPS) * (recordedWidth - 1)) + 0.5;
      const py = Math.round((j / STEPS) * (recordedHeight - 1)) + 0.5;
      const xMm = (px / recordedWidth - 0.5) * mode.activeWidthMm;
      const yMm = (py / recordedHeight - 0.5) * mode.activeHeightMm;
      if (!mapPoint(distortion, file.kind === "undistort" ? "recorded" : "ideal", xMm, yMm, room)) continue;
      const x = (px / recordedWidth) * width - 0.5 - window.left;
      const y = (py / recordedHeight) * height - 0.5 - window.top;
      const dx = (read(u, x, y) - ((room[0] as number) / mode.activeWidthMm + 0.5)) * recordedWidth;
      const dy = (read(v, x, y) - ((room[1] as number) / mode.activeHeightMm + 0.5)) * recordedHeight;
      const error = Math.hypot(dx, dy);
      largest = Math.max(largest, error);
      if ((i === 0 || i === STEPS) && (j === 0 || j === STEPS)) corner = Math.max(corner, error);
      points++;
    }
  }
  return { largest, corner, points };
}

describe.each(SHOWS)("frames that share a map, %s", (show) => {
  it("have their corners within 0.1 recorded pixels of the state that the map is of", () => {
    let frames = 0;
    for (const summary of platesOf(show)) {
      const plan = planMaps(summary, null);
      const { sensorMode: mode } = summary.take;
      if ("none" in plan || mode === null || summary.perFrame === null) continue;
      const corner = (look: FrameLook, side: number): readonly [number, number] => {
        const room = equationRoom();
        if (look.distortion === null) throw new Error("a frame with a map has distortion");
        expect(mapPoint(look.distortion, "ideal", (side * mode.activeWidthMm) / 2, mode.activeHeightMm / 2, room)).toBe(true);
        const perMm = plan.size.recordedWidth / mode.activeWidthMm;
        return [(room[0] as number) * perMm, (room[1] as number) * (plan.size.recordedHeight / mode.activeHeightMm)];
      };
      const looks = new Map(plan.files.map((file) => [file.name, file.look]));
      for (const range of plan.ranges.filter(({ map }) => map.startsWith("undistort"))) {
        for (let frame = range.frameFrom; frame <= range.frameTo; frame++) {
          const look = frameLook(summary.take, summary.perFrame, frame);
          for (const side of [-1, 1]) {
            const [own, map] = [corner(look, side), corner(looks.get(range.map)!, side)];
            expect(Math.hypot(own[0] - map[0], own[1] - map[1]), `${summary.take.address} frame ${frame}`).toBeLessThan(0.1);
          }
          frames++;
        }
      }
    }
    expect(frames).toBeGreaterThan(100);
  });
});

describe.each(SHOWS)("maps of a quarter of the recorded width, %s", (show) => {
  it("are right to the rounding of the file and a hundredth of a recorded pixel, up to the corner of the strongest lens", async () => {
    const byLens = new Map<string, Candidate[]>();
    for (const summary of platesOf(show)) {
      const plan = planMaps(summary, null);
      const { sensorMode: mode, lens } = summary.take;
      if ("none" in plan || mode === null || lens === null) continue;
      expect(plan.size.width).toBe(Math.round(plan.size.recordedWidth / 4));
      const area = { widthMm: mode.activeWidthMm, heightMm: mode.activeHeightMm };
      const uv = plan.files.filter((file) => file.kind !== "shading" && file.look.distortion !== null);
      const candidates = uv.map((file) => ({ summary, plan, file, strong: strength(file, area) / area.widthMm }));
      byLens.set(lens.id, [...(byLens.get(lens.id) ?? []), ...candidates]);
    }
    let [largest, corner, maps, strongest] = [0, 0, 0, -1];
    for (const candidates of byLens.values()) {
      for (const { summary, plan, file, strong } of candidates.sort((a, b) => b.strong - a.strong).slice(0, MAPS_PER_LENS)) {
        const errors = await errorsOf(summary, plan, file);
        expect(errors.points).toBeGreaterThan(1000);
        expect(errors.largest, `${summary.take.address} ${file.name}`).toBeLessThan(ROUNDING_PX + LINES_PX);
        largest = Math.max(largest, errors.largest);
        if (strong >= strongest) corner = strong > strongest ? errors.corner : Math.max(corner, errors.corner);
        strongest = Math.max(strongest, strong);
        maps++;
      }
    }
    expect(maps).toBeGreaterThan(0);
    if (process.env.MAPS_PER_LENS !== undefined)
      console.log(
        `${show}: ${maps} maps, largest error ${largest.toFixed(4)} px, corner of the strongest state ${corner.toFixed(4)} px`,
      );
  }, 3_600_000);
});
