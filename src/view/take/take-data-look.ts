/** The lens look of every frame for a take's data script: the equation that holds and its terms. */
import { type PackedColumn, packColumn } from "../../core/packed-column.ts";
import type { LookRecord } from "../../format/take-record.ts";
import { type CanonicalDistortion, RADIUS_POWERS } from "../../optics/distortion/canonical.ts";
import type { CanonicalShading } from "../../optics/shading.ts";
import { lensLookFrames } from "../../summary/lens-look-frames.ts";
import type { TakeSummary } from "../../summary/types.ts";

/** Terms stand as what they do at the half diagonal: a millionth of it is a four-hundredth of a pixel of a 4K frame. */
const TERM_STEPS = 1e6;
/** Hundredth of a micrometre. */
const CENTRE_STEPS = 1e5;
/** Powers of the radius that shading terms belong to. */
const SHADING_TERMS = { b1: 2, b2: 4, b3: 6 } as const;

/** `null` without a log, without a sensor mode, or when no frame has distortion or shading. */
export function lookRecord(t: TakeSummary): LookRecord | null {
  const frames = lensLookFrames(t);
  const mode = t.take.sensorMode;
  if (frames === null || mode === null) return null;
  const looks = Array.from({ length: frames.frames }, (_, i) => frames.look(i));
  const distortions = looks.map((look) => look?.distortion ?? null);
  const shadings = looks.map((look) => look?.shading ?? null);
  if (distortions.every((d) => d === null) && shadings.every((s) => s === null)) return null;
  const scaleMm = Math.hypot(mode.activeWidthMm, mode.activeHeightMm) / 2;
  const { equations, equation } = equationsOf(distortions);
  const { resolutionX, resolutionY } = mode;
  return {
    widthMm: mode.activeWidthMm,
    heightMm: mode.activeHeightMm,
    pixels: resolutionX === null || resolutionY === null ? null : [resolutionX, resolutionY],
    squeeze: t.take.squeeze,
    scaleMm,
    equations,
    equation: packColumn(equation, 1),
    terms: packedTerms(distortions, distortionPowers(distortions), scaleMm),
    shading: shadingOf(shadings, scaleMm),
  };
}

function equationsOf(distortions: readonly (CanonicalDistortion | null)[]) {
  const keys: string[] = [];
  const equations: { model: string; direction: string; squeeze: number }[] = [];
  const equation = distortions.map((d) => {
    if (d === null) return Number.NaN;
    const { model, direction, squeeze } = d;
    const key = `${model} ${direction} ${squeeze}`;
    if (!keys.includes(key)) {
      keys.push(key);
      equations.push({ model, direction, squeeze });
    }
    return keys.indexOf(key);
  });
  return { equations, equation };
}

/** The terms of all equations that occur, and the centre. */
function distortionPowers(distortions: readonly (CanonicalDistortion | null)[]): Readonly<Record<string, number>> {
  const models = new Set(distortions.flatMap((d) => (d === null ? [] : [d.model])));
  return Object.assign({ centreXMm: 0, centreYMm: 0 }, ...[...models].map((model) => RADIUS_POWERS[model]));
}

function shadingOf(shadings: readonly (CanonicalShading | null)[], scaleMm: number): LookRecord["shading"] {
  const first = shadings.find((s) => s !== null);
  if (first === undefined || first === null) return null;
  const powers = { ...SHADING_TERMS, centreXMm: 0, centreYMm: 0 };
  return { squeeze: first.squeeze, terms: packedTerms(shadings, powers, scaleMm) };
}

/** Terms that are 0 on every frame are left out, but one column always tells which frames have a look. */
function packedTerms(
  looks: readonly (object | null)[],
  powers: Readonly<Record<string, number>>,
  scaleMm: number,
): Readonly<Record<string, PackedColumn>> {
  const columns: Record<string, PackedColumn> = {};
  for (const [name, power] of Object.entries(powers)) {
    const values = looks.map((look) => {
      if (look === null) return Number.NaN;
      const value: unknown = Reflect.get(look, name);
      return typeof value === "number" ? value * scaleMm ** power : 0;
    });
    const always = name === "b1";
    if (always || values.some((value) => !Number.isNaN(value) && value !== 0))
      columns[name] = packColumn(values, power === 0 ? CENTRE_STEPS : TERM_STEPS);
  }
  return columns;
}
