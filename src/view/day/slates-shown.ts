/** Which slates of a day its page has room for. */
import { MOST_ROWS } from "../table.ts";

/**
 * Of the slate of each clip in the day's order: whole slates, in the order of their first clip, while all their clips fit
 * on one page. The first slate always stands there, with as many of its clips as fit.
 */
export function slatesShown(slateOfClip: readonly string[]): ReadonlySet<string> {
  const clips = new Map<string, number>();
  for (const slate of slateOfClip) clips.set(slate, (clips.get(slate) ?? 0) + 1);
  const shown = new Set<string>();
  let total = 0;
  for (const [slate, count] of clips) {
    total += count;
    if (total > MOST_ROWS && shown.size > 0) break;
    shown.add(slate);
  }
  return shown;
}
