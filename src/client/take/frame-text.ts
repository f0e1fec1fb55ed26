/** One frame of a take as text to paste: lines of words, or a table of two rows with tabs. */
import { metresFromDioptres } from "../../core/quantity.ts";
import { NOT_CALCULATED, NOT_LOGGED, NOT_RECORDED } from "../../format/absent.ts";
import { type FrameValues, furtherReadout, type ReadoutEntry, readout } from "../../format/readout.ts";
import type { OpenTake } from "../../format/take-record.ts";
import type { DistanceSystem } from "../../format/units.ts";

/** "frame 641 of 754". */
export function frameWords(take: OpenTake, frame: number): string {
  return `frame ${frame + 1} of ${take.record.frames}`;
}

/** Name, timecode and every figure with unit and source, a line each; distances in the units that the page shows. */
export function frameAsText(take: OpenTake, frame: number, units: DistanceSystem): string {
  const { record } = take;
  const values = take.valuesAt(frame);
  const head = [
    record.name,
    record.clip === null ? null : `clip ${record.clip}`,
    record.lens === null ? null : `lens ${record.lens}`,
  ];
  const timecode = take.timecodeAt(frame);
  return [
    head.filter((part) => part !== null).join(", "),
    `${timecode === null ? "" : `${timecode}, `}${frameWords(take, frame)}`,
    ...[...readout(values, record.sources, units), ...furtherReadout(values)].map(line),
  ].join("\n");
}

function line({ term, value, source }: ReadoutEntry): string {
  return `${term}: ${value}${source === "" ? "" : ` (${source})`}`;
}

/** Columns of the table: name with its unit, how the value is found, digits, and the word for its absence. */
const FIGURES: readonly (readonly [name: string, of: (v: FrameValues) => number, digits: number, absent: string])[] = [
  ["focus_m", (v) => metres(v.focusDioptres), 3, NOT_LOGGED],
  ["near_m", (v) => metres(v.nearDioptres), 3, NOT_CALCULATED],
  ["far_m", (v) => metres(v.farDioptres), 3, NOT_CALCULATED],
  ["t_stop", (v) => v.tStop, 2, NOT_LOGGED],
  ["focal_mm", (v) => v.focalMm, 2, NOT_LOGGED],
  ["hyperfocal_m", (v) => v.hyperfocalM, 2, NOT_CALCULATED],
  ["angle_horizontal_deg", (v) => v.acrossDeg, 2, NOT_CALCULATED],
  ["angle_vertical_deg", (v) => v.upDeg, 2, NOT_CALCULATED],
  ["distortion_corner_percent", (v) => v.distortion[0], 2, NOT_CALCULATED],
  ["distortion_side_percent", (v) => v.distortion[1], 2, NOT_CALCULATED],
  ["distortion_top_percent", (v) => v.distortion[2], 2, NOT_CALCULATED],
  ["shading_corner_stops", (v) => v.shading[0], 2, NOT_CALCULATED],
  ["shading_side_stops", (v) => v.shading[1], 2, NOT_CALCULATED],
  ["shading_top_stops", (v) => v.shading[2], 2, NOT_CALCULATED],
  ["entrance_pupil_mm", (v) => v.pupilMm, 0, NOT_RECORDED],
  ["height_m", (v) => v.heightM, 2, NOT_RECORDED],
  ["tilt_deg", (v) => v.tiltDeg, 1, NOT_RECORDED],
];

/** A row of names and a row of values, for a spreadsheet: plain numbers with a point, `inf` for infinity, words for what is absent. */
export function frameAsTsv(take: OpenTake, frame: number): string {
  const { record } = take;
  const values = take.valuesAt(frame);
  const cells: [string, string][] = [
    ["take", record.name],
    ["scene", record.scene ?? NOT_RECORDED],
    ["roll", record.roll ?? NOT_RECORDED],
    ["clip", record.clip ?? NOT_RECORDED],
    ["lens", record.lens ?? NOT_RECORDED],
    ["timecode", take.timecodeAt(frame) ?? NOT_RECORDED],
    ["frame", String(frame + 1)],
    ...FIGURES.map(([name, of, digits, absent]): [string, string] => [
      name,
      values.logged ? plain(of(values), digits, absent) : NOT_LOGGED,
    ]),
    ["calibration", values.logged ? values.calibration : NOT_LOGGED],
  ];
  return [cells.map(([name]) => name), cells.map(([, value]) => value.replace(/[\t\r\n]+/g, " "))]
    .map((row) => row.join("\t"))
    .join("\n");
}

function metres(dioptres: number): number {
  if (Number.isNaN(dioptres)) return dioptres;
  const m = metresFromDioptres(dioptres);
  return m === "inf" ? Number.POSITIVE_INFINITY : m;
}

function plain(value: number, digits: number, absent: string): string {
  if (Number.isNaN(value)) return absent;
  if (value === Number.POSITIVE_INFINITY) return "inf";
  const text = value.toFixed(digits);
  return Number(text) === 0 ? text.replace("-", "") : text;
}
