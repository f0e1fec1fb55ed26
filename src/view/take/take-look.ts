/** What the lens does to the picture at the middle logged frame: its drawing, and distortion and shading at three points. */

import { NOT_CALCULATED } from "../../format/absent.ts";
import { areaMm } from "../../format/length.ts";
import { fixed, thousands } from "../../format/number.ts";
import { signedPercent } from "../../format/percent.ts";
import { NBSP } from "../../format/space.ts";
import { listWords } from "../../format/words.ts";
import type { CalibrationTable } from "../../ingest/records.ts";
import { lookPlaces, shiftAt } from "../../still/look-places.ts";
import { type LookOnArea, middleLook } from "../../still/middle-look.ts";
import type { OverscanCanvas } from "../../summary/overscan.ts";
import type { CalibrationState, TakeSummary } from "../../summary/types.ts";
import type { StillFiles } from "../context.ts";
import { takeName } from "../names.ts";
import { cell, column, FIXED, numOr, row, type TableModel, table } from "../table.ts";
import { type LookPicture, lookPicture } from "./take-look-picture.ts";
import { calibrationWords, frameTimecode } from "./take-readout.ts";

export interface LookView {
  readonly head: string;
  readonly picture: LookPicture;
  readonly hasTable: boolean;
  readonly table: TableModel;
  /** Canvas that holds the picture when distortion is off or put back; empty when there is none to say. */
  readonly canvas: string;
  /** Whether the calibration served at the middle logged frame; follows the frame where a script runs. */
  readonly state: string;
  /** Where the figures come from, and what would mend it when there are none. */
  readonly sentence: string;
  readonly source: string;
  /** True when the sentence warns: outside the calibration, or none at all. */
  readonly boxed: boolean;
}

const POINTS = [
  ["C, corner", "corner"],
  ["S, mid-side", "midSide"],
  ["T, mid-top", "midTop"],
] as const;

export function lookView(t: TakeSummary, path: string, still: StillFiles | null): LookView {
  const { distortionPercent: d, shadingStops: s } = t;
  const timecode = t.middleFrame === null ? null : frameTimecode(t, t.middleFrame);
  const look = middleLook(t);
  return {
    head:
      timecode === null
        ? ""
        : `At ${timecode}, the middle logged frame. Negative distortion is barrel, negative shading is darker than the centre.`,
    picture: lookPicture(look, still, { path, name: takeName(t.take) }),
    hasTable: d !== null || s !== null,
    table: pointsTable(t, look),
    canvas: canvasSentence(t),
    state: stateSentence(t),
    sentence: `${restSentence(t)}${fallOffWords(t)}`.trim(),
    source: calibrationWords(t.calibration),
    boxed: t.calibration.kind === "none" || t.calibration.kind === "nearest",
  };
}

function pointsTable(t: TakeSummary, look: LookOnArea | null): TableModel {
  const { distortionPercent: d, shadingStops: s } = t;
  const size = resolution(t);
  const places = look === null ? [] : lookPlaces(look);
  const shift = (i: number): string | null => {
    const place = places[i];
    if (look === null || size === null || place === undefined) return null;
    const found = shiftAt(look, size, place.recorded);
    if (found === null) return null;
    return found.way === null ? fixed(0, 0) : `${fixed(found.pixels, found.pixels < 10 ? 1 : 0)}${NBSP}${found.way}`;
  };
  return table(
    "look-table",
    `Distortion and shading of ${takeName(t.take)} at three points of the frame`,
    [
      column("Point"),
      column("Distortion", { unit: "%", num: true }),
      ...(size === null ? [] : [column(`Shift at ${size.widthPx} wide`, { unit: "pixels", num: true })]),
      column("Shading", { unit: "stops", num: true }),
      column("Brightness", { unit: "centre = 1", num: true }),
    ],
    POINTS.map(([label, key], i) =>
      row(cell(label, { nb: true }), [
        numOr(d === null ? null : fixed(d[key], 2), NOT_CALCULATED),
        ...(size === null ? [] : [numOr(shift(i), NOT_CALCULATED)]),
        numOr(s === null ? null : fixed(s[key], 2), NOT_CALCULATED),
        numOr(s === null ? null : fixed(2 ** s[key], 3), NOT_CALCULATED),
      ]),
    ),
    { cls: FIXED },
  );
}

function resolution(t: TakeSummary): { readonly widthPx: number; readonly heightPx: number } | null {
  const mode = t.take.sensorMode;
  if (mode === null || mode.resolutionX === null || mode.resolutionY === null) return null;
  return { widthPx: mode.resolutionX, heightPx: mode.resolutionY };
}

function canvasSentence(t: TakeSummary): string {
  if (t.distortionPercent === null) return "";
  if (t.overscan === null) return t.overscanReason === null ? "" : `No canvas is given: ${t.overscanReason}.`;
  const { undistort, redistort } = t.overscan;
  const size = (canvas: OverscanCanvas): string =>
    `${thousands(canvas.widthPx)}${NBSP}×${NBSP}${thousands(canvas.heightPx)}${NBSP}pixels (${signedPercent(canvas.percent, 1)})`;
  const off =
    undistort === null ? null : `Canvas that keeps every recorded pixel of the take once distortion is off: ${size(undistort)}.`;
  // smaller than the frame is the usual case, and needs no canvas
  const on =
    redistort === null || redistort.percent <= 0
      ? null
      : `To fill a frame of the recorded size once distortion is put on: ${size(redistort)}.`;
  const why = t.overscanReason === null ? null : `The other way no canvas is given: ${t.overscanReason}.`;
  return [off, on, why].filter((words) => words !== null).join(" ");
}

function stateSentence(t: TakeSummary): string {
  const state = t.calibration;
  if (state.kind === "none") return `Lens look not calculated: ${state.reason}.`;
  if (state.kind === "logged") return "Coefficients as logged, frame by frame.";
  if (state.kind === "inside") return "Between the calibration points of the lens's table.";
  return `${beyond(state)} The nearest point of the table stands in.`;
}

/** What holds for the whole take: the table, the area it was made on, or the file that would mend it. */
function restSentence(t: TakeSummary): string {
  const { kind } = t.calibration;
  if (kind === "none") return ` ${whereToWrite(t)}`;
  const made = kind === "logged" || t.take.calibration === null ? "" : tableWords(t.take.calibration);
  return `${made}${areaWords(t)}`;
}

/** The estimate for a lens without measured shading, and said to be one. */
function fallOffWords({ naturalFallOffStops: corner }: TakeSummary): string {
  if (corner === null) return "";
  return ` Shading is not measured; natural fall-off by cos⁴ alone would be ${fixed(corner, 2)}${NBSP}stop at the corner, an estimate.`;
}

/** Which file would mend it. */
function whereToWrite(t: TakeSummary): string {
  const { take } = t;
  if (take.track === null) return "Put the take's lens log into the day's logs folder.";
  if (take.sensorMode === null) return "Write the camera's sensor mode into kit/cameras.csv.";
  if (take.lens === null) return "Write the lens into kit/lenses.csv, and its table into kit/calibration.";
  if (take.calibration !== null) return headerWords(take.calibration);
  return `A table would be kit/calibration/${take.lens.id}.csv, with model, direction and radius in its header lines.`;
}

function headerWords({ convention, file }: CalibrationTable): string {
  const { model, direction, radius, areaMm: area } = convention;
  const unsaid = [
    model === null && "model",
    direction === null && "direction",
    radius === null && "radius",
    area === null && radius?.startsWith("half-") === true && "area_mm",
  ].filter((name) => name !== false);
  return unsaid.length === 0 ? `The table is ${file}.` : `Write ${listWords(unsaid)} as a header line of ${file}.`;
}

function areaWords(t: TakeSummary): string {
  const area = t.calibrationArea;
  if (area === null) return "";
  const made = areaMm(area.widthMm, area.heightMm);
  return ` It was made on ${made} and is used on ${areaMm(area.modeWidthMm, area.modeHeightMm)} by the same millimetres.`;
}

function beyond(state: Extract<CalibrationState, { kind: "nearest" }>): string {
  const axes = state.axes.map((a) => {
    if (a.axis === "focal") return `focal length ${fixed(a.asked, 1)} mm (table to ${fixed(a.used, 1)} mm)`;
    if (a.axis === "stop") return `stop T${fixed(a.asked, 1)} (table to T${fixed(a.used, 1)})`;
    return `focus ${fixed(a.asked, 2)} dioptres (table to ${fixed(a.used, 2)})`;
  });
  return axes.length === 0 ? "Outside the calibration." : `Outside the calibration: ${listWords(axes)}.`;
}

/** " Table: brown-conrady, direction distort, radius half-diagonal, made 2026-08-19." */
function tableWords(t: CalibrationTable): string {
  const { model, direction, radius } = t.convention;
  const parts = [
    model,
    direction === null ? null : `direction ${direction}`,
    radius === null ? null : `radius ${radius}`,
    t.madeOn === null ? null : `made ${t.madeOn}`,
  ].filter((part) => part !== null);
  return parts.length === 0 ? "" : ` Table: ${parts.join(", ")}.`;
}
