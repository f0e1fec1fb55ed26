/** Whether the noted subject was inside the sharp band. */
import { distance } from "../../format/length.ts";
import { thousands, trimmed } from "../../format/number.ts";
import { withUnit } from "../../format/space.ts";
import { plural } from "../../format/words.ts";
import type { TakeSummary } from "../../summary/types.ts";
import type { Distances } from "../names.ts";

/** One or two sentences; empty when no subject distance is noted or the take has no log. */
export function subjectSentence(t: TakeSummary, distances: Distances): string {
  const subject = t.subject;
  if (subject === null) return "";
  const at = `Subject noted at ${distance(subject.distanceM, distances)}`;
  if (subject.framesInside + subject.framesOutside === 0) return `${at}: the limits of depth of field are not calculated.`;
  const unknown = subject.framesUnknown === 0 ? "" : ` On ${plural(subject.framesUnknown, "frame")} it is not known.`;
  if (subject.framesOutside === 0) return `${at}: inside the sharp band on every frame that has one.${unknown}`;
  const seconds = withUnit(trimmed(subject.secondsOutside, 1), "s");
  return `${at}: outside the sharp band for ${seconds} (${thousands(subject.framesOutside)} of ${plural(t.framesExpected, "frame")}).${unknown}`;
}
