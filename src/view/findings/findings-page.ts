/** The findings of the whole show, and the glossary of every code. */
import { countFindings, type Finding } from "../../core/finding.ts";
import { FINDING_KINDS } from "../../core/findings/catalogue.ts";
import { thousands } from "../../format/number.ts";
import { plural } from "../../format/words.ts";
import type { DayDigest } from "../../summary/digest-types.ts";
import type { PageModel, SiteContext } from "../context.ts";
import type { FilterBar } from "../filters.ts";
import { dayPath, FINDINGS_PATH, hrefTo } from "../links.ts";
import { dayShort, takeName } from "../names.ts";
import { pageBase } from "../page.ts";
import { type FileBeside, fileBeside } from "../table-files.ts";
import { type DatedFinding, findingBar, findingFacets } from "./finding-filters.ts";
import { codeAnchor, countWords, type FindingView, findingView, severityClass, severityWord, worstFirst } from "./findings.ts";
import { findingsCsv } from "./findings-csv.ts";

/** More would make a page that browsers are slow with: the worst are here, all in the file beside it. */
export const MOST_FINDINGS = 2000;

export interface DayFindingList {
  readonly id: string;
  readonly heading: string;
  readonly href: string;
  readonly counts: string;
  readonly findings: readonly FindingView[];
  readonly hasFindings: boolean;
}

export interface GlossaryEntry {
  readonly id: string;
  readonly code: string;
  readonly word: string;
  readonly cls: string;
  readonly title: string;
  readonly explain: string;
  readonly seen: string;
}

export interface GlossaryGroup {
  readonly id: string;
  readonly heading: string;
  readonly entries: readonly GlossaryEntry[];
}

export interface FindingsPage extends PageModel {
  readonly counts: string;
  readonly filters: FilterBar;
  readonly hasFilters: boolean;
  readonly list: FileBeside;
  /** Said when the file has more findings than the page; else empty. */
  readonly more: string;
  readonly show: readonly FindingView[];
  readonly hasShow: boolean;
  readonly days: readonly DayFindingList[];
  readonly hasDays: boolean;
  readonly glossary: readonly GlossaryGroup[];
}

const GROUP_WORDS: Readonly<Record<string, string>> = {
  CSV: "Reading files",
  LOG: "Lens logs",
  NOTE: "Notes",
  MATCH: "Joining logs and takes",
  KIT: "Kit and calibration",
  SHOW: "Show and day settings",
  CHECK: "Rules of the trade",
  OUT: "Written files",
};

export function findingsPage(digests: readonly DayDigest[], context: SiteContext): FindingsPage {
  const show = context.showFindings ?? [];
  const seen = countCodes([...show, ...digests.flatMap((d) => d.findings)]);
  const ofShow = countFindings(show);
  const sum = (severity: "error" | "check" | "remark") =>
    digests.reduce((total, d) => total + d.findingCounts[severity], ofShow[severity]);
  const takes = new Map(digests.map((d) => [d.date, takeNames(d)]));
  const all: readonly DatedFinding[] = [
    ...show.map((finding) => ({ finding, date: "" })),
    ...digests.flatMap((d) => d.findings.map((finding) => ({ finding, date: d.date }))),
  ];
  const worst = new Set(worstFirst(all.map(({ finding }) => finding)).slice(0, MOST_FINDINGS));
  const shown = all.filter(({ finding }) => worst.has(finding));
  const viewsOf = (date: string): readonly FindingView[] => {
    const own = shown.filter((one) => one.date === date);
    return worstFirst(own.map(({ finding }) => finding)).map((finding) => {
      const day = date === "" ? dateOf(finding) : date;
      return findingView(finding, {
        path: FINDINGS_PATH,
        date: day,
        takes: takes.get(day) ?? new Map(),
        facets: findingFacets({ finding, date }),
      });
    });
  };
  return {
    ...pageBase(
      {
        path: FINDINGS_PATH,
        title: "Findings",
        trail: [{ label: "Findings", path: FINDINGS_PATH }],
        styles: ["home.css", "more-chips.css", "findings.css"],
      },
      context,
    ),
    counts: countWords({ error: sum("error"), check: sum("check"), remark: sum("remark") }),
    filters: findingBar(shown, digests),
    hasFilters: shown.length > 1,
    list: fileBeside("all", all.length === 0 ? "" : findingsCsv(all)),
    more:
      all.length > shown.length
        ? `The ${thousands(shown.length)} worst of ${thousands(all.length)} findings. The filters look through these; all are in the file`
        : "",
    show: viewsOf(""),
    hasShow: show.length > 0,
    days: digests.map((d) => dayList(d, viewsOf(d.date))),
    hasDays: digests.length > 0,
    glossary: glossary(seen),
  };
}

function dayList(d: DayDigest, findings: readonly FindingView[]): DayFindingList {
  return {
    id: `day-${d.date}`,
    heading: dayShort(d),
    href: hrefTo(FINDINGS_PATH, dayPath(d.date, "findings")),
    counts: countWords(d.findingCounts),
    findings,
    hasFindings: findings.length > 0,
  };
}

function takeNames(d: DayDigest): ReadonlyMap<string, string> {
  return new Map(d.takes.map((t) => [t.address, takeName(t)]));
}

/** Date of the day whose file a finding stands in; empty for the files of the show. */
function dateOf(finding: Finding): string {
  return /^days\/([^/]+)\//.exec(finding.file ?? "")?.[1] ?? "";
}

function countCodes(findings: readonly Finding[]): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const f of findings) counts.set(f.code, (counts.get(f.code) ?? 0) + 1);
  return counts;
}

function glossary(seen: ReadonlyMap<string, number>): readonly GlossaryGroup[] {
  const groups = new Map<string, GlossaryEntry[]>();
  for (const kind of FINDING_KINDS) {
    const prefix = kind.code.replace(/\d+$/, "");
    const count = seen.get(kind.code) ?? 0;
    const entry: GlossaryEntry = {
      id: codeAnchor(kind.code),
      code: kind.code,
      word: severityWord(kind.severity),
      cls: severityClass(kind.severity),
      title: kind.title,
      explain: kind.explain.replaceAll("`", ""),
      seen: count === 0 ? "not in this show" : `${plural(count, "time")} in this show`,
    };
    const group = groups.get(prefix);
    if (group === undefined) groups.set(prefix, [entry]);
    else group.push(entry);
  }
  return [...groups].map(([prefix, entries]) => ({
    id: `codes-${prefix.toLowerCase()}`,
    heading: `${prefix}, ${(GROUP_WORDS[prefix] ?? prefix).toLowerCase()}`,
    entries,
  }));
}
