/** Which maps a take needs, for which frames, how large they are: all that is known before one is made. */

import { idealFromRecorded } from "../../optics/distortion/map.ts";
import { shadingFactor } from "../../optics/shading.ts";
import { distinctStates } from "../../summary/distinct-states.ts";
import type { FrameLook } from "../../summary/frame-look.ts";
import type { TakeSummary } from "../../summary/types.ts";
import type { ExrBox } from "../exr-writer.ts";
import { dataWindow, frameWindow, type MapSize, mapSize, overscanFactor } from "./map-size.ts";
import { type MergedStates, mergeStates } from "./map-states.ts";
import type { VfxOptions } from "./options.ts";

export type MapKind = "undistort" | "redistort" | "shading";

export interface MapFile {
  readonly name: string;
  readonly kind: MapKind;
  /** A frame whose lens state the map is of. */
  readonly frame: number;
  readonly look: FrameLook;
  readonly window: ExrBox;
  /** Data window over display window; 1 without overscan. */
  readonly overscan: number;
}

export interface MapRange {
  readonly frameFrom: number;
  /** Included. */
  readonly frameTo: number;
  readonly map: string;
  readonly overscan: number;
}

export interface MapPlan {
  readonly size: MapSize;
  readonly files: readonly MapFile[];
  /** By kind, then in order of frames. */
  readonly ranges: readonly MapRange[];
  /** Samples of all maps together. */
  readonly samples: number;
  /** A guess, for people. */
  readonly bytesAbout: number;
}

export function samplesOf({ window }: MapFile): number {
  return (window.right - window.left + 1) * (window.bottom - window.top + 1);
}

/** Corner and side may move this far, in pixels at the recorded resolution, before a new map is made. */
const MOVE_PX = 0.1;
/** Shading may change this much, in stops. */
const CHANGE_STOPS = 0.01;
/** As seen: wide maps deflate better than narrow ones, whose values differ more from pixel to pixel; lenses differ too. */
const BYTES_PER_SAMPLE = { wide: 2, narrow: 4, shading: 0.8 } as const;

/** The maps of a take, or why there are none. */
export function planMaps(summary: TakeSummary, mapWidth: VfxOptions["mapWidth"]): MapPlan | { readonly none: string } {
  const { take, perFrame, overscan } = summary;
  const mode = take.sensorMode;
  if (perFrame === null) return { none: "the take has no log" };
  if (mode === null) return { none: "the sensor mode is not known" };
  if (mode.resolutionX === null || mode.resolutionY === null) return { none: "the kit does not say the recorded resolution" };
  const recorded = { width: mode.resolutionX, height: mode.resolutionY };
  const states = distinctStates(take, perFrame);
  const looks = states.firstFrame.map((_, state) => states.look(state));
  const area = { widthMm: mode.activeWidthMm, heightMm: mode.activeHeightMm };
  const distortion = mergeStates(
    looks.map((look) => edgePixels(look, area, recorded)),
    MOVE_PX,
    2,
  );
  const shading = mergeStates(
    looks.map((look) => edgeStops(look, area)),
    CHANGE_STOPS,
    1,
  );
  const count = 2 * distortion.reference.length + shading.reference.length;
  if (count === 0) return { none: reasonOf(looks) };
  const size = mapSize(recorded, mapWidth);
  const files: MapFile[] = [];
  const ranges: MapRange[] = [];
  const add = (kind: MapKind, merged: MergedStates, window: ExrBox): void => {
    const factor = overscanFactor(size, window);
    const names = merged.reference.map((_, i) => `${kind}-${String(i + 1).padStart(4, "0")}.exr`);
    merged.reference.forEach((state, i) => {
      const frame = states.firstFrame[state] as number;
      files.push({ name: names[i] as string, kind, frame, look: looks[state] as FrameLook, window, overscan: factor });
    });
    for (const { first, last, group } of runs(states.stateOf, merged.groupOf)) {
      ranges.push({ frameFrom: first, frameTo: last, map: names[group] as string, overscan: factor });
    }
  };
  add("undistort", distortion, dataWindow(size, overscan?.undistort ?? null));
  add("redistort", distortion, dataWindow(size, overscan?.redistort ?? null));
  add("shading", shading, frameWindow(size));
  const spacing = size.width * 8 > size.recordedWidth ? "wide" : "narrow";
  return {
    size,
    files,
    ranges,
    samples: files.reduce((sum, file) => sum + samplesOf(file), 0),
    bytesAbout: files.reduce(
      (sum, file) => sum + samplesOf(file) * BYTES_PER_SAMPLE[file.kind === "shading" ? "shading" : spacing],
      0,
    ),
  };
}

type Area = { readonly widthMm: number; readonly heightMm: number };

/** Corners and middles of the sides, from the middle, in halves of the frame. */
const EDGE = [
  [-1, -1],
  [0, -1],
  [1, -1],
  [1, 0],
  [1, 1],
  [0, 1],
  [-1, 1],
  [-1, 0],
] as const;

/** Where they lie without distortion, in pixels at the recorded resolution. */
function edgePixels({ distortion }: FrameLook, area: Area, recorded: { width: number; height: number }): Float64Array | null {
  if (distortion === null) return null;
  const pixels = new Float64Array(2 * EDGE.length);
  for (const [i, [x, y]] of EDGE.entries()) {
    const ideal = idealFromRecorded(distortion, (x * area.widthMm) / 2, (y * area.heightMm) / 2);
    if (ideal === null) return null;
    pixels[2 * i] = (ideal.xMm * recorded.width) / area.widthMm;
    pixels[2 * i + 1] = (ideal.yMm * recorded.height) / area.heightMm;
  }
  return pixels;
}

function edgeStops({ shading }: FrameLook, area: Area): Float64Array | null {
  if (shading === null) return null;
  return Float64Array.from(EDGE, ([x, y]) => Math.log2(shadingFactor(shading, (x * area.widthMm) / 2, (y * area.heightMm) / 2)));
}

/** Runs of frames with one group; frames without a state or a group end a run. */
function* runs(stateOf: Int32Array, groupOf: Int32Array): Generator<{ first: number; last: number; group: number }> {
  let first = 0;
  let group = -1;
  for (let frame = 0; frame <= stateOf.length; frame++) {
    const state = frame < stateOf.length ? (stateOf[frame] as number) : -1;
    const next = state < 0 ? -1 : (groupOf[state] as number);
    if (next === group) continue;
    if (group >= 0) yield { first, last: frame - 1, group };
    first = frame;
    group = next;
  }
}

function reasonOf(looks: readonly FrameLook[]): string {
  const state = looks.map((look) => look.state).find((s) => s.kind === "none");
  return state?.kind === "none" ? state.reason : "there are no distortion and shading coefficients";
}
