/** The day for the cutting room: circled takes first, then the others, with what changed inside each. */
import { NOT_LOGGED, NOT_RECORDED } from "../../format/absent.ts";
import { minutesSeconds } from "../../format/time.ts";
import { plural } from "../../format/words.ts";
import type { TakeSummary } from "../../summary/types.ts";
import { sentence, standing, takeName } from "../../view/names.ts";
import { insideWords } from "../../view/readers/editorial-page.ts";
import { paragraph, sectionHead } from "../block.ts";
import { type Report, TYPE } from "../report.ts";
import { type Cell, drawTable, type TableRow } from "../table.ts";
import { element } from "../tags.ts";
import { focalText, focusText, lengthText, stopText } from "../take-words.ts";
import { findingsSection } from "./findings.ts";
import { reportHead } from "./glance-head.ts";
import { FOCUS_CAUTION } from "./lenses.ts";
import { aboutSection } from "./methods.ts";

export function editorialReport(report: Report): void {
  const { summary, flow } = report;
  const head = element(report.doc, report.root, "Sect");
  reportHead(report, head);
  const { circled, takes, clips, circledSeconds } = summary.totals;
  const counts = `${circled} of ${plural(takes, "take")} circled, ${plural(clips, "clip")}; ${minutesSeconds(circledSeconds)} of circled takes on all cameras.`;
  paragraph(report, head, counts);
  const rolls = summary.day.record.soundRolls;
  paragraph(report, head, rolls.length === 0 ? "Sound rolls not recorded." : `Sound rolls: ${rolls.join(", ")}.`);
  flow.y += 4;
  const all = summary.takes.filter((t) => !t.take.duplicate);
  takesOf(
    report,
    "Circled takes",
    all.filter((t) => t.take.circled),
    "No take is circled.",
  );
  takesOf(
    report,
    "Other takes",
    all.filter((t) => !t.take.circled),
    "Every take is circled.",
  );
  findingsSection(report, (finding) => finding.take !== null);
  aboutSection(report, [FOCUS_CAUTION]);
}

function takesOf(report: Report, title: string, takes: readonly TakeSummary[], none: string): void {
  const { flow } = report;
  const section = sectionHead(report, title, "In shooting order; the second timecode is the first frame after the take.");
  report.bookmark.add(title, flow.y - 24);
  if (takes.length === 0) {
    paragraph(report, section, none);
    return;
  }
  const widths = [60, 26, 46, 28, 46, 46, 42, 50, 44];
  const rest = flow.sheet.width - widths.reduce((sum, width) => sum + width, 0) - widths.length * 5;
  const heads = ["Take", "Scene", "Clip", "Roll", "Timecode in", "and out", "Length", "Focal length", "Stop", "Focus"];
  const columns = heads.map((text, i) => ({ head: text, width: widths[i] ?? rest }));
  drawTable(report, section, { columns, rows: takes.map((t) => takeRow(report, t)), gap: 5, pad: 1.8 });
}

function takeRow(report: Report, t: TakeSummary): TableRow {
  const { take } = t;
  const absent = take.track === null ? NOT_RECORDED : NOT_LOGGED;
  const or = (text: string | null, missing: string = NOT_RECORDED): Cell | string => text ?? { text: missing, style: TYPE.source };
  return {
    cells: [
      takeName(take),
      or(take.scene),
      or(take.clip),
      or(take.roll),
      or(t.timecodeIn),
      or(t.timecodeOut),
      take.durationFrames === 0 ? or(null) : lengthText(t),
      or(focalText(t), absent),
      or(stopText(t), absent),
      or(focusText(t, report.summary.show.distances), absent),
    ],
    below: [`Inside: ${insideWords(t)}.`, soundWords(t), standing(take), t.remarks === null ? "" : sentence(t.remarks)]
      .filter((text) => text !== "")
      .join(" "),
  };
}

function soundWords({ take }: TakeSummary): string {
  if (take.sound === null) return `Sound ${NOT_RECORDED}.`;
  return take.sound === "mos" ? "MOS." : "Sync sound.";
}
