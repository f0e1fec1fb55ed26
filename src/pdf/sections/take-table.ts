/** All takes in one table, by slate: a row a clip, the remark below it, and the page where the take is shown. */
import { NOT_RECORDED } from "../../format/absent.ts";
import { NBSP } from "../../format/space.ts";
import { plural } from "../../format/words.ts";
import { standing, takeName } from "../../view/names.ts";
import { paragraph, sectionHead } from "../block.ts";
import type { Ink } from "../ink.ts";
import { PRINT } from "../palette.ts";
import { type Report, TYPE } from "../report.ts";
import { type Cell, type CellArea, drawTable, type TableRow } from "../table.ts";
import { focalText, focusText, lengthText, lensText, pullCount, stopText } from "../take-words.ts";
import { type NumberedTake, type SlateTakes, takesBySlate } from "../totals.ts";

/** Writes the page number of a take into its row, once it is known. */
export type PageWriters = ReadonlyMap<string, (page: string) => void>;

export function takeTable(report: Report): PageWriters {
  const { flow, summary } = report;
  const writers = new Map<string, (page: string) => void>();
  flow.newPage();
  report.begins("Takes by slate", flow.y);
  const section = sectionHead(
    report,
    "Takes by slate",
    "A circle is a circled take. Stop, focal length and focus: logged, else noted; n/l is not logged.",
  );
  const slates = takesBySlate(summary);
  if (slates.length === 0) {
    paragraph(report, section, `No takes: neither notes.csv nor a log with a take was found for ${summary.date}.`);
    return writers;
  }
  const fixed = 36 + 48 + 48 + 48 + 52 + 48 + 22 + 21 + 9 * 6.5;
  const rest = flow.sheet.width - fixed;
  // Metres and feet stand side by side where the show wants both.
  const focusShare = summary.show.distances === "both" ? 0.66 : 0.57;
  const columns = [
    { head: "Take", width: 36 },
    { head: "Clip", width: 48 },
    { head: "Timecode in", width: 48 },
    { head: "Length", width: 48, align: "end" },
    { head: "Lens", width: rest * (1 - focusShare) },
    { head: "Focal length", width: 52 },
    { head: "Stop", width: 48 },
    { head: "Focus", width: rest * focusShare },
    { head: "Pulls", width: 22, align: "end" },
    { head: "Page", width: 21, align: "end" },
  ] as const;
  const rows = slates.flatMap((slate) => [slateRow(slate), ...slate.takes.map((take) => takeRow(report, take, writers))]);
  drawTable(report, section, { columns: columns.slice(), rows, gap: 6.5, pad: 2.4 });
  return writers;
}

function slateRow({ slate, takes }: SlateTakes): TableRow {
  const scenes = [...new Set(takes.map(({ summary }) => summary.take.scene).filter((scene) => scene !== null))];
  const scene = scenes.length === 0 ? "" : `  scene ${scenes.join(", ")}`;
  return { group: true, cells: [{ text: `${slate}${scene}, ${plural(takes.length, "clip")}`, style: { ...TYPE.head, size: 11 } }] };
}

function takeRow(report: Report, { summary: t, target }: NumberedTake, writers: Map<string, (page: string) => void>): TableRow {
  const { take } = t;
  const { distances } = report.summary.show;
  const below = [standing(take), take.duplicate ? "Repeats an address: counted in no total." : "", t.remarks ?? ""];
  return {
    cells: [
      {
        text: `${take.take}${NBSP.repeat(3)}${take.camera}`,
        link: { target, label: `${takeName(take)}: go to its page` },
        ...(take.circled ? { art: (ink: Ink, area: CellArea) => circle(ink, area, take.take) } : {}),
      },
      orAbsent(take.clip),
      orAbsent(t.timecodeIn),
      take.durationFrames === 0 ? orAbsent(null) : lengthText(t),
      orAbsent(lensText(t)),
      orAbsent(focalText(t)),
      orAbsent(stopText(t)),
      orAbsent(focusText(t, distances)),
      t.pulls === null ? { text: "n/l", style: TYPE.source } : pullCount(t),
      { text: "", later: (write) => writers.set(target, write) },
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
