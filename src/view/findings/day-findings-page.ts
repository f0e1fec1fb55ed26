/** What the builder noticed about a day, the worst first, then by file. */
import { type Finding, openFindings, type Severity } from "../../core/finding.ts";
import { thousands } from "../../format/number.ts";
import type { PageModel } from "../context.ts";
import type { DayContext } from "../day/day-context.ts";
import { type DayHead, dayHead, dayTitle } from "../day/day-page.ts";
import { rowsSentence } from "../day/day-tables.ts";
import { type FileLink, fileLinks } from "../files.ts";
import { dayPath, FINDINGS_PATH, hrefTo } from "../links.ts";
import { dayShort } from "../names.ts";
import { pageBase } from "../page.ts";
import { countWords, type FindingView, findingView, worstFirst } from "./findings.ts";
import { MOST_FINDINGS } from "./findings-page.ts";

export interface FindingGroup {
  readonly id: string;
  readonly heading: string;
  readonly about: string;
  readonly findings: readonly FindingView[];
}

export interface DayFindingsPage extends PageModel, DayHead {
  readonly counts: string;
  /** Said when the file has more findings than the page; else empty. */
  readonly more: string;
  readonly groups: readonly FindingGroup[];
  readonly hasGroups: boolean;
  readonly rowsSentence: string;
  readonly glossaryHref: string;
  readonly files: readonly FileLink[];
  readonly hasFiles: boolean;
}

const GROUPS: readonly { readonly severity: Severity; readonly heading: string; readonly about: string }[] = [
  { severity: "error", heading: "Errors", about: "Figures are lost or wrong." },
  { severity: "check", heading: "To check", about: "A person should look." },
  { severity: "remark", heading: "Remarks", about: "Good to know." },
];

export function dayFindingsPage(day: DayContext): DayFindingsPage {
  const { summary, site } = day;
  const path = dayPath(summary.date, "findings");
  const ref = { date: summary.date, day: summary.day.record.day };
  const files = fileLinks(site, summary.date, path, (name) => name === "findings.csv");
  const views = (findings: readonly Finding[]) =>
    findings.map((f) => findingView(f, { path, date: summary.date, takes: day.names, frames: site.frames }));
  const shown = new Set(worstFirst(summary.findings).slice(0, MOST_FINDINGS));
  const kept = summary.findings.filter((f) => shown.has(f));
  const open = openFindings(kept);
  const groups: readonly FindingGroup[] = [
    ...GROUPS.map((group) => ({
      id: `group-${group.severity}`,
      heading: group.heading,
      about: group.about,
      findings: views(open.filter((f) => f.severity === group.severity)),
    })),
    {
      id: "group-accepted",
      heading: "Accepted",
      about: "Noticed, and accepted with a reason in day.yaml.",
      findings: views(kept.filter((f) => f.accepted != null)),
    },
  ].filter((group) => group.findings.length > 0);
  return {
    ...pageBase(
      {
        path,
        title: `Findings, ${dayTitle(day.summary.day.record)}`,
        trail: [
          { label: dayShort(ref), path: dayPath(summary.date) },
          { label: "Findings", path },
        ],
        styles: ["day.css"],
      },
      site,
    ),
    ...dayHead(day.summary.day.record, site),
    counts: countWords(summary.findingCounts),
    more:
      kept.length === summary.findings.length
        ? ""
        : `The ${thousands(kept.length)} worst of ${thousands(summary.findings.length)} findings stand here${files.length > 0 ? "; the file at the end of the page has all" : ""}.`,
    groups,
    hasGroups: groups.length > 0,
    rowsSentence: rowsSentence(day),
    glossaryHref: hrefTo(path, FINDINGS_PATH, "glossary"),
    files,
    hasFiles: files.length > 0,
  };
}
