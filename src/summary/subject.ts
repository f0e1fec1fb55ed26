/** Whether the subject was in focus, while its distance is noted. */
import { rationalToNumber } from "../core/rational.ts";
import type { Take } from "../model/types.ts";
import type { FrameFigures } from "./types.ts";

/** Frames of the take by whether the noted subject distance lay between the near and the far limit; they add up to the take. */
export interface SubjectFocus {
  readonly distanceM: number;
  readonly framesInside: number;
  readonly framesOutside: number;
  /** Not logged, or without the stop, focal length or distance that the limits need. */
  readonly framesUnknown: number;
  /** At the timecode rate. */
  readonly secondsOutside: number;
}

/** `null` when no subject distance is noted or the take has no log. The limits themselves count as inside. */
export function subjectFocus(take: Take, figures: FrameFigures | null): SubjectFocus | null {
  const distanceM = take.note?.subjectM?.value ?? null;
  if (distanceM === null || !(distanceM > 0) || figures === null) return null;
  const dioptres = 1 / distanceM;
  let framesInside = 0;
  let framesOutside = 0;
  for (let i = 0; i < figures.frames; i++) {
    const near = figures.nearDioptres[i] as number;
    const far = figures.farDioptres[i] as number;
    if (Number.isNaN(near) || Number.isNaN(far)) continue;
    if (dioptres <= near && dioptres >= far) framesInside++;
    else framesOutside++;
  }
  return {
    distanceM,
    framesInside,
    framesOutside,
    framesUnknown: figures.frames - framesInside - framesOutside,
    secondsOutside: framesOutside / rationalToNumber(take.rate),
  };
}
