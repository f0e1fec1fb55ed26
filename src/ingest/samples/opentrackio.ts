import type { FindingCollector } from "../../core/findings/collect.ts";
import { CSV } from "../../core/findings/csv.ts";
import { LOG } from "../../core/findings/log.ts";
import { wholeFile } from "../../csv/decode.ts";
import type { Direction } from "../../optics/convention.ts";
import type { LogContext, LogSource } from "../log/lens-log.ts";
import type { LensLog, LogColumn } from "../log/log-record.ts";
import { rejectRepeats } from "../log/log-repeats.ts";
import { isReadable } from "../log/log-text.ts";
import { dropSentinels } from "../log/sentinels.ts";
import { type OtherMember, otherMembers, tellOfOthers } from "./other-members.ts";
import { fractionOf, isObject, type JsonObject, sampleFigures } from "./sample-fields.ts";
import { identityOf, type Said, type SampleIdentity, saidIn } from "./sample-identity.ts";
import {
  memberText,
  pathOf,
  placeInSample,
  type SampleLine,
  type SampleLines,
  sampleCell,
  sampleLines,
  sampleOf,
} from "./sample-lines.ts";
import { clockOf, type SampleClock, sampleTime, timecodeOf } from "./sample-timing.ts";

/**
 * Reads OpenTrackIO 1.0.x samples, one JSON object a line: the lens part, the timing and what the static block says of camera and
 * lens (which may stand in the first line only). Lines that are no JSON or have no readable timecode are rejected rows.
 */
export function readOpenTrackIo(source: LogSource, context: LogContext, found: FindingCollector): LensLog | null {
  const { file, text } = source;
  if (!isReadable(text, file, found)) return null;
  const lines = sampleLines(text);
  if (lines.rows === 0) {
    found.add(CSV.empty, {
      place: wholeFile(file),
      message: "the log has no samples",
      hint: "Copy the file again from the recorder.",
    });
    return null;
  }
  const reading = readSamples(lines, file, context, found);
  const { clock, frames, rejected, columns } = reading;
  const lineAt = lines.at;
  tellOfOthers(reading.others, (row, path) => placeInSample(file, lineAt(row), path), found);
  dropMarks(columns.focus, file, lineAt, found);
  const identity = identityOf(reading.said, (row, path) => placeInSample(file, lineAt(row), path), found);
  rejectRepeats(
    {
      file,
      rows: lines.rows,
      timing: { kind: "timecode", frames },
      rate: clock.rate,
      dropFrame: clock.dropFrame,
      rejected,
      columns: Object.values(columns),
      identity: identity.rowKeys.camera ?? null,
      lineOf: lines.number,
      placeOf: (row) => sampleCell(file, lineAt(row), "timecode").place,
      textOf: (row) => `the timecode of line ${lines.number(row)}`,
    },
    found,
  );
  return {
    file,
    sha256: source.sha256,
    bytes: text.size,
    keys: keysOf(identity, clock, reading.direction),
    keyPlace: identity.place,
    rows: lines.rows,
    timing: { kind: "timecode", frames },
    rate: clock.rate,
    dropFrame: clock.dropFrame,
    rejected,
    columns,
    focusField: columns.focus === undefined ? null : "focus_m",
    rowKeys: identity.rowKeys,
    unknown: reading.others.map(({ name, path }) => ({ name, text: (row: number) => memberText(lineAt(row), path) })),
    lineOf: lines.number,
    cell: (row, column) => sampleCell(file, lineAt(row), column),
  };
}

/** Distances in metres that are marks of the recorder: see `dropSentinels`. */
function dropMarks(
  focus: Float64Array | undefined,
  file: string,
  lineAt: (row: number) => SampleLine,
  found: FindingCollector,
): void {
  if (focus === undefined) return;
  const distances = {
    file,
    field: "focus_m",
    rows: focus.length,
    // Back to the metres that were written: 1 / (1 / 9999) is not quite 9999.
    value: (row: number) => Math.round(1e6 / (focus[row] as number)) / 1e6,
    drop: (row: number) => {
      focus[row] = Number.NaN;
    },
    cell: (row: number) => sampleCell(file, lineAt(row), "focus_m"),
  };
  dropSentinels(distances, found);
}

interface Reading {
  readonly clock: SampleClock;
  readonly frames: Int32Array;
  readonly rejected: Uint8Array;
  readonly columns: Readonly<Partial<Record<LogColumn, Float64Array>>>;
  readonly direction: Direction | null;
  readonly said: readonly Said[];
  readonly others: readonly OtherMember[];
}

/** Reads the samples one after the other and keeps none of them: a day's log would not fit in memory as objects. */
function readSamples(lines: SampleLines, file: string, context: LogContext, found: FindingCollector): Reading {
  const frames = new Int32Array(lines.rows).fill(-1);
  const rejected = new Uint8Array(lines.rows);
  const columns: Partial<Record<LogColumn, Float64Array>> = {};
  const said: Said[] = [];
  let clock: SampleClock | null = null;
  let direction: Direction | null = null;
  let squeeze: number | null = null;
  const others = otherMembers();
  for (let row = 0; row < lines.rows; row++) {
    const line = lines.at(row);
    const sample = sampleOf(line, file, found);
    said.push(saidIn(sample, said.at(-1)));
    if (sample === null) {
      rejected[row] = 1;
      continue;
    }
    others.look(sample, row);
    if (clock === null && timecodeOf(sample) !== null) clock = clockOf(sample, context);
    const frame = frameOf(sample, line, clock ?? clockOf(null, context), file, found);
    if (frame === null) rejected[row] = 1;
    else frames[row] = frame;
    squeeze = squeezeOf(sample) ?? squeeze;
    direction = readFigures({ sample, line, row, file, squeeze, direction, columns, rows: lines.rows }, found);
  }
  return { clock: clock ?? clockOf(null, context), frames, rejected, columns, direction, said, others: others.found() };
}

function frameOf(sample: JsonObject, line: SampleLine, clock: SampleClock, file: string, found: FindingCollector): number | null {
  const time = sampleTime(sample, clock);
  if (time.ok && time.subFrame === 0) return time.frame;
  found.addIn(file, time.ok ? LOG.betweenFrames : time.dropped ? LOG.droppedLabel : LOG.badSample, () => ({
    place: placeInSample(file, line, ["timing", "timecode"]),
    field: "timecode",
    message: time.ok ? `the sample lies ${time.subFrame} sub-frames after its frame` : time.problem,
    hint: time.ok
      ? "Nothing to do: the frame's own sample is used."
      : sample.timing === undefined && sample.lens === undefined
        ? "A .jsonl file is read as samples of OpenTrackIO, and this has neither timing nor lens. Export another layout as a table."
        : "Look at the recorder's timecode settings. The row is rejected.",
  }));
  return null;
}

interface FigureInput {
  readonly sample: JsonObject;
  readonly line: SampleLine;
  readonly row: number;
  readonly rows: number;
  readonly file: string;
  readonly squeeze: number | null;
  /** Direction of the samples before; coefficients of the other direction are left out. */
  readonly direction: Direction | null;
  readonly columns: Partial<Record<LogColumn, Float64Array>>;
}

function readFigures(input: FigureInput, found: FindingCollector): Direction | null {
  const { line, row, file, columns } = input;
  const figures = sampleFigures(input.sample, input.squeeze);
  for (const { path, problem } of figures.bad) {
    const name = path.join(".");
    found.addIn(file, LOG.badField, () => ({
      place: placeInSample(file, line, path),
      field: pathOf(path) ?? name,
      message: `${name} ${problem}`,
      hint: "Leave the field out when nothing was measured.",
    }));
  }
  if (figures.otherModel !== null) {
    found.addIn(file, LOG.otherModel, () => ({
      place: placeInSample(file, line, ["lens", "distortion"]),
      field: "model",
      message: `the distortion model "${figures.otherModel}" is not known`,
      hint: 'The standard has "Brown-Conrady D-U" and "Brown-Conrady U-D".',
    }));
  }
  const direction = input.direction ?? figures.direction;
  const turned = figures.direction !== null && figures.direction !== direction;
  for (const [column, value] of figures.values) {
    if (turned && /^[kp]\d$/.test(column)) continue;
    columns[column] ??= new Float64Array(input.rows).fill(Number.NaN);
    (columns[column] as Float64Array)[row] = value;
  }
  return direction;
}

/** The static block's squeeze; a row without a static block keeps the last one said. */
function squeezeOf(sample: JsonObject): number | null {
  const camera = isObject(sample.static) && isObject(sample.static.camera) ? sample.static.camera : null;
  const fraction = camera === null ? null : fractionOf(camera.anamorphicSqueeze);
  return fraction === null ? null : fraction.num / fraction.denom;
}

function keysOf(identity: SampleIdentity, clock: SampleClock, direction: Direction | null): LensLog["keys"] {
  return {
    camera: identity.camera,
    clip: null,
    slate: identity.slate,
    take: null,
    lens: null,
    lensSerial: identity.lensSerial,
    date: null,
    rate: clock.ownRate,
    dropFrame: clock.ownDropFrame,
    distanceFrom: "image-plane",
    // OpenLensIO measures r in mm on the sensor, and its falloff is 1 - (a1 r^2 + ...).
    convention: {
      model: direction === null ? null : "brown-conrady",
      direction,
      radius: direction === null ? null : "mm",
      areaMm: null,
      squeezeState: null,
      shadingRadius: "mm",
      shadingValues: "loss",
    },
    clockOffsetFrames: 0,
    startTimecode: null,
  };
}
