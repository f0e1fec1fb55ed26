/** Findings as the report says them. */
import type { Finding, Severity } from "../core/finding.ts";
import { thousands } from "../format/number.ts";
import type { DaySummary } from "../summary/types.ts";
import { takeName } from "../view/names.ts";
import type { TextStyle } from "./ink.ts";
import { PRINT } from "./palette.ts";
import { TYPE } from "./report.ts";

/** Always beside the colour. */
export const SEVERITY_WORDS: Readonly<Record<Severity, string>> = { error: "Error", check: "Check", remark: "Remark" };

const ORDER: readonly Severity[] = ["error", "check", "remark"];

export function severityStyle(severity: Severity): TextStyle {
  if (severity === "remark") return { ...TYPE.strong, color: PRINT.ink2 };
  return { ...TYPE.strong, color: severity === "error" ? PRINT.error : PRINT.check };
}

/** Errors, then things to check, then remarks; within these in the order given. */
export function worstFirst(findings: readonly Finding[]): readonly Finding[] {
  return ORDER.flatMap((severity) => findings.filter((finding) => finding.severity === severity));
}

/** "24B take 3 A" for a finding of a take, the file for one that has no take, `null` for neither. */
export function findingTakeName(summary: DaySummary, finding: Finding): string | null {
  const take = finding.take === null ? undefined : summary.takes.find((t) => t.take.address === finding.take);
  return take === undefined ? (finding.take ?? finding.file) : takeName(take.take);
}

/** What is quoted stays as written. */
const QUOTED_OR_COUNT = /"[^"]*"|(?<![\w.:,-])\d{4,}(?= (?:of \d+ )?(?:more )?(?:rows|frames|lines)\b)/g;

/**
 * The message as a sentence, with its full stop and with counts in groups as everywhere in the report; its first letter stays,
 * as it may be the name of a column.
 */
export function messageSentence({ message }: Finding): string {
  const grouped = message.replace(QUOTED_OR_COUNT, (part) => (part.startsWith('"') ? part : thousands(Number(part))));
  return /[.!?]$/.test(grouped) ? grouped : `${grouped}.`;
}

/** `days/2031-05-06/notes.csv:19:42`, or the file alone. */
export function findingPlace(finding: Finding): string {
  if (finding.file === null) return "";
  const line = finding.line === null ? "" : `:${finding.line}${finding.column === null ? "" : `:${finding.column}`}`;
  return `${finding.file}${line}`;
}
