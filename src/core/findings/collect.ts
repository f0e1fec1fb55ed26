import { type Finding, finding } from "../finding.ts";
import { type FindingDetails, type FindingKind, findingOf } from "./kind.ts";

/** Findings of one code in one file beyond this number are counted and not listed. */
export const FINDINGS_PER_CODE_AND_FILE = 20;

/** Gathers findings while a file is read. */
export interface FindingCollector {
  add(kind: FindingKind, details: FindingDetails): void;
  /** As `add`, for findings that may come in thousands: the details are made only when the finding is listed. */
  addIn(file: string, kind: FindingKind, details: () => FindingDetails): void;
  addAll(findings: readonly Finding[]): void;
  /** All findings in the order added; then, for each code and file with too many, one that says how many more there are. */
  list(): Finding[];
}

/** Makes a collector that lists at most `limit` findings per code and file (0: all of them). */
export function collectFindings(limit = FINDINGS_PER_CODE_AND_FILE): FindingCollector {
  const kept: Finding[] = [];
  const counts = new Map<string, number>();
  /** Counts one more; true when it is to be listed. */
  const counted = (code: string, file: string | null): boolean => {
    const key = `${code}\n${file ?? ""}`;
    const count = (counts.get(key) ?? 0) + 1;
    counts.set(key, count);
    return limit === 0 || count <= limit;
  };
  const take = (found: Finding): void => {
    if (counted(found.code, found.file)) kept.push(found);
  };
  return {
    add: (kind, details) => take(findingOf(kind, details)),
    addIn: (file, kind, details) => {
      if (counted(kind.code, file)) kept.push(findingOf(kind, details()));
    },
    addAll: (findings) => findings.forEach(take),
    list: () => {
      const more = [...counts].filter(([, count]) => limit !== 0 && count > limit);
      return [
        ...kept,
        ...more.map(([key, count]) =>
          moreFinding(
            kept.find((f) => `${f.code}\n${f.file ?? ""}` === key),
            count - limit,
          ),
        ),
      ];
    },
  };
}

/** One finding in the place of `more` others of the same code and file. */
export function moreFinding(first: Finding | undefined, more: number): Finding {
  if (first === undefined) throw new RangeError("a limit of findings is at least 1");
  return Object.freeze({ ...besides(first, more), accepted: first.accepted, more });
}

function besides(first: Finding, more: number): Finding {
  return finding({
    code: first.code,
    severity: first.severity,
    place: first.file === null ? null : { file: first.file, line: null, column: null },
    field: first.field,
    message: `and ${more} more ${first.code} in this file`,
    hint: "Mend those listed; what remains is listed at the next run. `daybook check --max-findings 0` lists all.",
  });
}
