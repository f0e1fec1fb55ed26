/** What the findings of the show can be filtered by: severity, day, kind of file, code. */
import { compareText, type Finding } from "../../core/finding.ts";
import { findingKind } from "../../core/findings/catalogue.ts";
import { plural, sentenceCase } from "../../format/words.ts";
import type { DayRef } from "../context.ts";
import { chipsOf, type FilterBar, type FilterGroup } from "../filters.ts";
import { dayShort } from "../names.ts";
import type { Facet } from "../table.ts";

/** The date of the day a finding belongs to; empty for the show, the kit and what shows only across days. */
export interface DatedFinding {
  readonly finding: Finding;
  readonly date: string;
}

const SEVERITIES: readonly (readonly [value: string, label: string])[] = [
  ["error", "Errors"],
  ["check", "To check"],
  ["remark", "Remarks"],
  ["accepted", "Accepted"],
];
/** Value of the facet `day` for what belongs to no one day. */
const SHOW = "show";

const FOLDERS: Readonly<Record<string, string>> = { logs: "lens logs", stills: "stills", calibration: "calibration tables" };
const NO_FILE = "no one file";

export function findingFacets({ finding, date }: DatedFinding): readonly Facet[] {
  return [
    { name: "severity", value: finding.accepted == null ? finding.severity : "accepted" },
    { name: "day", value: date === "" ? SHOW : date },
    { name: "file", value: fileKind(finding.file) },
    { name: "code", value: finding.code },
  ];
}

/** "lens logs", "stills" and "calibration tables" for the files of such a folder, else the file's own name. */
function fileKind(file: string | null): string {
  if (file === null) return NO_FILE;
  const parts = file.split("/");
  return FOLDERS[parts.at(-2) ?? ""] ?? parts.at(-1) ?? file;
}

/** The chips for findings, those without one left out. Codes are many: they are folded, with what each means. */
export function findingBar(findings: readonly DatedFinding[], days: readonly DayRef[]): FilterBar {
  const facets = findings.flatMap(findingFacets);
  const counted = (name: string) => chipsOf(facets, name);
  const group = (
    label: string,
    name: string,
    order: (a: string, b: string) => number,
    labelOf: (value: string) => string,
    folded = false,
  ): FilterGroup => ({
    label,
    folded,
    chips: counted(name)
      .sort((a, b) => order(a.value, b.value))
      .map((chip) => ({ ...chip, label: labelOf(chip.value) })),
  });
  const rank = (value: string) => SEVERITIES.findIndex(([severity]) => severity === value);
  const dayOf = new Map(days.map((day) => [day.date, day]));
  const dayLabel = (value: string) => {
    const day = dayOf.get(value);
    return day === undefined ? "Show and kit" : dayShort(day);
  };
  const groups = [
    group(
      "Severity",
      "severity",
      (a, b) => rank(a) - rank(b),
      (value) => SEVERITIES[rank(value)]?.[1] ?? value,
    ),
    group("Day", "day", (a, b) => Number(b === SHOW) - Number(a === SHOW) || compareText(a, b), dayLabel),
    group("File", "file", compareText, sentenceCaseOfWords),
    group("Codes", "code", compareText, (code) => `${code} ${findingKind(code)?.title ?? ""}`.trim(), true),
  ];
  return {
    groups: groups.filter(({ chips }) => chips.length > 1),
    label: "Find in these findings",
    one: "finding",
    many: "findings",
    wayOut: "Take a filter off, or show all.",
    names: "severity day file code",
    all: findings.length === 1 ? "1 finding." : `All ${plural(findings.length, "finding")} shown.`,
  };
}

/** A file keeps its name as it is written. */
function sentenceCaseOfWords(value: string): string {
  return value.includes(".") ? value : sentenceCase(value);
}
