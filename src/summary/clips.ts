/** All clips of a show in one list. */
import { compareCodes } from "../core/code-order.ts";
import type { DayDigest, TakeDigest } from "./digest-types.ts";

export interface ShowClip {
  readonly date: string;
  readonly day: number | null;
  readonly take: TakeDigest;
}

/** By clip name; two of one name by date, those without a name last, in shooting order. Digests are in order of date. */
export function clipsByName(digests: readonly DayDigest[]): readonly ShowClip[] {
  const clips = digests.flatMap(({ date, day, takes }) => takes.map((take): ShowClip => ({ date, day, take })));
  // the sort is stable: what is alike stays in order of date and of shooting
  return clips.sort(({ take: { clip: a } }, { take: { clip: b } }) => {
    if (a === null || b === null) return Number(a === null) - Number(b === null);
    return compareCodes(a, b);
  });
}
