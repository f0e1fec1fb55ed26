/** Rings of equal shading: where the picture is so many stops darker (or brighter) than in the middle. */
import { type CanonicalShading, shadingFactor, stopsFromFactor } from "../../optics/shading.ts";

export interface ShadingRing {
  /** Negative is darker. */
  readonly stops: number;
  /** In the plane of the coefficients, from the shading's centre. */
  readonly radiusMm: number;
}

/** Rings stand at steps of the first of these that gives no more than MOST_RINGS of them. */
const STEPS = [0.05, 0.1, 0.2, 0.25, 0.5, 1, 2] as const;
const MOST_RINGS = 6;
const SAMPLES = 256;

/** All rings inside `radiusMm`, from the centre outwards; a level that comes twice has two rings. */
export function shadingRings(shading: CanonicalShading, radiusMm: number): readonly ShadingRing[] {
  const stopsAt = (share: number): number => {
    const factor = shadingFactor(shading, shading.centreXMm + (share * radiusMm) / shading.squeeze, shading.centreYMm);
    return factor > 0 ? stopsFromFactor(factor) : Number.NEGATIVE_INFINITY;
  };
  for (const step of STEPS) {
    const rings = ringsAt(stopsAt, step, radiusMm);
    if (rings.length <= MOST_RINGS) return rings;
  }
  return [];
}

function ringsAt(stopsAt: (share: number) => number, step: number, radiusMm: number): readonly ShadingRing[] {
  const rings: ShadingRing[] = [];
  for (let i = 0; i < SAMPLES && rings.length <= MOST_RINGS; i++) {
    const from = stopsAt(i / SAMPLES);
    const to = stopsAt((i + 1) / SAMPLES);
    if (!Number.isFinite(to)) break;
    const levels: number[] = [];
    for (let n = Math.ceil(Math.min(from, to) / step); n <= Math.floor(Math.max(from, to) / step); n++) {
      // a level at a sample belongs to the span that ends there
      if (n !== 0 && n * step !== from) levels.push(n * step);
    }
    if (to < from) levels.reverse();
    for (const stops of levels) {
      const share = (i + (stops - from) / (to - from)) / SAMPLES;
      rings.push({ stops, radiusMm: share * radiusMm });
    }
  }
  return rings;
}
