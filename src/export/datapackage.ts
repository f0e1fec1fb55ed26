/** datapackage.json of a day's pack: what each table holds, its types and units (Frictionless tabular data package). */
import { stableJson } from "../core/stable-json.ts";
import type { DaySummary } from "../summary/types.ts";
import { FINDINGS_COLUMNS } from "./findings-csv.ts";
import { type TableField, tableResource } from "./table-resource.ts";
import { TAKES_COLUMNS } from "./takes-csv.ts";

type About = Omit<TableField, "name">;

const text = (description: string): About => ({ type: "string", description });
const whole = (description: string): About => ({ type: "integer", description });
const number = (unit: string, description: string): About => ({ type: "number", unit, description });

const TAKES: Readonly<Record<(typeof TAKES_COLUMNS)[number], About>> = {
  address: text("camera, slate and take, folded; twice only where the notes have a take twice, which is a finding"),
  slate: text("slate as noted"),
  take: text("take as noted, a text: 3 PU is one"),
  camera: text("camera letter"),
  scene: text("scene as noted"),
  roll: text("roll or card as noted"),
  clip: text("clip name as noted"),
  circled: { type: "boolean", description: "whether the take is circled" },
  status: text("good, ng, incomplete, false start or tail slate"),
  plate: text("kind of plate; empty: none"),
  timecode_in: text("first frame"),
  timecode_out: text("first frame after the take"),
  rate: text("timecode rate in frames a second, a fraction where it is one"),
  duration_frames: whole("length in frames of the timecode"),
  lens: text("lens in front of the camera: the log's, else the note's"),
  lens_serial: text("its serial number from the kit"),
  focal_min_mm: number("mm", "shortest focal length of the take"),
  focal_max_mm: number("mm", "longest focal length of the take"),
  t_widest: number("1", "widest T-stop of the take: log, else note, whose 5.6 is the exact 5.65685424949"),
  t_deepest: number("1", "deepest T-stop of the take: log, else note, whose 5.6 is the exact 5.65685424949"),
  focus_near_m: text("nearest focus distance in metres from the image plane, or inf"),
  focus_far_m: text("farthest focus distance in metres from the image plane, or inf"),
  pulls: whole("focus pulls in the take; empty: no log to tell"),
  frames_missing: whole("frames of the take that the log does not have"),
  remarks: text("remarks as noted"),
};

const FINDINGS: Readonly<Record<(typeof FINDINGS_COLUMNS)[number], About>> = {
  code: text("kind of finding; daybook explain CODE says more"),
  severity: text("error, check or remark"),
  file: text("file of the show folder"),
  line: whole("physical line of the file, counted from 1"),
  column: whole("character of the line where the cell begins, counted from 1"),
  field: text("column of the table"),
  message: text("what was noticed, the value as written in quotes"),
  hint: text("what to do"),
  take: text("take that it is about, as in takes.csv"),
};

/** The descriptor of `takes.csv` and `findings.csv` as JSON text. */
export function dayDataPackage(summary: DaySummary): string {
  return stableJson({
    profile: "tabular-data-package",
    name: `${summary.show.code.toLowerCase()}-${summary.date}`,
    title: `${summary.show.title}, ${summary.date}`,
    description: "Takes and findings of one shooting day. The full figures are in day.json.",
    resources: [
      tableResource("takes", "One row per take and camera, in shooting order.", fields(TAKES_COLUMNS, TAKES)),
      tableResource("findings", "What the builder noticed, with file, line and column.", fields(FINDINGS_COLUMNS, FINDINGS)),
    ],
  });
}

function fields<Name extends string>(names: readonly Name[], about: Readonly<Record<Name, About>>): readonly TableField[] {
  return names.map((name) => ({ name, ...about[name] }));
}
