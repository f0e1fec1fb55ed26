/** Below a take's ribbon: its pulls, and what else is known of it, by where it comes from. */
import { openFindings } from "../../core/finding.ts";
import { NOT_CALCULATED, NOT_RECORDED } from "../../format/absent.ts";
import { dioptres } from "../../format/amounts.ts";
import { type DistanceSystem, distance, distanceNumber, distanceUnit } from "../../format/length.ts";
import { fixed, thousands } from "../../format/number.ts";
import { share } from "../../format/percent.ts";
import { listWords, plural, sentenceCase } from "../../format/words.ts";
import type { PullFigures, TakeSummary } from "../../summary/types.ts";
import type { Element } from "../document.ts";
import { messageSentence, SEVERITY_WORDS, severityStyle, worstFirst } from "../finding-words.ts";
import { lineHeight, type TextStyle } from "../ink.ts";
import { type Report, TYPE } from "../report.ts";
import { drawTable } from "../table.ts";
import { element } from "../tags.ts";
import {
  calculatedFigures,
  calibrationNote,
  frameTimecode,
  mainFigures,
  notedFigures,
  OUT_TERM,
  type WordedFigure,
} from "../take-words.ts";

const FINDINGS_SHOWN = 4;
const LABEL_WIDTH = 62;

/** A row a pull; nothing when there is none, as the figures above say so. */
export function pullsTable(report: Report, parent: Element, t: TakeSummary): void {
  const pulls = t.pulls ?? [];
  if (pulls.length === 0) return;
  const { distances } = report.summary.show;
  const system = distances === "imperial" ? "imperial" : "metric";
  const unit = distanceUnit(system);
  const columns = [
    { head: "Pull", width: 36 },
    { head: "Start", width: 52 },
    { head: "End", width: 52 },
    { head: "Frames", width: 34, align: "end" },
    { head: `From, ${unit}`, width: 46, align: "end" },
    { head: `To, ${unit}`, width: 46, align: "end" },
    { head: "Dioptres", width: 40, align: "end" },
    { head: "Depths", width: 54, align: "end" },
    { head: "Fastest, 1/m a second", width: 90, align: "end" },
  ] as const;
  const rows = pulls.map((pull, i) => ({
    cells: [
      `${i + 1}${pull.follow ? " follow" : ""}`,
      frameTimecode(t, pull.startFrame),
      frameTimecode(t, pull.endFrame),
      thousands(pull.frames),
      distanceNumber(pull.fromM, system),
      distanceNumber(pull.toM, system),
      dioptres(pull.extentDioptres),
      depthsOf(pull),
      fixed(pull.peakDioptresPerSecond, 2),
    ],
  }));
  drawTable(report, parent, { columns: columns.slice(), rows, pad: 0.8, gap: 6 });
  report.flow.y += 5;
}

function depthsOf(pull: PullFigures): string {
  return pull.extentDepths === null ? NOT_CALCULATED : fixed(pull.extentDepths, 1);
}

/** Remark, log, noted, kit, calculated, absent, findings: one hanging line each, whatever there is. */
export function takeNotes(report: Report, parent: Element, t: TakeSummary): void {
  const { distances } = report.summary.show;
  const figures = [...notedFigures(t, distances), ...calculatedFigures(t, distances)];
  if (t.remarks !== null) hanging(report, parent, "Remark", t.remarks, TYPE.source);
  hanging(report, parent, "Log", logWords(t), TYPE.source);
  for (const source of ["logged", "noted", "kit", "calculated"] as const) {
    const mine = figures.filter((f) => f.source === source);
    if (mine.length > 0) hanging(report, parent, sentenceCase(source), sentenceOf(mine), TYPE.source);
  }
  const absent = absentWords(t, figures);
  if (absent !== "") hanging(report, parent, "Absent", absent, TYPE.source);
  takeFindings(report, parent, t);
}

/** A take that nobody has asked for yet, in few lines: its main figures run on, pulls are a sentence, nothing is worked out. */
export function shortNotes(report: Report, parent: Element, t: TakeSummary): void {
  const { distances } = report.summary.show;
  const main = mainFigures(t, distances)
    .filter((f) => f.term !== OUT_TERM)
    .map((f) => (f.source === null ? `${f.term.toLowerCase()} ${f.text}` : `${f.text} (${f.source})`));
  hanging(report, parent, "Take", `${sentenceCase(main.join("; "))}.`, TYPE.source);
  if (t.remarks !== null) hanging(report, parent, "Remark", t.remarks, TYPE.source);
  if (t.pulls !== null && t.pulls.length > 0) hanging(report, parent, "Pulls", pullsSentence(t, distances), TYPE.source);
  if (t.take.track === null || t.gaps.length > 0) hanging(report, parent, "Log", logWords(t), TYPE.source);
  const noted = notedFigures(t, distances).filter((f) => f.source === "noted");
  if (noted.length > 0) hanging(report, parent, "Noted", sentenceOf(noted), TYPE.source);
  takeFindings(report, parent, t);
}

function pullsSentence(t: TakeSummary, distances: DistanceSystem): string {
  const words = (t.pulls ?? []).map((pull) => {
    const way = `${distance(pull.fromM, distances)} to ${distance(pull.toM, distances)}`;
    return `${way} at ${frameTimecode(t, pull.startFrame)}, ${plural(pull.frames, "frame")}`;
  });
  return `${words.join("; ")}.`;
}

function takeFindings(report: Report, parent: Element, t: TakeSummary): void {
  const findings = worstFirst(openFindings(t.findings));
  for (const finding of findings.slice(0, FINDINGS_SHOWN)) {
    hanging(
      report,
      parent,
      SEVERITY_WORDS[finding.severity],
      `${messageSentence(finding)} ${finding.code}`,
      severityStyle(finding.severity),
    );
  }
  if (findings.length > FINDINGS_SHOWN) {
    hanging(
      report,
      parent,
      "More",
      `${plural(findings.length - FINDINGS_SHOWN, "finding")} of this take under Findings.`,
      TYPE.source,
    );
  }
}

/** "Not recorded: filters and tilt. Not calculated: distortion and shading (the lens has no calibration table)." */
function absentWords(t: TakeSummary, figures: readonly WordedFigure[]): string {
  const note = calibrationNote(t.calibration);
  const clauses = [NOT_RECORDED, NOT_CALCULATED].flatMap((word) => {
    const terms = figures.filter((f) => f.source === null && f.text === word).map((f) => f.term);
    return terms.length === 0 ? [] : [`${sentenceCase(word)}: ${listWords(terms)}.`];
  });
  if (note !== "" && t.take.track !== null) clauses.push(`Lens look: ${note}.`);
  return clauses.join(" ");
}

function sentenceOf(figures: readonly WordedFigure[]): string {
  const text = figures.map((f) => `${f.term} ${f.text}`).join("; ");
  return `${sentenceCase(text)}.`;
}

function logWords(t: TakeSummary): string {
  if (t.take.track === null) return "No log: what is shown is from the notes and the kit.";
  const files = listWords(t.take.logFiles.map((file) => file.replace(/^.*\//, "")));
  const logged = `${thousands(t.framesLogged)} of ${thousands(t.framesExpected)} frames logged (${share(t.framesLogged, t.framesExpected)})`;
  const gaps = t.gaps.slice(0, 4).map((gap) => `${plural(gap.frames, "frame")} ${gap.from} to ${gap.to}`);
  const more = t.gaps.length > 4 ? ` and ${t.gaps.length - 4} more gaps` : "";
  const missing = gaps.length === 0 ? "" : ` Not logged: ${gaps.join("; ")}${more}.`;
  return `${logged}, ${files}.${missing}`;
}

/** A word in the margin and a text that hangs beside it. */
function hanging(report: Report, parent: Element, label: string, text: string, labelStyle: TextStyle): void {
  const { doc, ink, flow } = report;
  const step = lineHeight(TYPE.table);
  const x = flow.sheet.left + LABEL_WIDTH;
  let lines = ink.lines(text, TYPE.table, flow.sheet.width - LABEL_WIDTH);
  const made = element(doc, parent, "P");
  let first = true;
  while (lines.length > 0) {
    if (flow.left() < step * Math.min(2, lines.length)) flow.newPage();
    const here = lines.slice(0, Math.max(1, Math.floor((flow.left() + 0.01) / step)));
    const top = flow.y;
    const withLabel = first;
    made.add(() => {
      if (withLabel) ink.text(`${label} `, flow.sheet.left, top + 8, labelStyle);
      here.forEach((line, i) => {
        ink.text(`${line} `, x, top + 8 + i * step, TYPE.table);
      });
    });
    flow.y += here.length * step;
    lines = lines.slice(here.length);
    first = false;
  }
  flow.y += 0.8;
}
