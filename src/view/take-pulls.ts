/** Focus pulls of a take as a table. */

import { NOT_CALCULATED } from "../format/absent.ts";
import { dioptres } from "../format/amounts.ts";
import { distance } from "../format/length.ts";
import { fixed, thousands } from "../format/number.ts";
import type { TakeSummary } from "../summary/types.ts";
import { distanceInColumn, distanceUnit } from "./distances.ts";
import type { Distances } from "./names.ts";
import { takeName } from "./names.ts";
import { cell, column, num, numOr, row, type TableModel, table } from "./table.ts";
import { frameTimecode } from "./take-readout.ts";

export interface PullsView {
  readonly hasTable: boolean;
  readonly table: TableModel;
  /** What to say when there is nothing to list. */
  readonly sentence: string;
}

export function pullsView(t: TakeSummary, distances: Distances): PullsView {
  const unit = distanceUnit(distances);
  const pulls = t.pulls ?? [];
  const rows = pulls.map((p, i) =>
    row(cell(String(i + 1)), [
      cell(frameTimecode(t, p.startFrame) ?? String(p.startFrame), { nb: true }),
      cell(frameTimecode(t, p.endFrame) ?? String(p.endFrame), { nb: true, note: p.follow ? "slow follow" : "" }),
      num(thousands(p.frames)),
      num(distanceInColumn(p.fromM, distances)),
      num(distanceInColumn(p.toM, distances)),
      num(p.extentM === "inf" ? `to ${distance("inf", distances)}` : distanceInColumn(p.extentM, distances)),
      num(dioptres(p.extentDioptres)),
      numOr(p.extentDepths === null ? null : fixed(p.extentDepths, 1), NOT_CALCULATED),
      num(fixed(p.peakDioptresPerSecond, 2)),
    ]),
  );
  return {
    hasTable: rows.length > 0,
    table: table(
      "pulls-table",
      `Focus pulls of ${takeName(t.take)}`,
      [
        column("Pull"),
        column("Start", { unit: "last held frame" }),
        column("End", { unit: "first held frame" }),
        column("Length", { unit: "frames", num: true }),
        column("From", { unit, num: true }),
        column("To", { unit, num: true }),
        column("Extent", { unit, num: true }),
        column("Extent", { unit: "dioptres", num: true }),
        column("Extent", { unit: "depths", num: true }),
        column("Fastest", { unit: "dioptres a second", num: true }),
      ],
      rows,
    ),
    sentence: noPullsSentence(t),
  };
}

function noPullsSentence(t: TakeSummary): string {
  if (t.take.track === null) return "No log for this take: pulls are not logged.";
  return t.pulls === null
    ? "The log has no focus that could be read: pulls are not logged."
    : "None. The focus was held through the take.";
}
