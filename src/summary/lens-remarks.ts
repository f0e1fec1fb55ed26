/** Remarks that speak of a lens's condition: from the kit, and from the notes of takes that it served. */
import type { Lens } from "../ingest/records.ts";
import type { DayDigest, TakeDigest } from "./digest-types.ts";

/** Words that a remark on a lens's condition has; the lens's own id counts too. */
const CONDITION_WORDS =
  /\b(?:scratch\w*|chip(?:ped)?|dust\w*|smear\w*|haze|hazy|fungus|flare\w*|ghost\w*|streak\w*|iris|stiff\w*|slip(?:s|ped)?|loose|knock(?:ed)? (?:the|its) lens|back ?focus|re-?marked|collimat\w*|shim\w*|mount|front element|rear element|lens (?:heat|cap|gear|support)\w*|breath\w*|focus scale|hunt\w*)\b/i;

export interface LensRemark {
  /** `null` for a remark of the kit. */
  readonly day: DayDigest | null;
  readonly take: TakeDigest | null;
  readonly text: string;
}

/** The kit's remark first, then those of the takes in the order of the days. */
export function lensRemarks(lens: Lens, digests: readonly DayDigest[]): readonly LensRemark[] {
  const own: readonly LensRemark[] = lens.remarks === null ? [] : [{ day: null, take: null, text: lens.remarks }];
  const noted = digests.flatMap((day) =>
    day.takes.flatMap((take): readonly LensRemark[] =>
      take.lens === lens.id && take.remarks !== null && speaksOf(lens, take.remarks) ? [{ day, take, text: take.remarks }] : [],
    ),
  );
  return [...own, ...noted];
}

function speaksOf(lens: Lens, remark: string): boolean {
  const words = remark.toLowerCase().split(/[^a-z0-9-]+/);
  return words.includes(lens.id.toLowerCase()) || CONDITION_WORDS.test(remark);
}
