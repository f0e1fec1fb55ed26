/** Findings as the pages print them. */
import { isCaretLine } from "../../core/code-frame.ts";
import type { Finding, FindingCounts, Severity } from "../../core/finding.ts";
import { findingKind } from "../../core/findings/catalogue.ts";
import { thousands } from "../../format/number.ts";
import { plural } from "../../format/words.ts";
import { FINDINGS_PATH, hrefTo, takePath } from "../links.ts";
import type { Facet } from "../table.ts";

export interface FindingView {
  readonly word: string;
  readonly cls: string;
  readonly code: string;
  readonly codeHref: string;
  readonly message: string;
  readonly hint: string;
  /** `notes.csv:19:42`, or the words for a finding without a place. */
  readonly place: string;
  /** The line and the one before it, numbered, and the line of carets below; empty where the page does not show them. */
  readonly frame: string;
  readonly carets: string;
  readonly hasFrame: boolean;
  /** What the list can be filtered by; empty where no filters stand. */
  readonly facets: readonly Facet[];
  readonly take: string;
  readonly hasTake: boolean;
  readonly takeHref: string;
}

const WORDS: Readonly<Record<Severity, string>> = { error: "Error", check: "Check", remark: "Remark" };

export function severityWord(severity: Severity): string {
  return WORDS[severity];
}

export function severityClass(severity: Severity): string {
  return `sev-${severity}`;
}

/** Codes have a place in the glossary of the show-wide findings page. */
export function codeAnchor(code: string): string {
  return code.toLowerCase();
}

export function placeText(finding: Finding): string {
  if (finding.file === null) return "whole day";
  const column = finding.column === null ? "" : `:${finding.column}`;
  return finding.line === null ? finding.file : `${finding.file}:${finding.line}${column}`;
}

export interface FindingLinks {
  /** Page the finding is printed on. */
  readonly path: string;
  readonly date: string;
  /** Names of the takes that have a page, by address. */
  readonly takes: ReadonlyMap<string, string>;
  /** Lines around the findings, for a page that shows them. */
  readonly frames?: ReadonlyMap<Finding, readonly string[]> | undefined;
  readonly facets?: readonly Facet[];
}

export function findingView(finding: Finding, links: FindingLinks): FindingView {
  const name = finding.take === null ? undefined : links.takes.get(finding.take);
  const target = finding.take === null ? "" : takePath(links.date, finding.take);
  return {
    word: finding.accepted == null ? severityWord(finding.severity) : "Accepted",
    cls: severityClass(finding.accepted == null ? finding.severity : "remark"),
    code: finding.code,
    codeHref: hrefTo(links.path, FINDINGS_PATH, findingKind(finding.code) === null ? "glossary" : codeAnchor(finding.code)),
    message: finding.message,
    hint: finding.accepted == null ? finding.hint : `Accepted: ${finding.accepted}`,
    place: placeText(finding),
    ...frameOf(links.frames?.get(finding) ?? []),
    facets: links.facets ?? [],
    take: name ?? "",
    hasTake: name !== undefined && target !== links.path,
    takeHref: name === undefined ? "" : hrefTo(links.path, target),
  };
}

function frameOf(lines: readonly string[]): Pick<FindingView, "frame" | "carets" | "hasFrame"> {
  const last = lines[lines.length - 1] ?? "";
  const carets = isCaretLine(last) ? last : "";
  return { frame: (carets === "" ? lines : lines.slice(0, -1)).join("\n"), carets, hasFrame: lines.length > 0 };
}

/** "1 error, 4 to check, 2 remarks", or "nothing found". */
export function countWords(counts: FindingCounts): string {
  const words = countParts(counts).map((part) => part.text);
  return words.length === 0 ? "nothing found" : words.join(", ");
}

export interface CountPart {
  readonly text: string;
  readonly cls: string;
}

/** The parts of `countWords`, each with its colour class, the worst first. Severities without a finding are left out. */
export function countParts(counts: FindingCounts): readonly CountPart[] {
  const parts: CountPart[] = [];
  if (counts.error > 0) parts.push({ text: plural(counts.error, "error"), cls: severityClass("error") });
  if (counts.check > 0) parts.push({ text: `${thousands(counts.check)} to check`, cls: severityClass("check") });
  if (counts.remark > 0) parts.push({ text: plural(counts.remark, "remark"), cls: severityClass("remark") });
  return parts;
}

const RANK: Readonly<Record<Severity, number>> = { error: 0, check: 1, remark: 2 };

/** The worst first, what was accepted last; within one severity the order stays. */
export function worstFirst(findings: readonly Finding[]): readonly Finding[] {
  return [...findings].sort(
    (a, b) => Number(a.accepted != null) - Number(b.accepted != null) || RANK[a.severity] - RANK[b.severity],
  );
}
