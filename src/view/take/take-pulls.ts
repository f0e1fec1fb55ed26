/** Focus pulls of a take as a table. */

import { NOT_CALCULATED } from "../../format/absent.ts";
import { dioptres } from "../../format/amounts.ts";
import { distance } from "../../format/length.ts";
import { fixed, signed, thousands } from "../../format/number.ts";
import type { PullFigures, TakeSummary } from "../../summary/types.ts";
import { distanceInColumn, distanceUnit } from "../distances.ts";
import type { Distances } from "../names.ts";
import { takeName } from "../names.ts";
import { type Cell, cell, column, num, numOr, row, type TableModel, table } from "../table.ts";
import { frameTimecode } from "./take-readout.ts";

export interface PullsView {
  readonly hasTable: boolean;
  readonly table: TableModel;
  /** What breathing rests on; empty when no pull has a figure. */
  readonly breathing: string;
  /** What to say when there is nothing to list. */
  readonly sentence: string;
}

export function pullsView(t: TakeSummary, distances: Distances): PullsView {
  const unit = distanceUnit(distances);
  const pulls = t.pulls ?? [];
  const label = breathingLabel(pulls);
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
      breathingCell(p, label),
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
        column("Breathing", { unit: label === null ? "%" : `%, ${label}`, num: true }),
      ],
      rows,
    ),
    breathing: breathingSentence(pulls),
    sentence: noPullsSentence(t),
  };
}

/** Where all of the take's figures come from, when they come from one place; `null` then stands for "said row by row". */
function breathingLabel(pulls: readonly PullFigures[]): string | null {
  const labels = new Set(pulls.flatMap((p) => p.breathingFrom ?? []));
  return labels.size === 1 ? ([...labels][0] ?? null) : null;
}

function breathingCell(p: PullFigures, label: string | null): Cell {
  if (p.breathingPercent === null) return cell(NOT_CALCULATED, { num: true, absent: true });
  return cell(signed(p.breathingPercent, 1), { num: true, note: label === null ? (p.breathingFrom ?? "") : "" });
}

function breathingSentence(pulls: readonly PullFigures[]): string {
  const froms = new Set(pulls.flatMap((p) => p.breathingFrom ?? []));
  if (froms.size === 0) return "";
  const estimate = "as if the whole lens moved to focus: a lens with inner focusing can breathe less, or the other way";
  const how = froms.has("unit-focus estimate")
    ? froms.size === 1
      ? `An estimate, ${estimate}.`
      : `From the logged focal lengths, or an estimate, ${estimate}.`
    : "From the logged focal lengths.";
  return `Breathing: how much wider (+) or narrower (\u2212) the view is at the end of the pull. ${how}`;
}

function noPullsSentence(t: TakeSummary): string {
  if (t.take.track === null) return "No log for this take: pulls are not logged.";
  return t.pulls === null
    ? "The log has no focus that could be read: pulls are not logged."
    : "None. The focus was held through the take.";
}
