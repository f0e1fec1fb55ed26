import { type Finding, finding } from "../finding.ts";
import { type FindingDetails, type FindingKind, findingOf } from "./kind.ts";

/** Findings of one code in one file beyond this number are counted and not listed. */
export const FINDINGS_PER_CODE_AND_FILE = 20;

/** Gathers findings while a file is read. */
export interface FindingCollector {
  add(kind: FindingKind, details: FindingDetails): void;
  addAll(findings: readonly Finding[]): void;
  /** All findings in the order added; then, for each code and file with too many, one that says how many more there are. */
  list(): Finding[];
}

/** Makes a collector that lists at most `limit` findings per code and file (0: all of them). */
export function collectFindings(limit = FINDINGS_PER_CODE_AND_FILE): FindingCollector {
  const kept: Finding[] = [];
  const counts = new Map<string, { first: Finding; count: number }>();
  const take = (found: Finding): void => {
    const key = `${found.code}\n${found.file ?? ""}`;
    const seen = counts.get(key);
    if (seen === undefined) counts.set(key, { first: found, count: 1 });
    else seen.count++;
    if (limit === 0 || seen === undefined || seen.count <= limit) kept.push(found);
  };
  return {
    add: (kind, details) => take(findingOf(kind, details)),
    addAll: (findings) => findings.forEach(take),
    list: () => {
      const more = [...counts.values()].filter(({ count }) => limit !== 0 && count > limit);
      return [...kept, ...more.map(({ first, count }) => summary(first, count - limit))];
    },
  };
}

function summary(first: Finding, more: number): Finding {
  return finding({
    code: first.code,
    severity: first.severity,
    place: first.file === null ? null : { file: first.file, line: null, column: null },
    field: first.field,
    message: `and ${more} more ${first.code} in this file`,
    hint: "Mend those listed; what remains is listed at the next run.",
  });
}
