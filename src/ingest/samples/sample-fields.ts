/** One OpenTrackIO sample read into flat figures in this project's units and names. */

import { LARGEST_NUMBER, SMALLEST_POSITIVE } from "../../csv/column-spec.ts";
import type { Direction } from "../../optics/convention.ts";
import type { LogColumn } from "../log/log-record.ts";

export type JsonObject = { readonly [key: string]: unknown };

/** A field of a sample that is not of its type. */
export interface BadField {
  readonly path: readonly string[];
  readonly problem: string;
}

export interface SampleFigures {
  readonly values: ReadonlyMap<LogColumn, number>;
  readonly direction: Direction | null;
  /** Name of a distortion model that is not the standard's. */
  readonly otherModel: string | null;
  readonly bad: readonly BadField[];
}

/**
 * `radial` alternates numerator and denominator terms of r^2, r^4, r^6.
 * @source OpenLensIO 1.0.0 eq. 16: R = (1 + l1 r^2 + l3 r^4 + l5 r^6) / (1 + l2 r^2 + l4 r^4 + l6 r^6)
 */
const RADIAL: readonly LogColumn[] = ["k1", "k4", "k2", "k5", "k3", "k6"];
const TANGENTIAL: readonly LogColumn[] = ["p1", "p2"];
const MODELS: Readonly<Record<string, Direction>> = { "Brown-Conrady D-U": "undistort", "Brown-Conrady U-D": "distort" };

/**
 * The lens part of a sample: focus in dioptres, stops, focal length and pupil in mm, distortion and shading in mm on the sensor.
 * `anamorphicSqueeze` is the static block's, as a number.
 */
export function sampleFigures(sample: JsonObject, squeeze: number | null): SampleFigures {
  const values = new Map<LogColumn, number>();
  const bad: BadField[] = [];
  const lens = objectOf(sample, ["lens"], bad) ?? {};
  const put = (
    column: LogColumn,
    path: readonly string[],
    source: JsonObject,
    convert = (n: number): number => n,
    positive = false,
  ): void => {
    const value = source[path.at(-1) as string];
    if (value === undefined || value === null) return;
    if (typeof value !== "number") bad.push({ path, problem: `is ${shown(value)}, not a number` });
    else if (positive && !(value > 0)) bad.push({ path, problem: `is ${value}, and must be greater than 0` });
    else if (Math.abs(value) > LARGEST_NUMBER || (positive && value < SMALLEST_POSITIVE))
      bad.push({ path, problem: `is ${value}, which is beyond anything that is measured` });
    else values.set(column, convert(value));
  };
  // 0 and -1 are marks of the recorder, which are told of for the log as a whole.
  const mark = lens.focusDistance === 0 || lens.focusDistance === -1;
  put("focus", ["lens", "focusDistance"], lens, (m) => 1 / m, !mark);
  put("t", ["lens", "tStop"], lens, undefined, true);
  put("f", ["lens", "fStop"], lens, undefined, true);
  put("focal_mm", ["lens", "pinholeFocalLength"], lens, undefined, true);
  put("entrance_pupil_mm", ["lens", "entrancePupilOffset"], lens, (m) => m * 1000);
  if (squeeze !== null) values.set("squeeze", squeeze);
  const falloff = objectOf(lens, ["lens", "exposureFalloff"], bad);
  for (const name of ["a1", "a2", "a3"] as const) if (falloff !== null) put(name, ["lens", "exposureFalloff", name], falloff);
  const encoders = objectOf(lens, ["lens", "encoders"], bad) ?? objectOf(lens, ["lens", "rawEncoders"], bad);
  const encoderPath = lens.encoders === undefined ? "rawEncoders" : "encoders";
  for (const name of ["focus", "iris", "zoom"] as const) {
    if (encoders !== null) put(`encoder_${name}`, ["lens", encoderPath, name], encoders);
  }
  putCentre(lens, values, bad);
  const distortion = putDistortion(lens, values, bad);
  return { values, bad, ...distortion };
}

/** The centre of distortion on the sensor: the distortion offset from the projection's, which moves both (eq. 3 to 5 and 9 to 13). */
function putCentre(lens: JsonObject, values: Map<LogColumn, number>, bad: BadField[]): void {
  const offsets = ["distortionOffset", "projectionOffset"]
    .map((name) => objectOf(lens, ["lens", name], bad))
    .filter((o) => o !== null);
  if (offsets.length === 0) return;
  for (const axis of ["x", "y"] as const) {
    const parts = offsets.map((offset) => offset[axis]);
    if (parts.every(isMeasured))
      values.set(
        `c${axis}_mm`,
        (parts as number[]).reduce((a, b) => a + b, 0),
      );
    else
      bad.push({
        path: ["lens", lens.distortionOffset === undefined ? "projectionOffset" : "distortionOffset"],
        problem: `has no number ${axis}`,
      });
  }
}

function putDistortion(
  lens: JsonObject,
  values: Map<LogColumn, number>,
  bad: BadField[],
): { readonly direction: Direction | null; readonly otherModel: string | null } {
  const none = { direction: null, otherModel: null };
  const list = lens.distortion;
  if (list === undefined || list === null) return none;
  const path = ["lens", "distortion"];
  const entries = Array.isArray(list) ? list.filter(isObject) : [];
  const [first] = entries;
  if (first === undefined) {
    bad.push({ path, problem: "is not a list of distortions" });
    return none;
  }
  const known = entries.find((entry) => directionOf(entry.model) !== null);
  if (known === undefined) return { direction: null, otherModel: String(first.model) };
  putTerms(known.radial, RADIAL, [...path, "radial"], values, bad);
  putTerms(known.tangential, TANGENTIAL, [...path, "tangential"], values, bad);
  return { direction: directionOf(known.model), otherModel: null };
}

function directionOf(model: unknown): Direction | null {
  if (model === undefined) return "undistort";
  return typeof model === "string" && Object.hasOwn(MODELS, model) ? (MODELS[model] ?? null) : null;
}

function putTerms(
  terms: unknown,
  columns: readonly LogColumn[],
  path: readonly string[],
  values: Map<LogColumn, number>,
  bad: BadField[],
): void {
  if (terms === undefined || terms === null) return;
  const list = Array.isArray(terms) ? terms : [];
  if (list.length === 0 || list.length > columns.length || !list.every(isMeasured)) {
    bad.push({ path, problem: `is not a list of 1 to ${columns.length} numbers` });
    return;
  }
  columns.forEach((column, i) => {
    if (i < list.length) values.set(column, list[i] as number);
  });
}

function isMeasured(value: unknown): value is number {
  return typeof value === "number" && Math.abs(value) <= LARGEST_NUMBER;
}

/** A value for a message; what holds other values may hold any number of them. */
function shown(value: unknown): string {
  if (typeof value !== "object" || value === null) return JSON.stringify(value)?.slice(0, 40) ?? "nothing";
  return Array.isArray(value) ? "a list" : "an object";
}

export function isObject(value: unknown): value is JsonObject {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

/** The object at the last name of a path; `null` when it is absent or, with a bad field, something else. */
function objectOf(parent: JsonObject, path: readonly string[], bad: BadField[]): JsonObject | null {
  const value = parent[path.at(-1) as string];
  if (value === undefined || value === null) return null;
  if (isObject(value)) return value;
  bad.push({ path, problem: "is not an object" });
  return null;
}

/** A fraction `{num, denom}` as the standard writes rates and the squeeze. */
export function fractionOf(value: unknown): { readonly num: number; readonly denom: number } | null {
  if (!isObject(value)) return null;
  const { num, denom } = value;
  const good = Number.isSafeInteger(num) && Number.isSafeInteger(denom) && (num as number) > 0 && (denom as number) > 0;
  return good ? { num: num as number, denom: denom as number } : null;
}
