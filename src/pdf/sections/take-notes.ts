/** Below a take's ribbon: its pulls, and what else is known of it, by where it comes from. */
import { openFindings } from "../../core/finding.ts";
import { NOT_CALCULATED } from "../../format/absent.ts";
import { dioptres } from "../../format/amounts.ts";
import { type DistanceSystem, distance, distanceNumber, distanceUnit } from "../../format/length.ts";
import { fixed, thousands } from "../../format/number.ts";
import { share } from "../../format/percent.ts";
import { listWords, plural, sentenceCase } from "../../format/words.ts";
import type { PullFigures, TakeSummary } from "../../summary/types.ts";
import { takeName } from "../../view/names.ts";
import type { Element } from "../document.ts";
import { messageSentence, SEVERITY_WORDS, severityStyle, worstFirst } from "../finding-words.ts";
import type { HangingLine } from "../hanging.ts";
import type { Report } from "../report.ts";
import { drawTable, type TableOptions, tableHeight } from "../table.ts";
import { frameTimecode } from "../take-words.ts";
import { absentOf, FIGURE_GROUPS, figuresOf, sourcesOf, type TakeFact } from "./take-facts.ts";

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
  const widths = 36 + 52 + 52 + 34 + 46 + 46 + 40 + 54 + 8 * 6;
  const columns = [
    { head: "Pull", width: 36 },
    { head: "Start", width: 52 },
    { head: "End", width: 52 },
    { head: "Frames", width: 34, align: "end" },
    { head: `From, ${unit}`, width: 46, align: "end" },
    { head: `To, ${unit}`, width: 46, align: "end" },
    { head: "Dioptres", width: 40, align: "end" },
    { head: "Depths", width: 54, align: "end" },
    { head: "Fastest, 1/m a second", width: report.flow.sheet.width - widths, align: "end" },
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
  return { columns: columns.slice(), rows, pad: 0.8, gap: 6, continued: `${takeName(t.take)}, continued` };
}

function depthsOf(pull: PullFigures): string {
  return pull.extentDepths === null ? NOT_CALCULATED : fixed(pull.extentDepths, 1);
}

/** Sources, log, noted, kit, calculated, absent, findings: one hanging line each; of the facts only those given. */
export function takeNotes(t: TakeSummary, facts: readonly TakeFact[]): readonly HangingLine[] {
  const absent = absentOf(facts);
  const look = figuresOf(facts, "lens look");
  return [
    ...sourcesLine(t, facts),
    { label: "Log", text: logLine(t, facts) },
    ...FIGURE_GROUPS.flatMap((group) => figuresLine(facts, group)),
    ...(absent === "" ? [] : [{ label: "Absent", text: absent }]),
    ...(look === "" ? [] : [{ label: "Lens look", text: `${sentenceCase(look)}.` }]),
    ...takeFindings(t),
  ];
}

/** A take in few lines: its pulls are a sentence; of the facts only those given. */
export function shortNotes(report: Report, t: TakeSummary, facts: readonly TakeFact[]): readonly HangingLine[] {
  const { distances } = report.summary.show;
  return [
    ...sourcesLine(t, facts),
    ...(t.pulls !== null && t.pulls.length > 0 ? [{ label: "Pulls", text: pullsSentence(t, distances) }] : []),
    ...(t.take.track === null || t.gaps.length > 0 || sourcesOf(facts) === "" ? [{ label: "Log", text: logLine(t, facts) }] : []),
    ...figuresLine(facts, "noted"),
    ...takeFindings(t),
  ];
}

function sourcesLine(t: TakeSummary, facts: readonly TakeFact[]): readonly HangingLine[] {
  const sources = sourcesOf(facts);
  const out = t.timecodeOut === null ? "" : `; out ${t.timecodeOut}`;
  return sources === "" ? [] : [{ label: "Sources", text: `${sources}${out}.` }];
}

function figuresLine(facts: readonly TakeFact[], group: (typeof FIGURE_GROUPS)[number]): readonly HangingLine[] {
  const text = figuresOf(facts, group);
  return text === "" ? [] : [{ label: sentenceCase(group), text: `${sentenceCase(text)}.` }];
}

/** What was logged; the end of the take where no line of sources says it. */
function logLine(t: TakeSummary, facts: readonly TakeFact[]): string {
  const out = sourcesOf(facts) !== "" || t.timecodeOut === null ? "" : ` Out ${t.timecodeOut}.`;
  return `${logWords(t)}${out}`;
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

function gapWords({ frames, from, to }: TakeSummary["gaps"][number]): string {
  return frames === 1 ? `1 frame at ${from}` : `${plural(frames, "frame")} ${from} to ${to}`;
}

function logWords(t: TakeSummary): string {
  if (t.take.track === null) return "No log: what is shown is from the notes and the kit.";
  const files = listWords(t.take.logFiles.map((file) => file.replace(/^.*\//, "")));
  const logged = `${thousands(t.framesLogged)} of ${thousands(t.framesExpected)} frames logged (${share(t.framesLogged, t.framesExpected)})`;
  const gaps = t.gaps.slice(0, 4).map(gapWords);
  const more = t.gaps.length > 4 ? ` and ${t.gaps.length - 4} more gaps` : "";
  const missing = gaps.length === 0 ? "" : ` Not logged: ${gaps.join("; ")}${more}.`;
  return `${logged}, ${files}.${missing}`;
}
