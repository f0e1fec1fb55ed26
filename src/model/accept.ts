/** Findings of a day that somebody accepted with a reason. */
import type { Finding } from "../core/finding.ts";
import { isAcrossDays, markAccepted } from "../core/findings/accepted.ts";
import { CHECK } from "../core/findings/check.ts";
import { findingOf } from "../core/findings/kind.ts";
import type { Acceptance } from "../ingest/records.ts";

/**
 * The findings with the reasons of those that were accepted, in the same order, and after them a remark for each entry of day.yaml
 * that fits none. An entry fits by code, and by take where it names one.
 */
export function acceptFindings(findings: readonly Finding[], accepted: readonly Acceptance[]): Finding[] {
  const { findings: marked, idle } = markAccepted(findings, accepted, (entry, f) => entry.take === null || entry.take === f.take);
  return [
    ...marked,
    ...idle.map((entry) =>
      findingOf(CHECK.acceptedNothing, {
        place: entry.place,
        field: "accepted",
        message: `The day has no finding ${entry.code}${entry.take === null ? "" : ` of take ${entry.take}`} to accept.`,
        hint: isAcrossDays(entry.code)
          ? "What is found across days is accepted in show.yaml."
          : "Take the entry away if the finding was mended, or correct its code or take. What is found in the kit is accepted in show.yaml.",
      }),
    ),
  ];
}
