/** The lens look that a still stands for: that of the take's middle logged frame. */
import type { CanonicalDistortion } from "../optics/distortion/canonical.ts";
import type { CanonicalShading } from "../optics/shading.ts";
import { type FrameLook, frameLook } from "../summary/frame-look.ts";
import { edgeBox } from "../summary/overscan.ts";
import type { TakeSummary } from "../summary/types.ts";

/** What a lens does on an area of the sensor. */
export interface LookOnArea {
  /** The recorded sensor area in mm. */
  readonly widthMm: number;
  readonly heightMm: number;
  /** Horizontal factor from the sensor to the picture as it is seen. */
  readonly squeeze: number;
  readonly distortion: CanonicalDistortion | null;
  readonly shading: CanonicalShading | null;
  /** What the frame fills when distortion is off, mm from its middle; `null` where that is not defined. */
  readonly idealBox: BoxMm | null;
}

/** mm from the middle of the area, x right, y down. */
export interface BoxMm {
  readonly leftMm: number;
  readonly topMm: number;
  readonly rightMm: number;
  readonly bottomMm: number;
}

/** `null` without a log, without a sensor mode, or when neither distortion nor shading is known at the middle logged frame. */
export function middleLook(summary: Pick<TakeSummary, "take" | "perFrame" | "middleFrame">): LookOnArea | null {
  const { take, perFrame, middleFrame } = summary;
  const mode = take.sensorMode;
  if (perFrame === null || middleFrame === null || mode === null) return null;
  const look: FrameLook = frameLook(take, perFrame, middleFrame);
  return lookOnArea({ widthMm: mode.activeWidthMm, heightMm: mode.activeHeightMm }, take.squeeze, look.distortion, look.shading);
}

/** The same from its parts. `null` when there is neither distortion nor shading. */
export function lookOnArea(
  area: { readonly widthMm: number; readonly heightMm: number },
  squeeze: number,
  distortion: CanonicalDistortion | null,
  shading: CanonicalShading | null,
): LookOnArea | null {
  if (distortion === null && shading === null) return null;
  const sides = { activeWidthMm: area.widthMm, activeHeightMm: area.heightMm };
  const box = distortion === null ? null : edgeBox(distortion, sides, "ideal");
  return {
    ...area,
    squeeze,
    distortion,
    shading,
    idealBox: box === null ? null : { leftMm: box[0], topMm: box[1], rightMm: box[2], bottomMm: box[3] },
  };
}

/** Within 2 %: a still of another shape is a crop or a frame grab with borders, and nothing may be drawn over it. */
const SAME_SHAPE = 0.02;

/** Whether a picture has the shape of the sensor area, as recorded or desqueezed. */
export function fitsArea(
  size: { readonly widthPx: number; readonly heightPx: number },
  look: Pick<LookOnArea, "widthMm" | "heightMm" | "squeeze">,
): boolean {
  const ratio = size.widthPx / size.heightPx;
  const area = look.widthMm / look.heightMm;
  return [area, area * look.squeeze].some((shape) => Math.abs(ratio / shape - 1) <= SAME_SHAPE);
}
