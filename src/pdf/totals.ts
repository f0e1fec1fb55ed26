/** Sums and orders that the report needs and the summary does not hold. */
import type { DaySummary, TakeSummary } from "../summary/types.ts";
import { framesPerSecond } from "../time/frame-rate.ts";

/** Seconds of media of each camera in letter order, duplicates left out; at each take's own timecode rate. */
export function cameraSeconds(summary: DaySummary): readonly (readonly [string, number])[] {
  const seconds = new Map<string, number>();
  for (const camera of Object.keys(summary.totals.mediaFrames)) seconds.set(camera, 0);
  for (const { take } of summary.takes) {
    if (take.duplicate) continue;
    seconds.set(take.camera, (seconds.get(take.camera) ?? 0) + take.durationFrames / framesPerSecond(take.rate));
  }
  return [...seconds];
}

/** Seconds of media of each lens by its id, duplicates left out. */
export function lensSeconds(summary: DaySummary): ReadonlyMap<string, number> {
  const seconds = new Map<string, number>();
  for (const { take } of summary.takes) {
    if (take.duplicate || take.lensId === null) continue;
    seconds.set(take.lensId, (seconds.get(take.lensId) ?? 0) + take.durationFrames / framesPerSecond(take.rate));
  }
  return seconds;
}

export interface SlateTakes {
  readonly slate: string;
  readonly takes: readonly NumberedTake[];
}

export interface NumberedTake {
  readonly summary: TakeSummary;
  /** Name of the take's place in the document. */
  readonly target: string;
}

/** Takes by slate: slates by their first take, takes in shooting order, cameras of one take together. */
export function takesBySlate(summary: DaySummary): readonly SlateTakes[] {
  const slates = new Map<string, NumberedTake[]>();
  summary.takes.forEach((take, i) => {
    const list = slates.get(take.take.slate) ?? [];
    // Digits only, so that the order of names is the same in every locale.
    list.push({ summary: take, target: `take${String(i + 1).padStart(5, "0")}` });
    slates.set(take.take.slate, list);
  });
  return [...slates].map(([slate, takes]) => ({ slate, takes }));
}
