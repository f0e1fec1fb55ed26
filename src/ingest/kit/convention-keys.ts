import type { KeyLine } from "../../csv/key-lines.ts";
import type { CoefficientConvention, RadiusUnit } from "../../optics/convention.ts";
import { oneOf } from "../written/marks.ts";
import { type Reading, read, refuse } from "../written/reading.ts";

const MODELS = ["brown-conrady", "division", "anamorphic-even"] as const;
const DIRECTIONS = ["undistort", "distort"] as const;
const RADII = ["mm", "focal", "half-width", "half-height", "half-diagonal"] as const;
const STATES = ["squeezed", "desqueezed"] as const;
const VALUES = ["loss", "gain"] as const;

/** Says that a key's value cannot be used. */
export type TellOfKey = (key: KeyLine, problem: string, hint: string) => void;

/** What the key lines of a table or a log say about its coefficients; a refused key counts as not said. */
export function readConvention(keys: ReadonlyMap<string, KeyLine>, tell: TellOfKey): CoefficientConvention {
  const take = <T>(name: string, reader: (text: string) => Reading<T>): T | null => takeKey(keys, name, reader, tell);
  return {
    model: take("model", (text) => oneOf(text, MODELS)),
    direction: take("direction", (text) => oneOf(text, DIRECTIONS)),
    radius: take("radius", readRadius),
    areaMm: take("area_mm", readArea),
    squeezeState: take("squeeze_state", (text) => oneOf(text, STATES)),
    shadingRadius: take("shading_radius", readRadius),
    shadingValues: take("shading_values", (text) => oneOf(text, VALUES)) ?? "loss",
  };
}

/** The value of a key line, or `null` when it is absent, empty or refused (then `tell` was called). */
export function takeKey<T>(
  keys: ReadonlyMap<string, KeyLine>,
  name: string,
  reader: (text: string) => Reading<T>,
  tell: TellOfKey,
): T | null {
  const key = keys.get(name);
  if (key === undefined || key.value === "") return null;
  const reading = reader(key.value);
  if (reading.ok) return reading.value;
  tell(key, reading.problem, reading.hint);
  return null;
}

const SMALLEST_SIDE_MM = 0.1;
const LARGEST_SIDE_MM = 10_000;

/** An area such as `24.89x18.66` in mm. */
function readArea(text: string): Reading<{ readonly width: number; readonly height: number }> {
  const match = /^(\d+(?:\.\d+)?)\s*(?:mm)?\s*[xX\u00d7*]\s*(\d+(?:\.\d+)?)\s*(?:mm)?$/.exec(text.trim());
  const width = Number(match?.[1]);
  const height = Number(match?.[2]);
  if (Math.min(width, height) >= SMALLEST_SIDE_MM && Math.max(width, height) <= LARGEST_SIDE_MM) return read({ width, height });
  return refuse(`not an area: "${text.trim()}"`, "Write width x height in mm, such as 24.89x18.66.");
}

function readRadius(text: string): Reading<RadiusUnit> {
  return oneOf(text, RADII);
}

/** True when a radius refers to the area. */
export function needsArea(convention: CoefficientConvention): boolean {
  return [convention.radius, convention.shadingRadius].some((radius) => radius?.startsWith("half-") === true);
}
