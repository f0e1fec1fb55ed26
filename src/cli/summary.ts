/** The last lines of a build or a check. */
import type { FindingCounts } from "../core/finding.ts";
import { thousands } from "../format/number.ts";
import { plural } from "../format/words.ts";
import type { RowCounts } from "../model/types.ts";
import { seconds } from "./progress.ts";

/** "2 errors, 17 to check, 3 remarks", or "nothing to check". */
export function countsText(counts: FindingCounts, remarksShown: boolean): string {
  const parts = [
    counts.error > 0 ? plural(counts.error, "error") : "",
    counts.check > 0 ? `${thousands(counts.check)} to check` : "",
    counts.remark > 0 ? `${plural(counts.remark, "remark")}${remarksShown ? "" : " (--verbose shows them)"}` : "",
  ].filter((part) => part !== "");
  return parts.length === 0 ? "nothing to check" : parts.join(", ");
}

/** "12 days: 3 built, 9 unchanged", with only the states that occur. */
export function daysText(states: readonly string[]): string {
  const order = ["built", "unchanged", "failed", "removed"];
  const counts = order.flatMap((state) => {
    const count = states.filter((s) => s === state).length;
    return count === 0 ? [] : [`${thousands(count)} ${state}`];
  });
  const days = states.length === 0 ? "no days" : plural(states.length, "day");
  return counts.length === 0 ? days : `${days}: ${counts.join(", ")}`;
}

/** What became of the rows of the lens logs; read = used + unmatched + rejected. Empty without logs. */
export function rowsText(rows: RowCounts): string {
  if (rows.read === 0) return "";
  const { read, used, unmatched, rejected } = rows;
  const rest =
    unmatched === 0 && rejected === 0
      ? "all used"
      : `${thousands(used)} used, ${thousands(unmatched)} unmatched, ${thousands(rejected)} rejected`;
  return `log rows: ${thousands(read)} read, ${rest}`;
}

export function totalLine(parts: {
  readonly days: string;
  readonly takes: number;
  readonly counts: string;
  readonly milliseconds: number;
}): string {
  return `${parts.days}   ${plural(parts.takes, "take")}   ${parts.counts}   ${seconds(parts.milliseconds)}`;
}
