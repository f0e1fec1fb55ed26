/** markers.csv, a row a mark inside a take, and bins.csv, a row a take by scene. */
import { compareText } from "../../core/finding.ts";
import type { DaySummary, TakeSummary } from "../../summary/types.ts";
import { formatTimecode } from "../../time/timecode.ts";
import { type CsvCell, csvText, rateCell } from "../csv-text.ts";
import type { FormatLosses } from "../losses.ts";
import { takeMarks } from "./marks.ts";
import { clipName } from "./reels.ts";

export const TABLE_LOSSES: FormatLosses = {
  format: "Tables",
  files: "editorial/markers.csv, editorial/bins.csv",
  losses: [
    "Marks are of pulls, gaps of the log and plates only; every frame is in `lens.csv`.",
    "A take that names several scenes stands in one bin, named as the notes name them.",
    "Cells that a spreadsheet would run as a formula have a leading apostrophe.",
  ],
};

/** A column with what the data package says of it. */
export interface TableColumn {
  readonly name: string;
  readonly type: "string" | "integer" | "number" | "boolean";
  readonly about: string;
}

const text = (name: string, about: string): TableColumn => ({ name, type: "string", about });
const whole = (name: string, about: string): TableColumn => ({ name, type: "integer", about });

export const MARKER_COLUMNS: readonly TableColumn[] = [
  text("address", "take, as in takes.csv"),
  text("clip_name", "slate and take"),
  text("camera", "camera letter"),
  text("clip", "clip name as noted"),
  text("kind", "focus-pull, log-gap or plate; a pull of more than three seconds without a hold is called a follow in the text"),
  text("timecode_from", "first frame of the mark"),
  text("timecode_to", "first frame after the mark"),
  text("rate", "timecode rate in frames a second, a fraction where it is one"),
  whole("frame", "first frame of the mark, counted from 0 at the first frame of the take"),
  whole("frames", "length in frames; 1 for a plate, which is the whole take and marked on its first frame"),
  text("colour", "colour of the marker in the timeline and the edit list"),
  text("text", "the mark in words"),
  text("from_m", "focus before a pull in metres from the image plane, or inf"),
  text("to_m", "focus after a pull in metres from the image plane, or inf"),
  { name: "peak_dioptres_per_second", type: "number", about: "largest speed of a pull, in dioptres (1/m) a second" },
];

export const BIN_COLUMNS: readonly TableColumn[] = [
  text("bin", "scene as noted, or: no scene"),
  text("scene", "scene as noted"),
  text("slate", "slate as noted"),
  text("take", "take as noted"),
  text("clip_name", "slate and take"),
  text("camera", "camera letter"),
  text("roll", "roll as noted"),
  text("clip", "clip name as noted"),
  text("timecode_in", "first frame"),
  text("timecode_out", "first frame after the take"),
  text("rate", "timecode rate in frames a second, a fraction where it is one"),
  whole("duration_frames", "length in frames"),
  { name: "circled", type: "boolean", about: "whether the take is circled" },
  text("status", "good, ng, incomplete, false start or tail slate"),
  text("sound", "sync or mos"),
  text("plate", "kind of plate"),
  text("remarks", "remarks as noted"),
  text("address", "take, as in takes.csv"),
];

export function markersCsv(summary: DaySummary): string {
  const rows = summary.takes.flatMap((t) =>
    takeMarks(t, summary.show.distances).map((mark): CsvCell[] => [
      t.take.address,
      clipName(t),
      t.take.camera,
      t.take.clip,
      mark.kind,
      labelAt(t, mark.startFrame),
      labelAt(t, mark.startFrame + mark.frames),
      rateCell(t.take.rate),
      mark.startFrame,
      mark.frames,
      mark.colour,
      mark.text,
      mark.fromM,
      mark.toM,
      mark.peakDioptresPerSecond,
    ]),
  );
  return csvText(names(MARKER_COLUMNS), rows);
}

/** By scene in the order in which people count them (2, 2A, 10), takes in shooting order, those without a scene last. */
export function binsCsv(summary: DaySummary): string {
  const rows = [...summary.takes]
    .sort((a, b) => compareScenes(a.take.scene, b.take.scene))
    .map((t): CsvCell[] => [
      t.take.scene ?? "no scene",
      t.take.scene,
      t.take.slate,
      t.take.take,
      clipName(t),
      t.take.camera,
      t.take.roll,
      t.take.clip,
      t.timecodeIn,
      t.timecodeOut,
      rateCell(t.take.rate),
      t.take.durationFrames,
      t.take.circled,
      t.take.status,
      t.take.sound,
      t.take.plate,
      t.remarks,
      t.take.address,
    ]);
  return csvText(names(BIN_COLUMNS), rows);
}

function names(columns: readonly TableColumn[]): readonly string[] {
  return columns.map((column) => column.name);
}

function labelAt({ take }: TakeSummary, frame: number): string | null {
  return take.inFrame === null ? null : formatTimecode(take.inFrame + frame, take.rate, take.dropFrame);
}

/** Runs of digits count as numbers, everything else as text; without a scene comes last. */
export function compareScenes(a: string | null, b: string | null): number {
  if (a === null || b === null) return Number(a === null) - Number(b === null);
  const left = a.match(/\d+|\D+/g) ?? [];
  const right = b.match(/\d+|\D+/g) ?? [];
  for (const [i, part] of left.entries()) {
    const other = right[i];
    if (other === undefined) return 1;
    const numbers = /^\d/.test(part) && /^\d/.test(other);
    const order = numbers ? Number(part) - Number(other) : compareText(part, other);
    if (order !== 0) return order;
  }
  return left.length < right.length ? -1 : compareText(a, b);
}
