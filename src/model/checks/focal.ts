/** The noted focal length against the log and against the lens. */
import { CHECK } from "../../core/findings/check.ts";
import type { TakeContext } from "./context.ts";
import { round, sortedValues } from "./words.ts";

export function checkFocal({ take, limits, logFile, tell }: TakeContext): void {
  const noted = take.note?.focalMm ?? null;
  if (noted === null) return;
  const low = Math.min(noted.value.from, noted.value.to);
  const high = Math.max(noted.value.from, noted.value.to);
  const logged = sortedValues(take, "focal_mm");
  const shortest = logged[0];
  const longest = logged.at(-1);
  const allowed = limits.focalDifferenceFraction;
  if (shortest !== undefined && longest !== undefined && logFile !== null) {
    if (low < shortest * (1 - allowed) || high > longest * (1 + allowed)) {
      tell(CHECK.focalDiffers, {
        place: noted.place,
        field: "focal",
        message: `The note says ${noted.text} mm, the log ${round(shortest)} to ${round(longest)} mm. The log's is shown.`,
        hint: `Correct the note, or look at ${logFile}. The limit is check.focal_difference_fraction in show.yaml.`,
      });
    }
  }
  const lens = take.lens;
  const from = lens?.focalMm ?? lens?.focalMinMm ?? null;
  const to = lens?.focalMm ?? lens?.focalMaxMm ?? null;
  if (lens === null || from === null || to === null) return;
  const rounding = limits.markedFocalFraction;
  if (low >= from * (1 - rounding) && high <= to * (1 + rounding)) return;
  tell(CHECK.focalNotOfLens, {
    place: noted.place,
    field: "focal",
    message: `The note says ${noted.text} mm, but lens ${lens.id} is ${from === to ? `${from} mm` : `${from} to ${to} mm`}.`,
    hint: "Correct the focal length or the lens in the note.",
  });
}
