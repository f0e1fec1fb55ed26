import type { Formula } from "./formula.ts";

/** Formulas of the lens look: distortion, shading, calibration, focus pulls. */
export const LENS_FORMULAS: readonly Formula[] = Object.freeze([]);
