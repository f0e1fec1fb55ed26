/** clips.csv: every clip of the show by clip name, beside the report's page of the same. */
import { clipsByName } from "../../summary/clips.ts";
import type { DayDigest } from "../../summary/digest-types.ts";
import { type CsvCell, csvText, rateCell } from "../csv-text.ts";

const CLIP_COLUMNS = [
  "clip",
  "roll",
  "date",
  "day",
  "slate",
  "take",
  "camera",
  "scene",
  "circled",
  "status",
  "timecode_in",
  "timecode_out",
  "rate",
  "duration_frames",
  "lens",
  "remarks",
  "address",
] as const;

export function clipsCsv(digests: readonly DayDigest[]): string {
  const rows = clipsByName(digests).map(({ date, day, take }): CsvCell[] => [
    take.clip,
    take.roll,
    date,
    day,
    take.slate,
    take.take,
    take.camera,
    take.scene,
    take.circled,
    take.status,
    take.timecodeIn,
    take.timecodeOut,
    rateCell(take.rate),
    take.durationFrames,
    take.lens,
    take.remarks,
    take.address,
  ]);
  return csvText(CLIP_COLUMNS, rows);
}
