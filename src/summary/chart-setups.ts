/** The fewest chart set-ups that cover lens states which a calibration lacks. */
import { AXES, type CoverageAxis, coordinate, type Reach } from "./coverage-reach.ts";
import type { CountedState } from "./state-histogram.ts";

/** A state that is not covered, with the side of the table it lies on where it lies beyond: -1 smaller values, 1 larger ones. */
export interface MissingState extends CountedState {
  readonly beyond: Readonly<Partial<Record<CoverageAxis, -1 | 1>>>;
}

/** A chosen state and the frames that it adds to those already covered. */
export interface ChosenState {
  readonly state: MissingState;
  readonly frames: number;
}

/** Above this many states neighbours are put together first: the choice looks at every pair. */
const MOST_STATES = 800;

/**
 * Greedy set cover: each time the state that covers most frames not covered yet, until all are. The choice is at most
 * 1 + ln(n) times as long as the shortest.
 *
 * A state is covered by another when it is within half the reach between points on every axis, or, past the table, not
 * further out than the reach of a last point.
 *
 * @source V. Chvatal, "A greedy heuristic for the set-covering problem", Mathematics of Operations Research 4(3) (1979)
 */
export function chooseSetups(missing: readonly MissingState[], reach: Reach): ChosenState[] {
  const states = fewer(missing);
  const covers = states.map((chart) => states.flatMap((state, i) => (isCovered(state, chart, reach) ? [i] : [])));
  const coveredBy = states.map((): number[] => []);
  covers.forEach((list, chart) => {
    for (const i of list) coveredBy[i]?.push(chart);
  });
  const gain = covers.map((list) => list.reduce((sum, i) => sum + (states[i]?.frames ?? 0), 0));
  const open = new Set(states.keys());
  const chosen: ChosenState[] = [];
  while (open.size > 0) {
    let best = -1;
    gain.forEach((frames, i) => {
      if (best < 0 || frames > (gain[best] ?? 0)) best = i;
    });
    const state = states[best];
    if (state === undefined) break;
    chosen.push({ state, frames: gain[best] ?? 0 });
    for (const i of covers[best] ?? []) {
      if (!open.delete(i)) continue;
      for (const chart of coveredBy[i] ?? []) gain[chart] = (gain[chart] ?? 0) - (states[i]?.frames ?? 0);
    }
  }
  return chosen;
}

/** Whether a chart at one state serves another. A state always covers itself. */
export function isCovered(state: MissingState, chart: CountedState, reach: Reach): boolean {
  return AXES.every((axis) => {
    const asked = coordinate(state, axis);
    const at = coordinate(chart, axis);
    if (asked === null || at === null) return true;
    const away = asked - at;
    const { between, below, above } = reach[axis];
    const side = state.beyond[axis];
    const outward = side !== undefined && away * side > 0;
    return Math.abs(away) <= (outward ? (side > 0 ? above : below) : between / 2) + 1e-9;
  });
}

/** Puts neighbouring states together until there are few enough; the most frequent one of a group stands for it. */
function fewer(missing: readonly MissingState[]): readonly MissingState[] {
  let states = missing;
  for (let factor = 2; states.length > MOST_STATES; factor *= 2) {
    const groups = new Map<string, MissingState[]>();
    for (const state of missing) {
      const parts = [state.focalMm / factor, (50 * state.focusDioptres) / factor, ((state.stops ?? 0) * 3) / factor].map(
        Math.round,
      );
      const key = [...parts, ...AXES.map((axis) => state.beyond[axis] ?? 0)].join(" ");
      const group = groups.get(key);
      if (group === undefined) groups.set(key, [state]);
      else group.push(state);
    }
    states = [...groups.values()].map((group) => ({
      ...group.reduce((best, one) => (one.frames > best.frames ? one : best)),
      frames: group.reduce((sum, one) => sum + one.frames, 0),
    }));
  }
  return states;
}
