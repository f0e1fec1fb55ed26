/** A small show for the VFX files: one prime with a calibration table in mm, one zoom without, takes of a few frames. */
import type { DaySummary, TakeSummary } from "../../../src/summary/types.ts";
import { type Files, logText, summarise } from "../../helpers/memory-show.ts";

export const DATE = "2030-02-03";

const KIT = {
  "show.yaml": "title: Small show\ncode: SMALL\nrate: 24\ncircle_of_confusion_mm: 0.025\n",
  "kit/cameras.csv":
    "camera,body,serial,sensor_mode,active_width_mm,active_height_mm,resolution_x,resolution_y,squeeze\n" +
    "A,Body 1,SN1,OPEN,24,18,1600,1200,1\nB,Body 1,SN2,TALL,24,20,1600,1200,2\n",
  "kit/lenses.csv":
    "lens,maker,series,serial,kind,focal_mm,focal_min_mm,focal_max_mm,widest_t,transmittance,close_focus_m\n" +
    "P50,Maker,Series,501,prime,50,,,2,0.81,0.5\nZ2880,Maker,Series,901,zoom,,28,80,2.8,,0.8\n",
  "kit/calibration/P50.csv":
    "# model: brown-conrady\n# direction: undistort\n# radius: mm\n# shading_radius: mm\n# made_on: 2030-01-01\n" +
    "focal_mm,focus_m,t,k1,k2,cx_mm,cy_mm,a1,entrance_pupil_mm\n" +
    "50,0.5,,2e-4,0,0.1,-0.2,1e-3,82\n50,inf,,1e-4,0,0.1,-0.2,1e-3,80\n",
} as const;

export interface FixtureOptions {
  /** Cells of each frame after the timecode; `null` leaves the row out. */
  readonly rows: readonly (string | null)[];
  readonly header?: string;
  readonly keys?: readonly string[];
  readonly camera?: string;
  readonly note?: string;
  readonly files?: Files;
}

/** Summary of a day with one plate of as many frames as rows. */
export function dayOf(options: FixtureOptions): DaySummary {
  const { rows, header = "focus_m,t", keys = ["lens: P50"], camera = "A", note = "180,800,hero" } = options;
  const label = (frame: number) => `10:00:00:${String(frame).padStart(2, "0")}`;
  const log = logText([...keys, "clip: C1"], header, "10:00:00:00", rows.length, (i) => rows[i] ?? "MISSING")
    .split("\n")
    .filter((line) => !line.endsWith("MISSING"))
    .join("\n");
  const files: Files = {
    ...KIT,
    [`days/${DATE}/day.yaml`]: `day: 1\ndate: ${DATE}\n`,
    [`days/${DATE}/notes.csv`]: `slate,take,camera,clip,tc_in,tc_out,shutter,ei,plate\n1A,1,${camera},C1,${label(0)},${label(rows.length)},${note}\n`,
    [`days/${DATE}/logs/a.csv`]: log,
    ...options.files,
  };
  return summarise(files, DATE).summary;
}

export function firstTake(day: DaySummary): TakeSummary {
  const [take] = day.takes;
  if (take === undefined) throw new Error("the day has no take");
  return take;
}

/** Two seconds apart in focus, a gap, infinity: 2 m, 2 m, not logged, infinity. */
export const FOUR_FRAMES = ["2,4", "2,4", null, "inf,4"] as const;
