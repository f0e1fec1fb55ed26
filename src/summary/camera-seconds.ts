/** How long each camera rolled on a day. */
import type { DaySummary } from "./types.ts";

/** Seconds of all clips of each camera, by letter in letter order; rows whose address an earlier row has do not count. */
export function cameraSeconds({ takes, totals }: Pick<DaySummary, "takes" | "totals">): Readonly<Record<string, number>> {
  const seconds: Record<string, number> = {};
  for (const camera of Object.keys(totals.mediaFrames)) {
    const clips = takes.filter(({ take }) => !take.duplicate && take.camera === camera);
    seconds[camera] = clips.reduce((sum, clip) => sum + clip.durationSeconds, 0);
  }
  return seconds;
}
