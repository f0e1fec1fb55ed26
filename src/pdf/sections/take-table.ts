/** The takes of a slate in one table. */
import { NOT_LOGGED, NOT_RECORDED } from "../../format/absent.ts";
import { NBSP } from "../../format/space.ts";
import { standing, takeName } from "../../view/names.ts";
import type { Ink } from "../ink.ts";
import { PRINT } from "../palette.ts";
import { type Report, TYPE } from "../report.ts";
import type { Cell, CellArea, TableOptions, TableRow } from "../table.ts";
import { focalText, focusText, lengthText, lensText, pullCount, stopText } from "../take-words.ts";
import type { NumberedTake, SlateTakes } from "../totals.ts";

/** A row a clip. The remark, and what the take is worth, stand below it. */
export function slateTable(report: Report, { slate, takes }: SlateTakes): TableOptions {
  const fixed = 36 + 48 + 48 + 48 + 52 + 48 + 40 + 8 * 6.5;
  const rest = report.flow.sheet.width - fixed;
  // Metres and feet stand side by side where the show wants both.
  const focusShare = report.summary.show.distances === "both" ? 0.66 : 0.57;
  const columns = [
    { head: "Take", width: 36 },
    { head: "Clip", width: 48 },
    { head: "Timecode in", width: 48 },
    { head: "Length", width: 48 },
    { head: "Lens", width: rest * (1 - focusShare) },
    { head: "Focal length", width: 52 },
    { head: "Stop", width: 48 },
    { head: "Focus", width: rest * focusShare },
    { head: "Pulls", width: 40, align: "end" },
  ] as const;
  return {
    columns: columns.slice(),
    rows: takes.map((take) => takeRow(report, take)),
    gap: 6.5,
    pad: 1.8,
    continued: `Slate ${slate}, continued`,
  };
}

function takeRow(report: Report, { summary: t, target }: NumberedTake): TableRow {
  const { take } = t;
  const { distances } = report.summary.show;
  const below = [standing(take), take.duplicate ? "Repeats an address: counted in no total." : "", t.remarks ?? ""];
  return {
    cells: [
      {
        text: `${take.take}${NBSP.repeat(3)}${take.camera}`,
        link: { target, label: `${takeName(take)}: go to its focus` },
        ...(take.circled ? { art: (ink: Ink, area: CellArea) => circle(ink, area, take.take) } : {}),
      },
      orAbsent(take.clip),
      orAbsent(t.timecodeIn),
      take.durationFrames === 0 ? orAbsent(null) : lengthText(t),
      orAbsent(lensText(t)),
      orAbsent(focalText(t)),
      orAbsent(stopText(t)),
      orAbsent(focusText(t, distances)),
      t.pulls === null ? { text: NOT_LOGGED, style: TYPE.source } : pullCount(t),
    ],
    below: below.filter((text) => text !== "").join(" "),
  };
}

function orAbsent(text: string | null): Cell | string {
  return text ?? { text: NOT_RECORDED, style: TYPE.source };
}

/** The ring of a circled take, round its number. */
function circle(ink: Ink, area: CellArea, take: string): void {
  const width = ink.width(take, TYPE.strong);
  // A long name wraps: the word "circled" stands below it.
  if (width > area.width - 8) return;
  const radius = Math.max(5.6, width / 2 + 2.4);
  const middle = area.x + width / 2;
  if (width < 12)
    ink.doc
      .lineWidth(0.7)
      .circle(middle, area.baseline - 2.9, radius)
      .stroke(PRINT.ink);
  else
    ink.doc
      .lineWidth(0.7)
      .roundedRect(area.x - 2.4, area.baseline - 8.4, width + 4.8, 11, 5.5)
      .stroke(PRINT.ink);
}
