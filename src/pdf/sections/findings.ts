/** All findings, worst first: what is wrong, how to mend it, and where it stands. */
import { countFindings, type Finding, type FindingCounts, openFindings, type Severity } from "../../core/finding.ts";
import { plural } from "../../format/words.ts";
import { paragraph, sectionHead } from "../block.ts";
import type { Element } from "../document.ts";
import { findingPlace, findingTakeName, messageSentence, SEVERITY_WORDS, severityStyle } from "../finding-words.ts";
import type { TextStyle } from "../ink.ts";
import { type Report, TYPE } from "../report.ts";
import { drawTable, type TableRow } from "../table.ts";

/** Of one severity; the rest is in findings.csv of the pack. */
const MOST_LISTED = 200;

const SEVERITIES: readonly Severity[] = ["error", "check", "remark"];

export function findingsSection(report: Report): void {
  const { flow, summary, showFindings } = report;
  if (flow.left() < 220) flow.newPage();
  const section = sectionHead(report, "Findings", `${countsText(summary.findingCounts)}.`);
  report.begins("Findings", Math.max(flow.sheet.top, flow.y - 24));
  if (summary.findings.length === 0) paragraph(report, section, "Nothing was found.");
  else findingsTable(report, section, summary.findings);
  if (showFindings.length === 0) return;
  paragraph(report, section, `In show.yaml and the kit: ${countsText(countFindings(showFindings))}.`, { style: TYPE.strong });
  findingsTable(report, section, showFindings);
}

function countsText({ error, check, remark }: FindingCounts): string {
  return `${plural(error, "error")}, ${check} to check, ${plural(remark, "remark")}`;
}

function findingsTable(report: Report, section: Element, findings: readonly Finding[]): void {
  const width = report.flow.sheet.width - 44 - 46 - 78 - 3 * 8;
  const columns = [
    { head: "Severity", width: 44 },
    { head: "Code", width: 46 },
    { head: "What, and how to mend it", width },
    { head: "Take", width: 78 },
  ] as const;
  drawTable(report, section, {
    columns: columns.slice(),
    rows: [
      ...SEVERITIES.flatMap((severity) =>
        rowsOf(
          report,
          openFindings(findings).filter((finding) => finding.severity === severity),
          { text: SEVERITY_WORDS[severity], style: severityStyle(severity) },
        ),
      ),
      ...rowsOf(
        report,
        findings.filter((finding) => finding.accepted != null),
        { text: "Accepted", style: severityStyle("remark") },
      ),
    ],
    gap: 8,
    belowColumn: 2,
  });
}

function rowsOf(
  report: Report,
  all: readonly Finding[],
  word: { readonly text: string; readonly style: TextStyle },
): readonly TableRow[] {
  const { summary } = report;
  const rows = all.slice(0, MOST_LISTED).map((finding): TableRow => {
    const place = findingPlace(finding);
    const take = finding.take === null ? "" : (findingTakeName(summary, finding) ?? "");
    const mend = finding.accepted == null ? finding.hint : `Accepted: ${finding.accepted}`;
    return {
      cells: [word, finding.code, `${messageSentence(finding)} ${mend}`, take],
      below: place === "" ? null : { text: place, style: TYPE.source },
    };
  });
  const more = all.length - rows.length;
  if (more <= 0) return rows;
  return [...rows, { cells: [word, "", `${plural(more, "more finding")} of this kind: all are in findings.csv of the pack.`, ""] }];
}
