/** How much larger a canvas must be so that nothing of the picture is lost when the lens look is taken off or put back. */
import type { SensorMode } from "../ingest/records.ts";
import type { Take } from "../model/types.ts";
import type { CanonicalDistortion } from "../optics/distortion/canonical.ts";
import { equationRoom } from "../optics/distortion/equation.ts";
import { mapPoint, type Side } from "../optics/distortion/map.ts";
import { distinctStates } from "./distinct-states.ts";
import type { FrameFigures } from "./types.ts";

/** A canvas in pixels at the recorded resolution. */
export interface OverscanCanvas {
  /** Whole pixels, about the middle of the recorded frame, so that the frame's middle stays the canvas's. */
  readonly widthPx: number;
  readonly heightPx: number;
  /** How much the larger side grows by: 100 (factor - 1). Negative when the picture shrinks on both sides. */
  readonly percent: number;
  /** What the picture fills, in pixels from the recorded frame's top left corner; it need not lie about the middle. */
  readonly box: { readonly leftPx: number; readonly topPx: number; readonly rightPx: number; readonly bottomPx: number };
}

export interface TakeOverscan {
  /** The ideal picture that holds all of the recorded frame. */
  readonly undistort: OverscanCanvas | null;
  /** The recorded picture that holds all of an ideal frame of the recorded size. */
  readonly redistort: OverscanCanvas | null;
}

export interface OverscanResult {
  readonly overscan: TakeOverscan | null;
  /** Why there is no overscan, none in one direction, or none for some frames; `null` when it is complete. */
  readonly overscanReason: string | null;
}

/** Steps along an edge. */
const FINE = 64;
const COARSE = 8;
const NOT_DEFINED = "the distortion is not defined along the whole edge of the frame";

/** mm about the middle of the area: left, top, right, bottom. */
type Box = readonly [number, number, number, number];

/**
 * Largest canvas over the take's distinct lens states: one for each step of 0.02 dioptres, 0.5 mm and a third of a stop, and
 * those at the nearest and farthest focus and at the shortest and longest focal length. The frame's edge is sampled at 64
 * points a side, since the extreme is not always in a corner.
 *
 * @source OpenLensIO maths, eq. 21-24 (bounding box of the mapped edge)
 */
export function takeOverscan(take: Take, figures: FrameFigures | null): OverscanResult {
  const none = (overscanReason: string): OverscanResult => ({ overscan: null, overscanReason });
  if (figures === null) return none("the take has no log");
  const mode = take.sensorMode;
  if (mode === null) return none("the sensor mode is not known");
  const { resolutionX, resolutionY } = mode;
  if (resolutionX === null || resolutionY === null) return none("the kit does not say the recorded resolution");
  const distortions: CanonicalDistortion[] = [];
  const states = distinctStates(take, figures);
  let reason: string | null = null;
  for (const state of quantisedStates(figures, states.firstFrame)) {
    const look = states.look(state);
    if (look.distortion !== null) distortions.push(look.distortion);
    else if (look.state.kind === "none") reason = look.state.reason;
    else reason = "there are no distortion coefficients";
  }
  if (distortions.length === 0) return none(reason ?? "no frame is logged");
  const canvas = (side: Side): OverscanCanvas | null => {
    const box = largestBox(distortions, mode, side);
    return box === null ? null : canvasOf(box, mode, resolutionX, resolutionY);
  };
  const overscan = { undistort: canvas("ideal"), redistort: canvas("recorded") };
  if (overscan.undistort === null && overscan.redistort === null) return none(NOT_DEFINED);
  if (overscan.undistort === null || overscan.redistort === null) return { overscan, overscanReason: NOT_DEFINED };
  return { overscan, overscanReason: reason === null ? null : `without some frames: ${reason}` };
}

/** One state of each step, and those at the ends of focus and focal length, where the extremes usually are. */
function quantisedStates(figures: FrameFigures, firstFrame: readonly number[]): Iterable<number> {
  const { focalMm, focusDioptres, tStop } = figures;
  const chosen = new Set<number>();
  const seen = new Set<string>();
  const ends = [focusDioptres, focalMm].flatMap((values) => [
    { values, sign: 1, state: -1, best: Number.NEGATIVE_INFINITY },
    { values, sign: -1, state: -1, best: Number.NEGATIVE_INFINITY },
  ]);
  firstFrame.forEach((frame, state) => {
    const focal = focalMm[frame] as number;
    const focus = focusDioptres[frame] as number;
    const key = `${Math.round(focal * 2)} ${Math.round(focus * 50)} ${Math.round(6 * Math.log2(tStop[frame] as number))}`;
    if (!seen.has(key)) chosen.add(state);
    seen.add(key);
    for (const end of ends) {
      const value = end.sign * (end.values[frame] as number);
      if (value > end.best) {
        end.best = value;
        end.state = state;
      }
    }
  });
  for (const end of ends) if (end.state >= 0) chosen.add(end.state);
  return chosen;
}

/** Union of the boxes: coarsely over all, then finely where a side is the coarse extreme. `null` when one is not defined. */
function largestBox(distortions: readonly CanonicalDistortion[], mode: SensorMode, side: Side): Box | null {
  const coarse: Box[] = [];
  for (const d of distortions) {
    const box = edgeBox(d, mode, side, COARSE);
    if (box === null) return null;
    coarse.push(box);
  }
  let union: Box | null = null;
  for (const at of [0, 1, 2, 3] as const) {
    const outward = (box: Box): number => (at < 2 ? -box[at] : box[at]);
    const extreme = coarse.reduce((best, box, i) => (outward(box) > outward(coarse[best] as Box) ? i : best), 0);
    const fine = edgeBox(distortions[extreme] as CanonicalDistortion, mode, side, FINE);
    if (fine === null) return null;
    union = union === null ? fine : unite(union, fine);
  }
  return union;
}

/** Box that the frame's edge fills on the other side; `null` when a point of it is not defined. */
export function edgeBox(
  d: CanonicalDistortion,
  mode: Pick<SensorMode, "activeWidthMm" | "activeHeightMm">,
  side: Side,
  steps = FINE,
): Box | null {
  const room = equationRoom();
  const halfWidth = mode.activeWidthMm / 2;
  const halfHeight = mode.activeHeightMm / 2;
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let i = 0; i <= steps; i++) {
    const share = (2 * i) / steps - 1;
    for (let edge = 0; edge < 4; edge++) {
      const x = edge === 0 ? 1 : edge === 1 ? -1 : share;
      const y = edge === 2 ? 1 : edge === 3 ? -1 : share;
      if (!mapPoint(d, side, x * halfWidth, y * halfHeight, room)) return null;
      left = Math.min(left, room[0] as number);
      right = Math.max(right, room[0] as number);
      top = Math.min(top, room[1] as number);
      bottom = Math.max(bottom, room[1] as number);
    }
  }
  return [left, top, right, bottom];
}

function unite(a: Box, b: Box): Box {
  return [Math.min(a[0], b[0]), Math.min(a[1], b[1]), Math.max(a[2], b[2]), Math.max(a[3], b[3])];
}

function canvasOf([left, top, right, bottom]: Box, mode: SensorMode, resolutionX: number, resolutionY: number): OverscanCanvas {
  const perMmX = resolutionX / mode.activeWidthMm;
  const perMmY = resolutionY / mode.activeHeightMm;
  const halfWidthPx = Math.max(-left, right) * perMmX;
  const halfHeightPx = Math.max(-top, bottom) * perMmY;
  return {
    widthPx: resolutionX + 2 * pixelsUp(halfWidthPx - resolutionX / 2),
    heightPx: resolutionY + 2 * pixelsUp(halfHeightPx - resolutionY / 2),
    percent: 100 * (Math.max((2 * halfWidthPx) / resolutionX, (2 * halfHeightPx) / resolutionY) - 1),
    box: {
      leftPx: left * perMmX + resolutionX / 2,
      topPx: top * perMmY + resolutionY / 2,
      rightPx: right * perMmX + resolutionX / 2,
      bottomPx: bottom * perMmY + resolutionY / 2,
    },
  };
}

/** Whole pixels that hold a length; what is a rounding error beyond one is that one. */
function pixelsUp(pixels: number): number {
  return Math.ceil(pixels - 1e-6);
}
