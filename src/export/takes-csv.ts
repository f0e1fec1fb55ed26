/** takes.csv: one row per take, raw figures, units in the column names. */
import type { DaySummary } from "../summary/types.ts";
import { type CsvCell, csvText, rateCell } from "./csv-text.ts";

export const TAKES_COLUMNS = [
  "address",
  "slate",
  "take",
  "camera",
  "scene",
  "roll",
  "clip",
  "circled",
  "status",
  "plate",
  "timecode_in",
  "timecode_out",
  "rate",
  "duration_frames",
  "lens",
  "lens_serial",
  "focal_min_mm",
  "focal_max_mm",
  "t_widest",
  "t_deepest",
  "focus_near_m",
  "focus_far_m",
  "pulls",
  "frames_missing",
  "remarks",
] as const;

/** The text of takes.csv, header included; what was not recorded is an empty cell, infinity is `inf`. */
export function takesCsv(summary: DaySummary): string {
  const rows = summary.takes.map((s): CsvCell[] => {
    const { take } = s;
    return [
      take.address,
      take.slate,
      take.take,
      take.camera,
      take.scene,
      take.roll,
      take.clip,
      take.circled,
      take.status,
      take.plate,
      s.timecodeIn,
      s.timecodeOut,
      rateCell(take.rate),
      take.durationFrames,
      take.lensId,
      take.lens?.serial ?? null,
      s.focal?.minMm ?? null,
      s.focal?.maxMm ?? null,
      s.tStop?.widest ?? null,
      s.tStop?.deepest ?? null,
      s.focus?.nearestM ?? null,
      s.focus?.farthestM ?? null,
      s.pulls?.length ?? null,
      s.framesMissing,
      s.remarks,
    ];
  });
  return csvText(TAKES_COLUMNS, rows);
}
