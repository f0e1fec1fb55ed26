/** The day for VFX: which plates belong together, the lenses, a sheet a plate set-up, findings and methods. */
import { openFindings } from "../../core/finding.ts";
import { thousands } from "../../format/number.ts";
import { plural } from "../../format/words.ts";
import { plateWords, takeName } from "../../view/names.ts";
import { pairPlates } from "../../view/readers/plates.ts";
import { paragraph, sectionHead } from "../block.ts";
import { type Report, TYPE } from "../report.ts";
import { drawTable, type TableRow } from "../table.ts";
import { element } from "../tags.ts";
import { focalText, lensText, stopText } from "../take-words.ts";
import { plateSlates, plateTarget } from "../totals.ts";
import { findingsSection } from "./findings.ts";
import { reportHead } from "./glance-head.ts";
import { usedLensSection } from "./lenses.ts";
import { lensMethodsSection } from "./methods.ts";
import { plateSheets } from "./plate-sheets.ts";

export function vfxReport(report: Report): void {
  const head = element(report.doc, report.root, "Sect");
  reportHead(report, head);
  platesTable(report);
  usedLensSection(report);
  plateSheets(report);
  const plates = new Set(report.summary.takes.filter((t) => t.take.plate !== null).map((t) => t.take.address));
  findingsSection(report, (finding) => finding.take === null || plates.has(finding.take));
  lensMethodsSection(report);
}

function platesTable(report: Report): void {
  const { flow, summary } = report;
  const section = sectionHead(report, "Plates", "What belongs together; each set-up has a sheet of its own below.");
  report.bookmark.add("Plates", flow.y - 24);
  const slates = plateSlates(summary);
  if (slates.length === 0) {
    paragraph(report, section, "No take is marked as a plate in the notes.");
    return;
  }
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
          { text: takeName(t.take), link: { target, label: `${takeName(t.take)}: go to its plate sheet` } },
          plateWords(t.take) ?? "",
          t.take.clip ?? "not recorded",
          t.timecodeIn ?? "not recorded",
          thousands(t.take.durationFrames),
          focalText(t) ?? "not recorded",
          stopText(t) ?? "not recorded",
          lensText(t) ?? "not recorded",
        ],
        below: [t.take.circled ? "Circled." : "", open === 0 ? "" : `${plural(open, "finding")}.`]
          .filter((s) => s !== "")
          .join(" "),
      };
    }),
  ]);
  drawTable(report, section, { columns, rows, gap: 6, pad: 2 });
}
