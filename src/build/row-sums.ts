/** Sums over what became of log rows. */
import type { RowCounts } from "../model/types.ts";

export const NO_ROWS: RowCounts = { read: 0, used: 0, unmatched: 0, rejected: 0 };

export function addRows(a: RowCounts, b: RowCounts): RowCounts {
  return {
    read: a.read + b.read,
    used: a.used + b.used,
    unmatched: a.unmatched + b.unmatched,
    rejected: a.rejected + b.rejected,
  };
}
