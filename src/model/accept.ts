/** Findings that somebody accepted with a reason: they stay in every list, and count no more. */
import type { Finding } from "../core/finding.ts";
import { CHECK } from "../core/findings/check.ts";
import { findingOf } from "../core/findings/kind.ts";
import type { Acceptance } from "../ingest/records.ts";

/**
 * The findings with the reasons of those that were accepted, in the same order, and after them a remark for each entry of day.yaml
 * that fits none. An entry fits by code, and by take where it names one.
 */
export function acceptFindings(findings: readonly Finding[], accepted: readonly Acceptance[]): Finding[] {
  if (accepted.length === 0) return [...findings];
  const used = new Set<Acceptance>();
  const marked = findings.map((found) => {
    const entry = accepted.find((one) => one.code === found.code && (one.take === null || one.take === found.take));
    if (entry === undefined) return found;
    used.add(entry);
    return Object.freeze({ ...found, accepted: entry.reason });
  });
  const idle = accepted.filter((entry) => !used.has(entry));
  return [
    ...marked,
    ...idle.map((entry) =>
      findingOf(CHECK.acceptedNothing, {
        place: entry.place,
        field: "accepted",
        message: `The day has no finding ${entry.code}${entry.take === null ? "" : ` of take ${entry.take}`} to accept.`,
        hint: "Take the entry away if the finding was mended, or correct its code or take.",
      }),
    ),
  ];
}
