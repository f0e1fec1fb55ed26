/** Numbered OpenEXR pictures as a lens log: one row a picture. */
import type { Place } from "../../core/finding.ts";
import type { FindingCollector } from "../../core/findings/collect.ts";
import { nominalRate } from "../../time/frame-rate.ts";
import { parseTimecode } from "../../time/timecode.ts";
import type { LogContext } from "../log/lens-log.ts";
import type { LensLog, LogColumn, LogTiming } from "../log/log-record.ts";
import { rejectRepeats } from "../log/log-repeats.ts";
import type { NoteRow, Still } from "../records.ts";
import { NO_STILL_DATA, type StillData } from "./still-lens.ts";

/** Above it the time code attribute has no room for the frame. @source OpenEXR, ImfTimeCode.h: frames 0 to 29 */
const TIMECODE_RATE = 30;

const FIGURES: readonly (readonly [LogColumn, (data: StillData) => number | null])[] = [
  ["focus", (data) => data.focusDioptres],
  ["t", (data) => data.tStop],
  ["f", (data) => data.fNumber],
  ["focal_mm", (data) => data.focalMm],
  ["entrance_pupil_mm", (data) => data.entrancePupilMm],
];

interface Picture {
  readonly still: Still;
  readonly number: number;
  readonly data: StillData;
}

/**
 * A log for each numbered sequence whose headers have lens data. Its rows are placed by the time code attributes where all have one,
 * else by the numbers in the file names, counted from the take's first frame. It belongs to the take whose note names one of its
 * pictures, else to the clip that the files are named by. A picture whose header cannot be read is a rejected row.
 */
export function exrSequences(
  stills: readonly Still[],
  notes: readonly NoteRow[],
  context: LogContext,
  found: FindingCollector,
): readonly LensLog[] {
  const sequences = new Map<string, Picture[]>();
  for (const still of stills) {
    const match = /^(.*?)[._ -]*(\d{2,9})\.exr$/i.exec(still.name);
    if (match === null) continue;
    const pictures = sequences.get(match[1] as string);
    const picture = { still, number: Number(match[2]), data: still.data ?? NO_STILL_DATA };
    if (pictures === undefined) sequences.set(match[1] as string, [picture]);
    else pictures.push(picture);
  }
  return [...sequences].flatMap(([name, pictures]) => {
    const told = pictures.filter(({ data }) => FIGURES.some(([, figure]) => figure(data) !== null));
    if (told.length < 2) return [];
    const sorted = [...pictures].sort((a, b) => a.number - b.number);
    return [sequenceLog(name, sorted, notes, context, found)];
  });
}

function sequenceLog(
  name: string,
  pictures: readonly Picture[],
  notes: readonly NoteRow[],
  context: LogContext,
  found: FindingCollector,
): LensLog {
  const { rate, dropFrame } = context;
  const rows = pictures.length;
  const first = pictures[0] as Picture;
  const { file } = first.still;
  const placeOf = (row: number): Place => ({ file: (pictures[row] as Picture).still.file, line: null, column: null });
  const rejected = Uint8Array.from(pictures, ({ data }) => (data === NO_STILL_DATA ? 1 : 0));
  const columns: Partial<Record<LogColumn, Float64Array>> = {};
  for (const [column, figure] of FIGURES) {
    const values = Float64Array.from(pictures, ({ data }) => figure(data) ?? Number.NaN);
    if (values.some((value) => !Number.isNaN(value))) columns[column] = values;
  }
  const timing = timingOf(pictures, context);
  rejectRepeats(
    {
      file,
      rows,
      timing,
      rate,
      dropFrame,
      rejected,
      columns: Object.values(columns),
      identity: null,
      lineOf: (row) => row + 1,
      placeOf,
      textOf: (row) => `the frame of ${(pictures[row] as Picture).still.name}`,
    },
    found,
  );
  const note = notes.find(({ still }) => pictures.some((picture) => picture.still.name === still?.value));
  return {
    file,
    sha256: first.still.sha256,
    bytes: pictures.reduce((sum, { still }) => sum + still.bytes, 0),
    keys: {
      camera: note?.camera.value ?? only(pictures, ({ camera }) => camera),
      clip: note === undefined ? name : null,
      slate: note?.slate.value ?? null,
      take: note?.take.value ?? null,
      lens: null,
      lensSerial: only(pictures, ({ lensSerial }) => lensSerial),
      date: null,
      rate: null,
      dropFrame: null,
      distanceFrom: "image-plane",
      convention: {
        model: null,
        direction: null,
        radius: null,
        areaMm: null,
        squeezeState: null,
        shadingRadius: null,
        shadingValues: "loss",
      },
      clockOffsetFrames: 0,
      startTimecode: null,
    },
    keyPlace: () => ({ file, line: null, column: null }),
    rows,
    timing,
    rate,
    dropFrame,
    rejected,
    columns,
    focusField: columns.focus === undefined ? null : "focus_m",
    rowKeys: {},
    unknown: [],
    lineOf: (row) => row + 1,
    cell: (row, column) => ({ place: placeOf(row), text: textOf(pictures[row] as Picture, column) }),
  };
}

function timingOf(pictures: readonly Picture[], { rate, dropFrame }: LogContext): LogTiming {
  const labels = pictures.map(({ data }) => {
    const read = data.timecode === null ? null : parseTimecode(data.timecode, rate, dropFrame);
    return read?.ok ? read.frame : null;
  });
  const readable = pictures.map(({ data }) => data !== NO_STILL_DATA);
  if (nominalRate(rate) <= TIMECODE_RATE && labels.every((label, i) => label !== null || !readable[i])) {
    return { kind: "timecode", frames: Int32Array.from(labels, (label) => label ?? -1) };
  }
  const start = (pictures[0] as Picture).number;
  return { kind: "frame", frames: Int32Array.from(pictures, ({ number }) => number - start), start: null };
}

/** What all pictures that say it say alike. */
function only(pictures: readonly Picture[], said: (data: StillData) => string | null): string | null {
  const all = new Set(pictures.map(({ data }) => said(data)).filter((text) => text !== null));
  return all.size === 1 ? ([...all][0] ?? null) : null;
}

function textOf({ data, still }: Picture, column: string): string {
  if (column === "timecode" || column === "frame") return data.timecode ?? still.name;
  const value = FIGURES.find(([name]) => name === column)?.[1](data) ?? null;
  if (value === null) return "";
  if (column !== "focus") return String(value);
  return value === 0 ? "inf" : String(Number((1 / value).toPrecision(7)));
}
