import type { Place } from "../core/finding.ts";
import type { FindingCollector } from "../core/findings/collect.ts";
import { CSV } from "../core/findings/csv.ts";
import { LOG } from "../core/findings/log.ts";
import { codePointCount } from "../core/text-position.ts";
import { decodeText, wholeFile } from "../csv/decode.ts";
import { jsonErrorAt, memberAt } from "./json-position.ts";
import type { LogContext, LogSource } from "./lens-log.ts";
import { rejectRepeats } from "./log-repeats.ts";
import type { Direction, LensLog, LogColumn } from "./records.ts";
import { fractionOf, isObject, type JsonObject, sampleFigures } from "./sample-fields.ts";
import { identityOf, type SampleIdentity } from "./sample-identity.ts";
import { clockOf, type SampleClock, sampleTime, timecodeOf } from "./sample-timing.ts";

/** Where the figures of each column stand in a sample. */
const PATHS: Readonly<Partial<Record<string, readonly string[]>>> = {
  timecode: ["timing", "timecode"],
  focus: ["lens", "focusDistance"],
  t: ["lens", "tStop"],
  f: ["lens", "fStop"],
  focal_mm: ["lens", "pinholeFocalLength"],
  entrance_pupil_mm: ["lens", "entrancePupilOffset"],
  squeeze: ["static", "camera", "anamorphicSqueeze"],
  a1: ["lens", "exposureFalloff", "a1"],
  a2: ["lens", "exposureFalloff", "a2"],
  a3: ["lens", "exposureFalloff", "a3"],
};

/** One line of the log: a sample, or nothing that can be used. */
interface Line {
  readonly number: number;
  readonly text: string;
  readonly sample: JsonObject | null;
}

/**
 * Reads OpenTrackIO 1.0.x samples, one JSON object a line: the lens part, the timing and what the static block says of camera and
 * lens (which may stand in the first line only). Lines that are no JSON or have no readable timecode are rejected rows.
 */
export function readOpenTrackIo(source: LogSource, context: LogContext, found: FindingCollector): LensLog | null {
  const { file } = source;
  const decoded = decodeText(source.bytes, file);
  found.addAll(decoded.findings);
  if (decoded.text === null) return null;
  const lines = linesOf(decoded.text, file, found);
  if (lines.length === 0) {
    found.add(CSV.empty, {
      place: wholeFile(file),
      message: "the log has no samples",
      hint: "Copy the file again from the recorder.",
    });
    return null;
  }
  const clock = clockOf(lines.find((line) => line.sample !== null && timecodeOf(line.sample) !== null)?.sample ?? null, context);
  const rejected = Uint8Array.from(lines, (line) => (line.sample === null ? 1 : 0));
  const frames = framesOf(lines, clock, file, rejected, found);
  const identity = identityOf(
    lines.map((line) => line.sample),
    (row, path) => placeIn(file, lines[row] as Line, path),
    found,
  );
  const { columns, direction } = columnsOf(lines, file, found);
  const cell = (row: number, column: string): { place: Place; text: string } =>
    cellOf(file, lines[row] as Line, PATHS[column] ?? []);
  rejectRepeats(
    {
      file,
      rows: lines.length,
      timing: { kind: "timecode", frames },
      rate: clock.rate,
      dropFrame: clock.dropFrame,
      rejected,
      columns: Object.values(columns),
      identity: identity.rowKeys.camera ?? null,
      lineOf: (row) => (lines[row] as Line).number,
      placeOf: (row) => cell(row, "timecode").place,
      textOf: (row) => `the timecode of line ${(lines[row] as Line).number}`,
    },
    found,
  );
  return {
    file,
    sha256: source.sha256,
    bytes: source.bytes.length,
    keys: keysOf(identity, clock, direction),
    keyPlace: identity.place,
    rows: lines.length,
    timing: { kind: "timecode", frames },
    rate: clock.rate,
    dropFrame: clock.dropFrame,
    rejected,
    columns,
    focusField: columns.focus === undefined ? null : "focus_m",
    rowKeys: identity.rowKeys,
    unknown: [],
    lineOf: (row) => (lines[row] as Line).number,
    cell,
  };
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

function linesOf(text: string, file: string, found: FindingCollector): readonly Line[] {
  const lines: Line[] = [];
  text.split("\n").forEach((content, i) => {
    if (content.trim() === "") return;
    const number = i + 1;
    let parsed: unknown;
    try {
      parsed = JSON.parse(content);
    } catch {
      tellOfJson(file, number, content, found);
      lines.push({ number, text: content, sample: null });
      return;
    }
    if (!isObject(parsed)) {
      found.addIn(file, LOG.badSample, () => ({
        place: { file, line: number, column: 1 },
        message: "the line is JSON and no object",
        hint: "Each line is one OpenTrackIO sample.",
      }));
    }
    lines.push({ number, text: content, sample: isObject(parsed) ? parsed : null });
  });
  return lines;
}

function tellOfJson(file: string, line: number, content: string, found: FindingCollector): void {
  found.addIn(file, LOG.badJson, () => {
    const offset = jsonErrorAt(content) ?? 0;
    const cutOff = offset >= content.trimEnd().length;
    return {
      place: { file, line, column: codePointCount(content, 0, offset) + 1 },
      message: cutOff
        ? "the line ends in the middle of a sample"
        : `the line is not JSON from ${JSON.stringify(content.slice(offset, offset + 12))} on`,
      hint: cutOff
        ? "The recording or the copy was cut off; copy the file again."
        : "Mend the line, or delete it. Its row is rejected.",
    };
  });
}

function framesOf(
  lines: readonly Line[],
  clock: SampleClock,
  file: string,
  rejected: Uint8Array,
  found: FindingCollector,
): Int32Array {
  const frames = new Int32Array(lines.length).fill(-1);
  lines.forEach((line, row) => {
    if (line.sample === null) return;
    const time = sampleTime(line.sample, clock);
    if (time.ok && time.subFrame === 0) {
      frames[row] = time.frame;
      return;
    }
    rejected[row] = 1;
    const kind = time.ok ? LOG.betweenFrames : time.dropped ? LOG.droppedLabel : LOG.badSample;
    found.addIn(file, kind, () => ({
      place: placeIn(file, line, ["timing", "timecode"]),
      field: "timecode",
      message: time.ok ? `the sample lies ${time.subFrame} sub-frames after its frame` : time.problem,
      hint: time.ok
        ? "Nothing to do: the frame's own sample is used."
        : "Look at the recorder's timecode settings. The row is rejected.",
    }));
  });
  return frames;
}

function columnsOf(
  lines: readonly Line[],
  file: string,
  found: FindingCollector,
): { readonly columns: Partial<Record<LogColumn, Float64Array>>; readonly direction: Direction | null } {
  const columns: Partial<Record<LogColumn, Float64Array>> = {};
  let direction: Direction | null = null;
  let squeeze: number | null = null;
  lines.forEach((line, row) => {
    if (line.sample === null) return;
    squeeze = squeezeOf(line.sample) ?? squeeze;
    const figures = sampleFigures(line.sample, squeeze);
    for (const { path, problem } of figures.bad) {
      found.addIn(file, LOG.badField, () => ({
        place: placeIn(file, line, path),
        field: path.join("."),
        message: `${path.join(".")} ${problem}`,
        hint: "Leave the field out when nothing was measured.",
      }));
    }
    if (figures.otherModel !== null) {
      const model = figures.otherModel;
      found.addIn(file, LOG.otherModel, () => ({
        place: placeIn(file, line, ["lens", "distortion"]),
        field: "model",
        message: `the distortion model "${model}" is not known`,
        hint: 'The standard has "Brown-Conrady D-U" and "Brown-Conrady U-D".',
      }));
    }
    direction ??= figures.direction;
    const turned = figures.direction !== null && figures.direction !== direction;
    for (const [column, value] of figures.values) {
      if (turned && /^[kp]\d$/.test(column)) continue;
      columns[column] ??= new Float64Array(lines.length).fill(Number.NaN);
      (columns[column] as Float64Array)[row] = value;
    }
  });
  return { columns, direction };
}

/** The static block's squeeze; a row without a static block keeps the last one said. */
function squeezeOf(sample: JsonObject): number | null {
  const camera = isObject(sample.static) && isObject(sample.static.camera) ? sample.static.camera : null;
  const fraction = camera === null ? null : fractionOf(camera.anamorphicSqueeze);
  return fraction === null ? null : fraction.num / fraction.denom;
}

function cellOf(file: string, line: Line, path: readonly string[]): { place: Place; text: string } {
  const member = path.length === 0 ? null : memberAt(line.text, path);
  const place = placeIn(file, line, path);
  return { place, text: member === null ? "" : line.text.slice(member.start, member.end) };
}

function placeIn(file: string, line: Line, path: readonly string[]): Place {
  for (let depth = path.length; depth > 0; depth--) {
    const member = memberAt(line.text, path.slice(0, depth));
    if (member === null) continue;
    const column = codePointCount(line.text, 0, member.start) + 1;
    return { file, line: line.number, column, length: codePointCount(line.text, member.start, member.end) };
  }
  return { file, line: line.number, column: 1 };
}
