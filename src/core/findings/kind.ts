import { type Finding, finding, type Place, type Severity } from "../finding.ts";

/** One kind of finding. `explain` is a paragraph for `daybook explain CODE` and for the glossary page. */
export interface FindingKind {
  readonly code: string;
  readonly severity: Severity;
  readonly title: string;
  readonly explain: string;
}

/** What a single finding adds to its kind. */
export interface FindingDetails {
  readonly place?: Place | null;
  readonly field?: string | null;
  readonly message: string;
  readonly hint: string;
  readonly take?: string | null;
}

/** Makes a finding of a kind: code and severity come from the catalogue, so that both are said in one place only. */
export function findingOf(kind: FindingKind, details: FindingDetails): Finding {
  return finding({ code: kind.code, severity: kind.severity, ...details });
}
