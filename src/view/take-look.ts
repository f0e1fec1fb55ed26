/** What the lens does to the picture at the middle logged frame: distortion and shading at three points. */

import { NOT_CALCULATED } from "../format/absent.ts";
import { fixed } from "../format/number.ts";
import { listWords } from "../format/words.ts";
import type { CalibrationTable } from "../ingest/records.ts";
import type { CalibrationState, TakeSummary } from "../summary/types.ts";
import { takeName } from "./names.ts";
import { cell, column, numOr, row, type TableModel, table } from "./table.ts";
import { calibrationWords, frameTimecode } from "./take-readout.ts";

export interface LookView {
  readonly head: string;
  readonly hasTable: boolean;
  readonly table: TableModel;
  /** Where the figures come from, or why there are none. */
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

export function lookView(t: TakeSummary): LookView {
  const { distortionPercent: d, shadingStops: s } = t;
  const timecode = t.middleFrame === null ? null : frameTimecode(t, t.middleFrame);
  return {
    head:
      timecode === null
        ? ""
        : `At ${timecode}, the middle logged frame. Negative distortion is barrel, negative shading is darker than the centre.`,
    hasTable: d !== null || s !== null,
    table: table(
      "look-table",
      `Distortion and shading of ${takeName(t.take)} at three points of the frame`,
      [
        column("Point"),
        column("Distortion", { unit: "%", num: true }),
        column("Shading", { unit: "stops", num: true }),
        column("Brightness", { unit: "centre = 1", num: true }),
      ],
      POINTS.map(([label, key]) =>
        row(cell(label, { nb: true }), [
          numOr(d === null ? null : fixed(d[key], 2), NOT_CALCULATED),
          numOr(s === null ? null : fixed(s[key], 2), NOT_CALCULATED),
          numOr(s === null ? null : fixed(2 ** s[key], 3), NOT_CALCULATED),
        ]),
      ),
    ),
    sentence: lookSentence(t),
    source: calibrationWords(t.calibration),
    boxed: t.calibration.kind === "none" || t.calibration.kind === "nearest",
  };
}

function lookSentence(t: TakeSummary): string {
  const state = t.calibration;
  if (state.kind === "none") return `Lens look not calculated. ${state.reason}`;
  if (state.kind === "logged") return "Coefficients as logged, frame by frame.";
  const made = t.take.calibration === null ? "" : tableWords(t.take.calibration);
  if (state.kind === "inside") return `Between the calibration points of the lens's table.${made}`;
  return `${beyond(state)} The nearest point of the table stands in.${made}`;
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
