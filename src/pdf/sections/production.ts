/** The day for the production office: the page to sign, all scenes, a row a set-up, and what needs an answer. */
import { NOT_RECORDED } from "../../format/absent.ts";
import { minutesSeconds } from "../../format/time.ts";
import { listWords } from "../../format/words.ts";
import { framesPerSecond } from "../../time/frame-rate.ts";
import { sectionHead } from "../block.ts";
import type { Report } from "../report.ts";
import { drawTable, type TableRow } from "../table.ts";
import { lensText } from "../take-words.ts";
import { type SlateTakes, takesBySlate } from "../totals.ts";
import { findingsSection } from "./findings.ts";
import { glance } from "./glance.ts";
import { aboutSection } from "./methods.ts";

export function productionReport(report: Report): void {
  glance(report, "in the camera report");
  report.flow.newPage();
  setupsTable(report);
  // a remark asks nothing of the office; the camera report has it
  findingsSection(report, (finding) => finding.severity !== "remark");
  // the caution on hours stands with them on the first page
  aboutSection(report, []);
}

function setupsTable(report: Report): void {
  const { flow, summary } = report;
  const section = sectionHead(report, "Set-ups", "In shooting order; media of all cameras, repeated addresses left out.");
  report.bookmark.add("Set-ups", flow.y - 24);
  const widths = [90, 70, 60, 40, 40, 56];
  const rest = flow.sheet.width - widths.reduce((sum, width) => sum + width, 0) - widths.length * 7;
  const columns = [
    { head: "Slate", width: 90 },
    { head: "Scene", width: 70 },
    { head: "Cameras", width: 60 },
    { head: "Clips", width: 40, align: "end" },
    { head: "Circled", width: 40, align: "end" },
    { head: "Media, min:s", width: 56, align: "end" },
    { head: "Lenses", width: rest },
  ] as const;
  const slates = takesBySlate(summary);
  const rows = slates.map(setupRow);
  if (rows.length === 0) rows.push({ cells: [NOT_RECORDED, "", "", "0", "0", "0:00", ""] });
  drawTable(report, section, { columns, rows, pad: 2 });
}

function setupRow({ slate, takes }: SlateTakes): TableRow {
  const counted = takes.map(({ summary }) => summary).filter((t) => !t.take.duplicate);
  const each = <T>(of: (t: (typeof counted)[number]) => T | null): readonly T[] => [
    ...new Set(counted.map(of).filter((value) => value !== null)),
  ];
  const seconds = counted.reduce((sum, { take }) => sum + take.durationFrames / framesPerSecond(take.rate), 0);
  const lenses = each(lensText);
  const scenes = each((t) => t.take.scene);
  return {
    cells: [
      slate,
      scenes.length === 0 ? NOT_RECORDED : scenes.join(", "),
      listWords([...each((t) => t.take.camera)]),
      String(counted.length),
      String(counted.filter((t) => t.take.circled).length),
      minutesSeconds(seconds),
      lenses.length === 0 ? NOT_RECORDED : lenses.join(", "),
    ],
  };
}
