/** What each column of lens.csv is: type, unit, meaning, and where its figures come from in a take. */
import { lensLookFrames } from "../../summary/lens-look-frames.ts";
import type { TakeSummary } from "../../summary/types.ts";
import { LENS_COLUMNS, type LensColumn, unknownNames } from "./lens-rows.ts";

export interface LensField {
  readonly name: string;
  readonly type: "string" | "integer" | "number";
  readonly unit?: string;
  readonly description: string;
  /** Where the figures come from: logged, noted, kit, calculated, or that there are none. */
  readonly provenance: string;
}

interface ColumnWords {
  readonly type: LensField["type"];
  readonly unit?: string;
  readonly description: string;
}

const number = (unit: string, description: string): ColumnWords => ({ type: "number", unit, description });

const WORDS: Readonly<Record<LensColumn, ColumnWords>> = {
  frame: { type: "integer", description: "frame of the take, counted from 0 at timecode_in" },
  timecode: { type: "string", description: "timecode of the picture; a semicolon before the frames is drop-frame" },
  focus_m: number("m", "focus distance from the image plane; inf is infinity"),
  t: number("1", "T-stop"),
  f: number("1", "f-number, where it was logged as such"),
  focal_mm: number("mm", "focal length"),
  near_m: number("m", "near limit of the depth of field, from the image plane"),
  far_m: number("m", "far limit of the depth of field, from the image plane; inf is infinity"),
  hyperfocal_m: number("m", "hyperfocal distance from the image plane"),
  aov_h_deg: number("deg", "horizontal angle of view at this focus, of the desqueezed picture"),
  aov_v_deg: number("deg", "vertical angle of view at this focus"),
  k1: number("mm^-2", "radial term of r^2"),
  k2: number("mm^-4", "radial term of r^4"),
  k3: number("mm^-6", "radial term of r^6"),
  p1: number("mm^-1", "tangential term, 2 p1 x y in x and p1 (r^2 + 2 y^2) in y"),
  p2: number("mm^-1", "tangential term, p2 (r^2 + 2 x^2) in x and 2 p2 x y in y"),
  cx_mm: number("mm", "distortion centre from the middle of the active area, right is positive"),
  cy_mm: number("mm", "distortion centre from the middle of the active area, down is positive"),
  distortion_corner_percent: number("%", "distortion at the corner, 100 (recorded - ideal) / ideal; negative is barrel"),
  a1: number("mm^-2", "shading, brightness = 1 - (a1 r^2 + a2 r^4 + a3 r^6) at the recorded radius r"),
  a2: number("mm^-4", "shading term of r^4"),
  a3: number("mm^-6", "shading term of r^6"),
  shading_corner_stops: number("stop", "shading at the corner; negative is darker"),
  entrance_pupil_mm: number("mm", "entrance pupil from the image plane, toward the object is positive"),
  calibration: {
    type: "string",
    description:
      "inside: between points of the calibration table; nearest: beyond it, the nearest point was used; logged: coefficients from the log; none: no coefficients",
  },
};

/** The fields of a take's lens.csv in order. */
export function lensFields(summary: TakeSummary): readonly LensField[] {
  const known = LENS_COLUMNS.map((name) => ({ name, ...WORDS[name], provenance: provenanceOf(summary, name) }));
  const unknown = unknownNames(summary).map((name) => ({
    name,
    type: "string" as const,
    description: "column of the log as it was written; its meaning is not known here",
    provenance: "logged",
  }));
  return [...known, ...unknown];
}

function provenanceOf(summary: TakeSummary, name: LensColumn): string {
  const columns = summary.take.track?.columns;
  if (name === "frame" || name === "timecode") return summary.take.note?.tcIn == null ? "logged" : "noted";
  if (columns === undefined) return "none: the take has no log";
  switch (name) {
    case "focus_m":
      return columns.focus === undefined ? "none: not logged" : focusSource(summary);
    case "t":
      if (columns.t !== undefined) return "logged";
      return columns.f === undefined
        ? "none: not logged"
        : "calculated: f over the root of the transmittance, where the kit has it";
    case "f":
      return columns.f === undefined ? "none: not logged" : "logged";
    case "focal_mm":
      return columns.focal_mm === undefined ? (summary.focal?.source ?? "none: not known") : "logged";
    case "near_m":
    case "far_m":
      return `${depthSource(summary)}${pupilMagnificationWords(summary)}`;
    case "hyperfocal_m":
      return depthSource(summary);
    case "aov_h_deg":
    case "aov_v_deg":
      return "calculated: thin lens at this focus, active side of the sensor mode";
    case "distortion_corner_percent":
    case "shading_corner_stops":
      return "calculated from the coefficients of the frame";
    case "entrance_pupil_mm":
      return pupilSource(summary);
    case "calibration":
      return "calculated";
    default:
      return coefficientSource(summary, name);
  }
}

function focusSource({ take }: TakeSummary): string {
  const table = take.track?.focusTable;
  return table === undefined ? "logged" : `calculated: the logged encoder readings through ${table.file}, linear in 1/distance`;
}

function depthSource(summary: TakeSummary): string {
  return `calculated: exact thin lens, circle of confusion ${summary.take.circleOfConfusionMm ?? "not known"} mm, ${stopWords(summary)}`;
}

function pupilMagnificationWords({ take }: TakeSummary): string {
  const value = take.lens?.pupilMagnification ?? null;
  return value === null ? "" : `, pupil magnification ${value} from the kit`;
}

function stopWords(summary: TakeSummary): string {
  const used = summary.depthOfField?.stopUsed ?? null;
  if (used === "f") return "with the logged f-number";
  if (used === "t-times-root-tau") return "with f = T times the root of the kit's transmittance";
  return used === "t" ? "with T taken for f, since the transmittance is not known" : "no stop";
}

function pupilSource(summary: TakeSummary): string {
  if (summary.entrancePupilMm === null) return "none: not known";
  if (summary.entrancePupilMm.source === "logged") return "logged";
  const tabled = summary.take.calibration?.points.some((p) => p.coefficients.entrance_pupil_mm !== undefined) ?? false;
  return tabled ? "kit: calibration table" : "kit: lenses.csv";
}

function coefficientSource(summary: TakeSummary, name: LensColumn): string {
  const logged = summary.take.track?.columns ?? {};
  const isShading = /^a\d$/.test(name);
  const wanted = isShading ? (["a1", "a2", "a3"] as const) : (["k1", "k2", "k3", "k4", "k5", "k6", "p1", "p2", "lambda"] as const);
  if (wanted.some((column) => logged[column] !== undefined)) return "logged, brought to mm";
  const kinds = new Set(lensLookFrames(summary)?.calibration ?? []);
  if (kinds.has("inside") || kinds.has("nearest"))
    return `kit: ${summary.take.calibration?.file ?? "calibration table"}, brought to mm`;
  return "none";
}
