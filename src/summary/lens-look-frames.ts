/** The lens look on every frame of a take, for exports and pages. */
import type { Take } from "../model/types.ts";
import { distinctStates } from "./distinct-states.ts";
import type { FrameLook } from "./frame-look.ts";
import type { CalibrationState, FrameFigures, TakeSummary, ThreePoints } from "./types.ts";

/** Arrays have an entry a frame, NaN where there is no value: not logged, no coefficients, or not defined out to the corner. */
export interface LensLookFrames {
  readonly frames: number;
  /** Percent; negative is barrel. */
  readonly distortionPercent: Readonly<Record<keyof ThreePoints, Float64Array>>;
  /** Stops; negative is darker. */
  readonly shadingStops: Readonly<Record<keyof ThreePoints, Float64Array>>;
  /** From the image plane toward the object: the log's, else the calibration table's, else the kit's. */
  readonly entrancePupilMm: Float64Array;
  /** How the calibration served on each frame; `null` where the frame was not logged. */
  readonly calibration: readonly (CalibrationState["kind"] | null)[];
  /** Lens states that were evaluated for this. */
  readonly distinctStates: number;
  /** Coefficients in mm on the sensor and the reason behind the kind; `null` where the frame was not logged. */
  look(frame: number): FrameLook | null;
}

const kept = new WeakMap<FrameFigures, LensLookFrames>();

/**
 * Distortion, shading, entrance pupil and calibration on every frame; `null` for a take without a log. Worked out on the first
 * call, once for each distinct lens state, and kept with the take: a held lens costs next to nothing.
 */
export function lensLookFrames(summary: Pick<TakeSummary, "take" | "perFrame">): LensLookFrames | null {
  const { take, perFrame } = summary;
  if (perFrame === null) return null;
  const known = kept.get(perFrame);
  if (known !== undefined) return known;
  const made = makeFrames(take, perFrame);
  kept.set(perFrame, made);
  return made;
}

function makeFrames(take: Take, figures: FrameFigures): LensLookFrames {
  const n = figures.frames;
  const states = distinctStates(take, figures);
  const nothing = (): Float64Array => new Float64Array(n).fill(Number.NaN);
  const threePoints = () => ({ corner: nothing(), midSide: nothing(), midTop: nothing() });
  const distortionPercent = threePoints();
  const shadingStops = threePoints();
  const entrancePupilMm = nothing();
  const calibration: (CalibrationState["kind"] | null)[] = new Array(n).fill(null);
  const loggedPupil = take.track?.columns.entrance_pupil_mm;
  const pupilIsLogged = loggedPupil?.some((value) => !Number.isNaN(value)) ?? false;
  const kitPupil = take.lens?.entrancePupilMm ?? Number.NaN;
  for (let i = 0; i < n; i++) {
    const state = states.stateOf[i] as number;
    if (state < 0) continue;
    const look = states.look(state);
    put(distortionPercent, i, look.distortionPercent);
    put(shadingStops, i, look.shadingStops);
    calibration[i] = look.state.kind;
    // a log that has the pupil and lacks it on a frame is not filled from elsewhere: two sources in one column mislead
    entrancePupilMm[i] = pupilIsLogged ? (loggedPupil?.[i] ?? Number.NaN) : (look.tablePupilMm ?? kitPupil);
  }
  return {
    frames: n,
    distortionPercent,
    shadingStops,
    entrancePupilMm,
    calibration,
    distinctStates: states.firstFrame.length,
    look: (frame) => {
      const state = states.stateOf[frame] ?? -1;
      return state < 0 ? null : states.look(state);
    },
  };
}

function put(to: Readonly<Record<keyof ThreePoints, Float64Array>>, frame: number, from: ThreePoints | null): void {
  if (from === null) return;
  to.corner[frame] = from.corner;
  to.midSide[frame] = from.midSide;
  to.midTop[frame] = from.midTop;
}
