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
import type { HangingLine } from "../hanging.ts";
import type { Report } from "../report.ts";
import { drawTable, type TableOptions, tableHeight } from "../table.ts";
import {
  calculatedFigures,
  calibrationNote,
  frameTimecode,
  notedFigures,
  sourcesSentence,
  type WordedFigure,
} from "../take-words.ts";

const FINDINGS_SHOWN = 4;

const AFTER_PULLS = 5;
/** Pulls of a short take that are said one by one. */
const PULLS_SAID = 4;

/** A row a pull; nothing when there is none, as the figures above say so. */
export function drawPulls(report: Report, parent: Element, t: TakeSummary): void {
  const options = pullsTable(report, t);
  if (options === null) return;
  drawTable(report, parent, options);
  report.flow.y += AFTER_PULLS;
}

export function pullsHeight(report: Report, t: TakeSummary): number {
  const options = pullsTable(report, t);
  return options === null ? 0 : tableHeight(report, options) + AFTER_PULLS;
}

function pullsTable(report: Report, t: TakeSummary): TableOptions | null {
  const pulls = t.pulls ?? [];
  if (pulls.length === 0) return null;
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
  return { columns: columns.slice(), rows, pad: 0.8, gap: 6 };
}

function depthsOf(pull: PullFigures): string {
  return pull.extentDepths === null ? NOT_CALCULATED : fixed(pull.extentDepths, 1);
}

/** Sources, log, noted, kit, calculated, absent, findings: one hanging line each, whatever there is. */
export function takeNotes(report: Report, t: TakeSummary): readonly HangingLine[] {
  const { distances } = report.summary.show;
  const figures = [...notedFigures(t, distances), ...calculatedFigures(t, distances)];
  const absent = absentWords(t, figures);
  return [
    { label: "Sources", text: sourcesSentence(t) },
    { label: "Log", text: logWords(t) },
    ...(["logged", "noted", "kit", "calculated"] as const).flatMap((source) => {
      const mine = figures.filter((f) => f.source === source);
      return mine.length === 0 ? [] : [{ label: sentenceCase(source), text: sentenceOf(mine) }];
    }),
    ...(absent === "" ? [] : [{ label: "Absent", text: absent }]),
    ...takeFindings(t),
  ];
}

/** A take in few lines: its pulls are a sentence, nothing is worked out. */
export function shortNotes(report: Report, t: TakeSummary): readonly HangingLine[] {
  const { distances } = report.summary.show;
  const noted = notedFigures(t, distances).filter((f) => f.source === "noted");
  return [
    { label: "Sources", text: sourcesSentence(t) },
    ...(t.pulls !== null && t.pulls.length > 0 ? [{ label: "Pulls", text: pullsSentence(t, distances) }] : []),
    ...(t.take.track === null || t.gaps.length > 0 ? [{ label: "Log", text: logWords(t) }] : []),
    ...(noted.length > 0 ? [{ label: "Noted", text: sentenceOf(noted) }] : []),
    ...takeFindings(t),
  ];
}

function pullsSentence(t: TakeSummary, distances: DistanceSystem): string {
  const pulls = t.pulls ?? [];
  const words = pulls.slice(0, PULLS_SAID).map((pull) => {
    const way = `${distance(pull.fromM, distances)} to ${distance(pull.toM, distances)}`;
    return `${way} at ${frameTimecode(t, pull.startFrame)}, ${plural(pull.frames, "frame")}`;
  });
  const more = pulls.length - words.length;
  return `${words.join("; ")}${more > 0 ? `; ${more} more in day.json` : ""}.`;
}

function takeFindings(t: TakeSummary): readonly HangingLine[] {
  const findings = worstFirst(openFindings(t.findings));
  const shown = findings.slice(0, FINDINGS_SHOWN).map((finding) => ({
    label: SEVERITY_WORDS[finding.severity],
    text: `${messageSentence(finding)} ${finding.code}`,
    style: severityStyle(finding.severity),
  }));
  const more = findings.length - shown.length;
  return more <= 0 ? shown : [...shown, { label: "More", text: `${plural(more, "finding")} of this take under Findings.` }];
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
