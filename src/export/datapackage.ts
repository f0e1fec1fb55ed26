/** datapackage.json of a day's pack: what each table holds, its types and units (Frictionless tabular data package). */
import { stableJson } from "../core/stable-json.ts";
import type { DaySummary } from "../summary/types.ts";
import { FINDINGS_COLUMNS } from "./findings-csv.ts";
import { type TableField, tableResource } from "./table-resource.ts";
import { TAKES_COLUMNS } from "./takes-csv.ts";

const TYPES: Readonly<Record<string, TableField["type"]>> = {
  circled: "boolean",
  duration_frames: "integer",
  focal_min_mm: "number",
  focal_max_mm: "number",
  t_widest: "number",
  t_deepest: "number",
  pulls: "integer",
  frames_missing: "integer",
  line: "integer",
  column: "integer",
};

const DESCRIPTIONS: Readonly<Record<string, string>> = {
  address: "camera, slate and take, folded; unique in the day",
  timecode_in: "first frame",
  timecode_out: "first frame after the take",
  rate: "timecode rate in frames a second, a fraction where it is one",
  focus_near_m: "nearest distance in metres from the image plane, or inf",
  focus_far_m: "farthest distance in metres from the image plane, or inf",
  line: "physical line of the file, counted from 1",
  column: "character of the line where the cell begins, counted from 1",
};

/** The descriptor of `takes.csv` and `findings.csv` as JSON text. */
export function dayDataPackage(summary: DaySummary): string {
  const resource = (name: string, description: string, columns: readonly string[]) =>
    tableResource(name, description, columns.map(field));
  return stableJson({
    profile: "tabular-data-package",
    name: `${summary.show.code.toLowerCase()}-${summary.date}`,
    title: `${summary.show.title}, ${summary.date}`,
    description: "Takes and findings of one shooting day. The full figures are in day.json.",
    resources: [
      resource("takes", "One row per take and camera, in shooting order.", TAKES_COLUMNS),
      resource("findings", "What the builder noticed, with file, line and column.", FINDINGS_COLUMNS),
    ],
  });
}

function field(column: string): TableField {
  const description = DESCRIPTIONS[column];
  return { name: column, type: TYPES[column] ?? "string", ...(description === undefined ? {} : { description }) };
}
