/** A show whose camera records 100 pixels a millimetre, with one lens and its table, and one take. */
import { logText, SMALL_KIT, summarise } from "../helpers/memory-show.ts";

export const DATE = "2030-02-03";

export interface LensShow {
  readonly keys?: readonly string[];
  /** Rows of `focal_mm,focus_m,k1[,more]`; no table when absent. */
  readonly table?: { readonly header: string; readonly rows: readonly string[] };
  readonly mode?: string;
  readonly frames: number;
  readonly logKeys?: readonly string[];
  readonly logHeader?: string;
  readonly cells: (i: number) => string;
  readonly noteHeader?: string;
  readonly note?: string;
  /** Log rows that are written; the rest of the take is not logged. */
  readonly logged?: number;
}

const KEYS = ["model: brown-conrady", "direction: undistort", "radius: mm"];

export function lensShow(show: LensShow) {
  const { keys = KEYS, table, frames, logged = frames } = show;
  const hours = (n: number) =>
    [0, Math.floor(n / 1440), Math.floor(n / 24) % 60, n % 24]
      .map((v) => String(v).padStart(2, "0"))
      .join(":")
      .replace("00:", "10:");
  const files = {
    ...SMALL_KIT,
    "kit/cameras.csv":
      "camera,sensor_mode,active_width_mm,active_height_mm,resolution_x,resolution_y\n" +
      "A,OPEN,24.89,18.66,2489,1866\nA,CROP,20,15,2000,1500\nA,UNSAID,24.89,18.66,,\n",
    ...(table === undefined
      ? {}
      : {
          "kit/calibration/P50.csv": `${keys.map((key) => `# ${key}\n`).join("")}${table.header}\n${table.rows.map((row) => `${row}\n`).join("")}`,
        }),
    [`days/${DATE}/day.yaml`]: `day: 1\ndate: ${DATE}\n`,
    [`days/${DATE}/notes.csv`]:
      `slate,take,camera,clip,tc_in,tc_out,lens,sensor_mode${show.noteHeader ?? ""}\n` +
      `1,1,A,C1,10:00:00:00,${hours(frames)},P50,${show.mode ?? "OPEN"}${show.note ?? ""}\n`,
    [`days/${DATE}/logs/a.csv`]: logText(
      ["clip: C1", "lens: P50", ...(show.logKeys ?? [])],
      show.logHeader ?? "focus_m,t",
      "10:00:00:00",
      logged,
      show.cells,
    ),
  };
  return summarise(files, DATE);
}

export function lensTake(show: LensShow) {
  const [take] = lensShow(show).summary.takes;
  if (take === undefined) throw new Error("no take");
  return take;
}
