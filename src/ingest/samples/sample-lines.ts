import type { Place } from "../../core/finding.ts";
import type { FindingCollector } from "../../core/findings/collect.ts";
import { LOG } from "../../core/findings/log.ts";
import { codePointCount } from "../../core/text-position.ts";
import type { PagedText } from "../../csv/paged-text.ts";
import { jsonErrorAt, memberAt } from "./json-position.ts";
import { isObject, type JsonObject } from "./sample-fields.ts";

/** A line of a JSON Lines log that is not blank. */
export interface SampleLine {
  readonly number: number;
  readonly text: string;
}

/** Where the figures of a column stand in a sample. */
const PATHS: Readonly<Record<string, readonly string[]>> = {
  timecode: ["timing", "timecode"],
  focus: ["lens", "focusDistance"],
  focus_m: ["lens", "focusDistance"],
  t: ["lens", "tStop"],
  f: ["lens", "fStop"],
  focal_mm: ["lens", "pinholeFocalLength"],
  entrance_pupil_mm: ["lens", "entrancePupilOffset"],
  squeeze: ["static", "camera", "anamorphicSqueeze"],
  a1: ["lens", "exposureFalloff", "a1"],
  a2: ["lens", "exposureFalloff", "a2"],
  a3: ["lens", "exposureFalloff", "a3"],
  cx_mm: ["lens", "distortionOffset", "x"],
  cy_mm: ["lens", "distortionOffset", "y"],
  ...Object.fromEntries(["k1", "k2", "k3", "k4", "k5", "k6"].map((name) => [name, ["lens", "distortion", "radial"]])),
  ...Object.fromEntries(["p1", "p2"].map((name) => [name, ["lens", "distortion", "tangential"]])),
};

/** The lines of a log that are not blank, of which none is kept. */
export interface SampleLines {
  readonly rows: number;
  /** Physical line of a row. */
  number(row: number): number;
  at(row: number): SampleLine;
}

export function sampleLines(text: PagedText): SampleLines {
  const numbers = new Uint32Array(text.survey.lines);
  let rows = 0;
  for (let number = 1; number <= text.survey.lines; number++) {
    if (text.line(number).trim() !== "") numbers[rows++] = number;
  }
  const number = (row: number): number => numbers[row] as number;
  return { rows, number, at: (row) => ({ number: number(row), text: text.line(number(row)) }) };
}

/** The sample of a line; `null`, with an error, when the line is no JSON or no object. */
export function sampleOf(line: SampleLine, file: string, found: FindingCollector): JsonObject | null {
  let parsed: unknown;
  try {
    parsed = JSON.parse(line.text);
  } catch {
    tellOfJson(file, line, found);
    return null;
  }
  if (isObject(parsed)) return parsed;
  found.addIn(file, LOG.badSample, () => ({
    place: { file, line: line.number, column: 1 },
    message: "the line is JSON and no object",
    hint: "Each line is one OpenTrackIO sample.",
  }));
  return null;
}

function tellOfJson(file: string, { number, text }: SampleLine, found: FindingCollector): void {
  found.addIn(file, LOG.badJson, () => {
    const offset = jsonErrorAt(text) ?? 0;
    const cutOff = offset >= text.trimEnd().length;
    return {
      place: { file, line: number, column: codePointCount(text, 0, offset) + 1 },
      message: cutOff
        ? "the line ends in the middle of a sample"
        : `the line is not JSON from ${JSON.stringify(text.slice(offset, offset + 12))} on`,
      hint: cutOff
        ? "The recording or the copy was cut off; copy the file again."
        : "Mend the line, or delete it. Its row is rejected.",
    };
  });
}

/** Canonical column of a path in a sample, or `null`. */
export function pathOf(path: readonly string[]): string | null {
  const name = path.join(".");
  const column = Object.keys(PATHS).find((key) => key !== "focus" && PATHS[key]?.join(".") === name);
  return column ?? null;
}

/** Text and place of a column's figure in a sample. */
export function sampleCell(file: string, line: SampleLine, column: string): { readonly place: Place; readonly text: string } {
  const path = PATHS[column] ?? [];
  const member = path.length === 0 ? null : memberAt(line.text, path);
  return { place: placeInSample(file, line, path), text: member === null ? "" : line.text.slice(member.start, member.end) };
}

/** Text of a value of a sample: a string without its quotes, anything else word for word; empty where it is not. */
export function memberText(line: SampleLine, path: readonly string[]): string {
  const member = memberAt(line.text, path);
  if (member === null) return "";
  const written = line.text.slice(member.start, member.end);
  return written.startsWith('"') ? String(JSON.parse(written)) : written;
}

/** Place of a value in a sample; of the nearest parent that is there, else of the line. */
export function placeInSample(file: string, line: SampleLine, path: readonly string[]): Place {
  for (let depth = path.length; depth > 0; depth--) {
    const member = memberAt(line.text, path.slice(0, depth));
    if (member === null) continue;
    const column = codePointCount(line.text, 0, member.start) + 1;
    return { file, line: line.number, column, length: codePointCount(line.text, member.start, member.end) };
  }
  return { file, line: line.number, column: 1 };
}
