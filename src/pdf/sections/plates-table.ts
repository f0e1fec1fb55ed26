/** Which plates belong together: a row a take, under a line that says how a clean plate stands against its hero. */

import { openFindings } from "../../core/finding.ts";
import { NOT_RECORDED } from "../../format/absent.ts";
import { thousands } from "../../format/number.ts";
import { plural } from "../../format/words.ts";
import { plateWords, takeName } from "../../view/names.ts";
import { pairPlates } from "../../view/readers/plates.ts";
import { paragraph, sectionHead } from "../block.ts";
import { type Report, TYPE } from "../report.ts";
import { drawTable, type TableOptions, type TableRow, tableHeight } from "../table.ts";
import { focalText, lensText, stopText } from "../take-words.ts";
import { plateSlates, plateTarget, type SlateTakes } from "../totals.ts";

/** Points of the section's head. */
const HEAD_HEIGHT = 46;

/** A row a take, by what belongs together; each row leads to its sheet. */
export function platesTable(report: Report): void {
  const { flow, summary } = report;
  const section = sectionHead(report, "Plates", "What belongs together; each set-up has a sheet of its own below.");
  report.bookmark.add("Plates", flow.y - 24);
  const slates = plateSlates(summary);
  if (slates.length === 0) {
    paragraph(report, section, "No take is marked as a plate in the notes.");
    return;
  }
  drawTable(report, section, tableOf(report, slates));
}

/** The same where the rest of the page has room for all of it: the sheets that follow begin on a page of their own. */
export function platesTableHere(report: Report): void {
  const slates = plateSlates(report.summary);
  if (slates.length === 0) return;
  if (report.flow.left() >= HEAD_HEIGHT + tableHeight(report, tableOf(report, slates))) platesTable(report);
}

function tableOf({ flow }: Report, slates: readonly SlateTakes[]): TableOptions {
  const targets = new Map(slates.map(({ slate }, i) => [slate, plateTarget(i)]));
  const widths = [80, 90, 52, 50, 44, 56, 44];
  const rest = flow.sheet.width - widths.reduce((sum, width) => sum + width, 0) - widths.length * 6;
  const heads = ["Take", "Plate", "Clip", "Timecode in", "Frames", "Focal length", "Stop", "Lens"];
  const columns = heads.map((text, i) => ({ head: text, width: widths[i] ?? rest }));
  const rows = pairPlates(slates.flatMap(({ takes }) => takes.map(({ summary: t }) => t))).flatMap((pair): readonly TableRow[] => [
    { group: true, cells: [{ text: `${pair.heading}. ${pair.sentence}`, style: TYPE.strong }] },
    ...pair.takes.map((t): TableRow => {
      const target = targets.get(t.take.slate) ?? "";
      const open = openFindings(t.findings).length;
      return {
        cells: [
          { text: takeName(t.take), link: { target, label: `Plate sheet of slate ${t.take.slate}: go to ${takeName(t.take)}` } },
          plateWords(t.take) ?? "",
          t.take.clip ?? NOT_RECORDED,
          t.timecodeIn ?? NOT_RECORDED,
          thousands(t.take.durationFrames),
          focalText(t) ?? NOT_RECORDED,
          stopText(t) ?? NOT_RECORDED,
          lensText(t) ?? NOT_RECORDED,
        ],
        below: [t.take.circled ? "Circled." : "", open === 0 ? "" : `${plural(open, "finding")}.`]
          .filter((s) => s !== "")
          .join(" "),
      };
    }),
  ]);
  return { columns, rows, gap: 6, pad: 2 };
}
