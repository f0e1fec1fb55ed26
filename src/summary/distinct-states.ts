/** Distinct lens states of a take: a lens that is held has one state for many frames, and is evaluated once for all of them. */
import type { Take } from "../model/types.ts";
import { type FrameLook, frameLook, LOGGED_COEFFICIENTS } from "./frame-look.ts";
import type { FrameFigures } from "./types.ts";

export interface DistinctStates {
  /** State of each frame, an index into `firstFrame`; -1 where the frame was not logged. */
  readonly stateOf: Int32Array;
  /** The first frame of each state. */
  readonly firstFrame: readonly number[];
  /** The lens look of a state; evaluated on first use and kept. */
  look(state: number): FrameLook;
}

/** Figures are made once a take and dropped with it; what is worked out from them lives as long. */
const kept = new WeakMap<FrameFigures, DistinctStates>();

/**
 * The states of a take's logged frames, in order of their first frame. Frames share a state when the log (rounded as it is)
 * says the same focal length, focus, stop and lens coefficients, so that nothing is lost by evaluating one of them.
 */
export function distinctStates(take: Take, figures: FrameFigures): DistinctStates {
  const known = kept.get(figures);
  if (known !== undefined) return known;
  const made = makeStates(take, figures);
  kept.set(figures, made);
  return made;
}

function makeStates(take: Take, figures: FrameFigures): DistinctStates {
  const columns = [figures.focalMm, figures.focusDioptres, figures.tStop];
  for (const name of LOGGED_COEFFICIENTS) {
    const column = take.track?.columns[name];
    if (column !== undefined) columns.push(column);
  }
  const stateOf = new Int32Array(figures.frames).fill(-1);
  const firstFrame: number[] = [];
  const byKey = new Map<string, number>();
  let before = -1;
  for (let i = 0; i < figures.frames; i++) {
    if (figures.logged[i] !== 1) continue;
    if (before >= 0 && columns.every((column) => Object.is(column[i], column[before]))) {
      stateOf[i] = stateOf[before] as number;
    } else {
      const key = columns.map((column) => column[i]).join(" ");
      const known = byKey.get(key);
      const state = known ?? firstFrame.length;
      if (known === undefined) {
        byKey.set(key, state);
        firstFrame.push(i);
      }
      stateOf[i] = state;
    }
    before = i;
  }
  const looks: (FrameLook | undefined)[] = new Array(firstFrame.length);
  return {
    stateOf,
    firstFrame,
    look(state) {
      const known = looks[state];
      if (known !== undefined) return known;
      const made = frameLook(take, figures, firstFrame[state] ?? 0);
      looks[state] = made;
      return made;
    },
  };
}
