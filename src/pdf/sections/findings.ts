/** All findings, worst first: what is wrong, how to mend it, and where it stands. */
import { countFindings, type Finding, openFindings, type Severity } from "../../core/finding.ts";
import { plural } from "../../format/words.ts";
import { paragraph, sectionHead } from "../block.ts";
import type { Element } from "../document.ts";
import { findingPlace, findingTakeName, messageSentence, SEVERITY_WORDS, severityStyle } from "../finding-words.ts";
import type { TextStyle } from "../ink.ts";
import { type Report, TYPE } from "../report.ts";
import { drawTable, type TableRow } from "../table.ts";

/** Of one code and severity in full; the rest is in findings.csv of the pack. */
const MOST_OF_A_CODE = 12;
/** Takes or places that the rest is named by. */
const MOST_NAMES = 200;

const SEVERITIES: readonly Severity[] = ["error", "check", "remark"];

export const FINDINGS_TITLE = "Findings and accepted findings";
export const FINDINGS_TARGET = "findings";

/** The day's findings; those that a reader is not concerned with may be left out. */
export function findingsSection(report: Report, wanted: (finding: Finding) => boolean = () => true): void {
  const { flow, summary } = report;
  const findings = summary.findings.filter(wanted);
  const { error, check, remark } = countFindings(openFindings(findings));
  const accepted = findings.filter((finding) => finding.accepted != null);
  if (flow.left() < 220) flow.newPage();
  const remarks = findings.length < summary.findings.length && remark === 0 ? "" : `, ${plural(remark, "remark")}`;
  const counts = `${plural(error, "error")}, ${check} to check${remarks}, ${accepted.length} accepted.`;
  const section = sectionHead(report, FINDINGS_TITLE, counts);
  report.places.mark(FINDINGS_TARGET, flow.y - 24);
  report.bookmark.add(FINDINGS_TITLE, flow.y - 24);
  if (findings.length === 0) paragraph(report, section, "Nothing was found.");
  else findingsTable(report, section, findings);
  const { showFindings } = report;
  if (showFindings.length === 0) return;
  const whole = countFindings(showFindings);
  const words = `${plural(whole.error, "error")}, ${whole.check} to check, ${plural(whole.remark, "remark")}`;
  flow.y += 10;
  flow.need(80);
  paragraph(report, section, `In show.yaml and the kit: ${words}.`, { style: TYPE.strong });
  findingsTable(report, section, showFindings);
}

function findingsTable(report: Report, section: Element, findings: readonly Finding[]): void {
  const { flow } = report;
  const accepted = findings.filter((finding) => finding.accepted != null);
  const ofTakes = findings.some((finding) => finding.take !== null);
  const width = flow.sheet.width - 44 - 46 - 2 * 8 - (ofTakes ? 78 + 8 : 0);
  const columns = [
    { head: "Severity", width: 44 },
    { head: "Code", width: 46 },
    { head: "What, and how to mend it", width },
    ...(ofTakes ? [{ head: "Take", width: 78 }] : []),
  ];
  const rows = [
    ...SEVERITIES.flatMap((severity) =>
      rowsOf(
        report,
        openFindings(findings).filter((finding) => finding.severity === severity),
        { text: SEVERITY_WORDS[severity], style: severityStyle(severity) },
      ),
    ),
    ...rowsOf(report, accepted, { text: "Accepted", style: severityStyle("remark") }),
  ];
  drawTable(report, section, {
    columns,
    rows: ofTakes ? rows : rows.map((row) => ({ ...row, cells: row.cells.slice(0, columns.length) })),
    gap: 8,
    belowColumn: 2,
  });
}

interface Word {
  readonly text: string;
  readonly style: TextStyle;
}

/** Rows of one severity: of a code that comes often the first in full, the others by take or place. */
function rowsOf(report: Report, all: readonly Finding[], word: Word): readonly TableRow[] {
  const rows: TableRow[] = [];
  for (const code of new Set(all.map((finding) => finding.code))) {
    const mine = all.filter((finding) => finding.code === code);
    const inFull = mine.length <= MOST_OF_A_CODE + 1 ? mine : mine.slice(0, MOST_OF_A_CODE);
    inFull.forEach((finding, i) => {
      rows.push(findingRow(report, finding, word, inFull[i - 1] ?? null));
    });
    const others = mine.slice(inFull.length);
    if (others.length > 0) rows.push(othersRow(report, others, word));
  }
  return rows;
}

/** A hint that the row above gives already is not said again. */
function findingRow({ summary }: Report, finding: Finding, word: Word, above: Finding | null): TableRow {
  const place = findingPlace(finding);
  const take = finding.take === null ? "" : (findingTakeName(summary, finding) ?? "");
  const mend = finding.accepted == null ? finding.hint : `Accepted: ${finding.accepted}`;
  const said = finding.accepted == null && above !== null && above.hint === finding.hint;
  return {
    cells: [word, finding.code, said ? messageSentence(finding) : `${messageSentence(finding)} ${mend}`, take],
    below: place === "" ? null : { text: place, style: TYPE.source },
  };
}

function othersRow({ summary }: Report, others: readonly Finding[], word: Word): TableRow {
  const names = [...new Set(others.map((finding) => findingTakeName(summary, finding) ?? findingPlace(finding)))];
  const shown = names.filter((name) => name !== "").slice(0, MOST_NAMES);
  const rest = names.length > shown.length ? `, and ${names.length - shown.length} more` : "";
  const where = shown.length === 0 ? "" : ` ${shown.join(", ")}${rest}.`;
  return {
    cells: [
      word,
      others[0]?.code ?? "",
      `${plural(others.length, "more finding")} of this kind, in full in findings.csv of the pack.${where}`,
      "",
    ],
  };
}
