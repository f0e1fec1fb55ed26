/** Shading values that no lens has: a picture brighter than its centre, or one that gets brighter again towards the edge. */
import type { CoefficientConvention, Coefficients } from "./convention.ts";
import type { SensorArea } from "./radius.ts";
import { isRefused } from "./refused.ts";
import { canonicalShading, shadingFactor } from "./shading.ts";

const STEPS = 24;
/** Measured values scatter; a rise below this share of the centre's brightness is noise. */
const NOISE = 0.005;

/**
 * What is wrong with shading values over the half diagonal of an area, as a clause such as "the corner is 1.4 times as bright as
 * the centre"; `null` when they are plausible or cannot be evaluated.
 */
export function shadingProblem(
  convention: CoefficientConvention,
  coefficients: Coefficients,
  focalMm: number,
  area: SensorArea,
  squeeze: number | null = null,
): string | null {
  const shading = canonicalShading(convention, coefficients, focalMm, squeeze);
  if (isRefused(shading)) return null;
  let darkest = 1;
  for (let i = 1; i <= STEPS; i++) {
    const part = i / STEPS / 2;
    const factor = shadingFactor({ ...shading, centreXMm: 0, centreYMm: 0 }, area.widthMm * part, area.heightMm * part);
    if (factor > 1 + NOISE) return `the picture is ${factor.toFixed(2)} times as bright ${where(i)} as in the centre`;
    if (factor <= 0) return `the picture is black ${where(i)}`;
    if (factor > darkest + NOISE)
      return `the picture gets brighter again towards the edge, from ${darkest.toFixed(2)} to ${factor.toFixed(2)}`;
    darkest = Math.min(darkest, factor);
  }
  return null;
}

function where(step: number): string {
  return step === STEPS ? "at the corner" : `at ${Math.round((100 * step) / STEPS)} % of the way to the corner`;
}
