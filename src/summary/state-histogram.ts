/** Lens states of a day in steps, so that coverage can be worked out for a whole show after the frames are dropped. */
import { compareText } from "../core/finding.ts";
import type { TakeSummary } from "./types.ts";

/** Steps of the histogram: half a millimetre, 0.02 dioptres, a third of a stop. */
export const FOCAL_STEP_MM = 0.5;
const STEPS_A_DIOPTRE = 50;
export const FOCUS_STEP_DIOPTRES = 1 / STEPS_A_DIOPTRE;
export const STOP_STEP_STOPS = 1 / 3;

/**
 * Frames by lens state. A key is the focal length in half millimetres, the focus in steps of 0.02 dioptres (0 is infinity) and
 * the T-stop in thirds of a stop from T1 (`-` when it is not known), with spaces between: `"70 21 9"` is 35 mm, 0.42 dioptres, T2.8.
 */
export type StateHistogram = Readonly<Record<string, number>>;

/** Where a lens was used on one day. */
export interface LensStates {
  readonly lens: string;
  /** Camera and sensor mode of its takes, each once. */
  readonly modes: readonly { readonly camera: string; readonly sensorMode: string }[];
  /** Takes marked as plates. */
  readonly plates: StateHistogram;
  /** Those of them that are grids: charts that were shot on the day. */
  readonly grids: StateHistogram;
  /** All takes, plates included. */
  readonly all: StateHistogram;
  /** Frames whose focal length or focus is not logged; a take without a log counts whole. */
  readonly platesUnknown: number;
  readonly allUnknown: number;
}

export interface LensState {
  readonly focalMm: number;
  /** 0 is infinity. */
  readonly focusDioptres: number;
  /** Stops closed down from T1; `null` when the stop is not known. */
  readonly stops: number | null;
}

/** A cell of a histogram. */
export interface CountedState extends LensState {
  readonly frames: number;
}

/** The lens states of a day's takes, by lens in order of its id. Takes with an address of an earlier one do not count. */
export function lensStates(takes: readonly TakeSummary[]): LensStates[] {
  const lenses = new Map<string, Counts>();
  for (const summary of takes) {
    const { take } = summary;
    const id = take.lens?.id ?? take.lensId;
    if (id === null || take.duplicate) continue;
    const counts = lenses.get(id) ?? newCounts();
    lenses.set(id, counts);
    if (take.sensorMode !== null) {
      const { camera, sensorMode } = take.sensorMode;
      counts.modes.set(`${camera}\u0000${sensorMode}`, { camera, sensorMode });
    }
    const { plates, grids, all } = counts;
    count(summary, take.plate === null ? [all] : take.plate === "grid" ? [all, plates, grids] : [all, plates]);
  }
  return [...lenses]
    .sort(([a], [b]) => compareText(a, b))
    .map(([lens, { modes, plates, grids, all }]) => ({
      lens,
      modes: [...modes.values()],
      plates: Object.fromEntries(plates.cells),
      grids: Object.fromEntries(grids.cells),
      all: Object.fromEntries(all.cells),
      platesUnknown: plates.unknown,
      allUnknown: all.unknown,
    }));
}

interface Cells {
  readonly cells: Map<string, number>;
  unknown: number;
}

interface Counts {
  readonly modes: Map<string, { readonly camera: string; readonly sensorMode: string }>;
  readonly plates: Cells;
  readonly grids: Cells;
  readonly all: Cells;
}

function newCounts(): Counts {
  const none = (): Cells => ({ cells: new Map(), unknown: 0 });
  return { modes: new Map(), plates: none(), grids: none(), all: none() };
}

function count({ take, perFrame }: TakeSummary, into: readonly Cells[]): void {
  if (perFrame === null) {
    for (const cells of into) cells.unknown += take.durationFrames;
    return;
  }
  for (let i = 0; i < perFrame.frames; i++) {
    const focalMm = perFrame.focalMm[i] as number;
    const focusDioptres = perFrame.focusDioptres[i] as number;
    const tStop = perFrame.tStop[i] as number;
    const known = focalMm > 0 && focusDioptres >= 0;
    const key = known ? stateKey({ focalMm, focusDioptres, stops: tStop > 0 ? 2 * Math.log2(tStop) : null }) : "";
    for (const cells of into) {
      if (known) cells.cells.set(key, (cells.cells.get(key) ?? 0) + 1);
      else cells.unknown++;
    }
  }
}

function stateKey({ focalMm, focusDioptres, stops }: LensState): string {
  const stop = stops === null ? "-" : Math.round(stops / STOP_STEP_STOPS);
  return `${Math.round(focalMm / FOCAL_STEP_MM)} ${Math.round(focusDioptres * STEPS_A_DIOPTRE)} ${stop}`;
}

/** Several days' histograms as one list of states, in order of focal length, focus (far first) and stop. */
export function countedStates(histograms: readonly StateHistogram[]): CountedState[] {
  const sums = new Map<string, number>();
  for (const histogram of histograms) {
    for (const [key, frames] of Object.entries(histogram)) sums.set(key, (sums.get(key) ?? 0) + frames);
  }
  return [...sums]
    .map(([key, frames]) => ({ ...stateFromKey(key), frames }))
    .filter((state) => Number.isFinite(state.focalMm) && Number.isFinite(state.focusDioptres))
    .sort((a, b) => a.focalMm - b.focalMm || a.focusDioptres - b.focusDioptres || (a.stops ?? -1) - (b.stops ?? -1));
}

function stateFromKey(key: string): LensState {
  const [focal, focus, stop] = key.split(" ");
  return {
    focalMm: Number(focal) * FOCAL_STEP_MM,
    focusDioptres: Number(focus) / STEPS_A_DIOPTRE,
    stops: stop === undefined || stop === "-" ? null : Number(stop) / 3,
  };
}
