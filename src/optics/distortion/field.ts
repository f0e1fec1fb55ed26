/** Distortion over the whole field, beside the three places of `percent.ts`. */
import type { SensorArea } from "../radius.ts";
import type { CanonicalDistortion } from "./canonical.ts";
import { recordedFromIdeal } from "./map.ts";
import { distortionPercent } from "./percent.ts";

export interface FieldExtreme {
  /** 100 (r recorded - r ideal) / r ideal, the value of largest magnitude. */
  readonly percent: number;
  /** Recorded radius where it is, as a part of the way from the distortion centre to the corner. */
  readonly share: number;
}

const STEPS = 200;

/**
 * Largest distortion on the way from the centre to each corner. In a lens whose distortion turns (wave, moustache) it is not at
 * the corner, and picture-height distortion may read 0. `null` when a corner is not defined.
 */
export function fieldExtreme(d: CanonicalDistortion, area: SensorArea): FieldExtreme | null {
  let largest: FieldExtreme = { percent: 0, share: 0 };
  for (const [sx, sy] of [
    [1, 1],
    [-1, 1],
    [1, -1],
    [-1, -1],
  ] as const) {
    for (let i = 1; i <= STEPS; i++) {
      const share = i / STEPS;
      const x = d.centreXMm + share * ((sx * area.widthMm) / 2 - d.centreXMm);
      const y = d.centreYMm + share * ((sy * area.heightMm) / 2 - d.centreYMm);
      const percent = distortionPercent(d, x, y);
      if (percent === null) return null;
      if (Math.abs(percent) > Math.abs(largest.percent)) largest = { percent, share };
    }
  }
  return largest;
}

/**
 * Picture-height (TV) distortion in percent: how far the recorded picture of the ideal frame's top edge bends between middle
 * and corners, over the picture height recorded in the middle. Negative is barrel; twice this is the SMIA figure. `null` when
 * the frame's edge is not defined.
 *
 * @source EBU Tech 3249 (1995) 2.11
 */
export function pictureHeightPercent(d: CanonicalDistortion, area: SensorArea): number | null {
  const halfWidth = area.widthMm / 2;
  const halfHeight = area.heightMm / 2;
  const height = (x: number) => {
    const bottom = recordedFromIdeal(d, x, halfHeight);
    const top = recordedFromIdeal(d, x, -halfHeight);
    return bottom === null || top === null ? null : bottom.yMm - top.yMm;
  };
  const left = height(-halfWidth);
  const middle = height(0);
  const right = height(halfWidth);
  if (left === null || middle === null || right === null) return null;
  return (100 * ((left + right) / 2 - middle)) / (2 * middle);
}
