/** Each limit of show.yaml: the finding is there with the default, and gone with a wider one (or there only with a narrower one). */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { collectFindings } from "../../../src/core/findings/collect.ts";
import { DEFAULT_LIMITS } from "../../../src/ingest/show/check-limits.ts";
import { readShowFile } from "../../../src/ingest/show/show-file.ts";
import { SMALL_KIT } from "../../helpers/memory-show.ts";
import { clipLog, found, type OneDay, pull } from "../../helpers/one-day.ts";

const DOCS = readFileSync(new URL("../../../docs/show-folder.md", import.meta.url), "utf8");
const block = /^check:\n(?: {2}.*\n)+/m.exec(DOCS)?.[0] ?? "";

/** A day of one take, its note from `lens` on, and its log. */
const take = (note: string, header = "t", cells: (i: number) => string = () => "2.83", frames = 48): OneDay => ({
  notes: [`1,1,A,C1,10:00:00:00,10:00:02:00,${note}`],
  logs: { "a.csv": clipLog("C1", header, frames, cells) },
});
const noted = (header: string, ...notes: string[]): OneDay => ({ header: `slate,take,camera,${header}`, notes });
const table = (row: string): OneDay => ({
  notes: ["1,1,A,,,,P35,,"],
  files: {
    "kit/calibration/P35.csv": `# model: brown-conrady\n# direction: undistort\n# radius: half-diagonal\n# area_mm: 24.89x18.66\nfocal_mm,focus_m,k1,p1,p2\n${row}\n`,
  },
});

/** Key, a wider or narrower value, code, day, and whether the default says something. */
const CASES: readonly (readonly [string, number, string, OneDay, boolean])[] = [
  // 2 log2(4/2.83) is 1 stop
  ["stop_difference", 1.1, "CHECK702", take("P50,4,"), true],
  ["focus_difference_fraction", 0.6, "CHECK703", take("P50,2.8,3 m", "focus_m", () => "2.000"), true],
  ["focal_difference_fraction", 0.2, "CHECK720", take("P50,,", "focal_mm", () => "55"), true],
  // 24 of 48 frames
  ["log_coverage", 0.4, "MATCH413", take("P50,2.8,", "t", () => "2.83", 24), true],
  // the last of 240 frames is missing: 1/24 s, and 99.6 % are there
  [
    "log_edge_seconds",
    0.01,
    "MATCH414",
    { ...take("P50,2.8,", "t", () => "2.83", 239), notes: ["1,1,A,C1,10:00:00:00,10:00:10:00,P50,2.8,"] },
    false,
  ],
  // from 2.83 to 5.66: two stops
  ["stop_jump_stops", 2.5, "CHECK741", take("P50,,", "t", (i) => (i < 24 ? "2.83" : "5.66")), true],
  // 2 log2(2/1.8) is 0.3
  ["wider_than_lens_stops", 0.5, "CHECK705", take("P50,,", "t", () => "1.80"), true],
  // 2 log2(2.83/2.8) is 0.03
  ["stop_under_f_stops", 0.1, "CHECK716", take("P50,,", "t,f", () => "2.80,2.83"), true],
  // 0.48 m under a close focus of 0.5 m: 4 %
  ["close_focus_fraction", 0.06, "CHECK710", take("P50,,", "focus_m", () => "0.480"), true],
  // 52 of 50 is 4 %
  ["marked_focal_fraction", 0.05, "CHECK714", noted("lens,focal", "1,1,A,P50,52"), true],
  // 6.1 m for 2 m: 3.05, 7 % from 3.28
  ["unit_ratio_fraction", 0.05, "CHECK722", take("P50,2.8,6.1 m", "focus_m", () => "2.000"), true],
  // 50 mm at T2.83 with tau 0.81 is N 2.547 and c 0.025: 2500/(2.547 x 0.025) + 50 = 39.3 m; 30 m is a quarter less
  ["hyperfocal_fraction", 0.5, "CHECK709", take("P50,,2 m", "focus_m,t,focal_mm,hyperfocal_m", () => "2.000,2.83,50,30"), true],
  [
    "clock_drift_frames",
    5,
    "MATCH419",
    {
      notes: ["1,1,A,,10:00:00:00,10:00:02:00,P50,2.8,"],
      day: 'clocks: {A: [{offset_frames: 1, from: "09:00:00:00"}, {offset_frames: 5, from: "14:00:00:00"}]}\n',
    },
    true,
  ],
  // the log is 30 frames, 1.25 s, early
  [
    "clock_search_seconds",
    1,
    "MATCH418",
    {
      notes: ["1,1,A,C1,10:00:04:00,10:00:08:00,P50,2.8,3-1.5 m"],
      logs: { "a.csv": clipLog("C1", "focus_m,t", 200, (i) => `${pull(3, 1.5, 48, 143)(i)},2.83`, "10:00:00:18") },
    },
    true,
  ],
  // 24 and 23.976 are 0.1 % apart
  ["speed_slip_fraction", 0.0005, "CHECK732", noted("capture_fps", "1,1,A,23.976"), true],
  // ideal = recorded x 0.7 at the corner: 1/0.7 - 1 is 43 %
  ["distortion_percent", 80, "CHECK735", table("35,2,-0.3,,"), true],
  ["tangential_percent", 50, "CHECK734", table("35,2,-0.01,0.02,0"), true],
  // 20 mm on a diagonal of 31 mm is wide; ideal = recorded x 0.95 at the corner: 5 % of pincushion
  ["wide_pincushion_percent", 20, "CHECK736", table("20,2,-0.05,,"), true],
  [
    "height_difference_m",
    0.5,
    "CHECK757",
    {
      ...noted("clip,tc_in,tc_out,height_m", "1,1,A,C1,10:00:00:00,10:00:02:00,1.20"),
      logs: { "a.csv": clipLog("C1", "t,height_m", 48, () => "2.83,1.500") },
    },
    true,
  ],
  ["highest_height_m", 200, "CHECK758", noted("height_m", "1,1,A,150"), true],
  [
    "angle_difference_deg",
    5,
    "CHECK757",
    {
      ...noted("clip,tc_in,tc_out,tilt_deg", "1,1,A,C1,10:00:00:00,10:00:02:00,5"),
      logs: { "a.csv": clipLog("C1", "t,tilt_deg", 48, () => "2.83,8.0") },
    },
    true,
  ],
  // 1e6/3200 - 1e6/5600 is 134 mired
  ["white_balance_mired", 150, "CHECK756", noted("lens,wb", "1,1,A,P50,5600", "1,1,B,P35,3200"), true],
  // ND 0.6 is 2 stops, ND8 3
  ["nd_difference_stops", 1.5, "CHECK769", noted("stop,nd", "1,1,A,4,0.6", "1,2,A,4,ND8"), true],
  [
    "meal_hours",
    8,
    "CHECK764",
    { notes: ["1,1,A,,,,P50,,"], day: 'call: "08:00"\nmeals: [{out: "15:00", in: "15:30"}]\nwrap: "19:00"\n' },
    true,
  ],
  // 20:10 is 70 minutes after wrap
  [
    "after_wrap_minutes",
    90,
    "CHECK765",
    {
      header: "slate,take,camera,tc_in,tc_out",
      notes: [...[1, 2, 3, 4, 5, 6].map((n) => `1,${n},A,1${n}:00:00:00,1${n}:00:05:00`), "1,7,A,20:10:00:00,20:10:05:00"],
      day: 'call: "08:00"\nwrap: "19:00"\n',
    },
    true,
  ],
];

function withLimit(day: OneDay, key: string, value: number): OneDay {
  return { ...day, files: { ...day.files, "show.yaml": `${SMALL_KIT["show.yaml"]}check: {${key}: ${value}}\n` } };
}

describe("the limits of the checks", () => {
  it("are written down with their defaults in docs/show-folder.md, all of them", () => {
    const messages = collectFindings();
    const show = readShowFile(`title: x\ncode: X\nrate: 24\n${block}`, "show.yaml", messages);
    expect(messages.list()).toEqual([]);
    expect(show?.limits).toEqual(DEFAULT_LIMITS);
    const written = Object.keys((parse(block) as { check: object }).check);
    expect(written).toHaveLength(Object.keys(DEFAULT_LIMITS).length);
    expect(CASES.map(([key]) => key)).toEqual(written);
  });

  it.each(CASES)("%s, at %f, decides about %s", (key, value, code, day, byDefault) => {
    expect(found(day, code).length > 0, "with the default").toBe(byDefault);
    expect(found(withLimit(day, key, value), code).length > 0, `with ${value}`).toBe(!byDefault);
  });
});
