/** Findings that somebody accepted with a reason: they stay in every list, and count no more. */
import type { Finding, Place } from "../finding.ts";
import { CHECK } from "./check.ts";
import { ACROSS_DAYS_CHECKS } from "./check-days.ts";
import { findingOf } from "./kind.ts";

/** A finding of show.yaml, of the kit or across days that somebody has looked at and leaves as it is (show.yaml `accepted`). */
export interface ShowAcceptance {
  readonly code: string;
  /** Relative to the show folder, such as `kit/lenses.csv`; `null`: every finding of the code. */
  readonly file: string | null;
  readonly reason: string;
  readonly place: Place;
}

/** The findings in the same order, those that an entry fits with its reason, and the entries that fit none. */
export function markAccepted<E extends { readonly code: string; readonly reason: string }>(
  findings: readonly Finding[],
  entries: readonly E[],
  fits: (entry: E, found: Finding) => boolean,
): { readonly findings: readonly Finding[]; readonly idle: readonly E[] } {
  const used = new Set<E>();
  const marked = findings.map((found) => {
    const entry = entries.find((one) => one.code === found.code && fits(one, found));
    if (entry === undefined) return found;
    used.add(entry);
    return Object.freeze({ ...found, accepted: entry.reason });
  });
  return { findings: marked, idle: entries.filter((entry) => !used.has(entry)) };
}

/**
 * Findings of the show with the reasons that show.yaml gives, and after them a remark for each entry that fits none.
 * @param of which findings these are: entries for those across days are left alone while the days are not read, and the other way round
 */
export function acceptInShow(findings: readonly Finding[], entries: readonly ShowAcceptance[], of: "show" | "days"): Finding[] {
  const own = entries.filter((entry) => isAcrossDays(entry.code) === (of === "days"));
  const { findings: marked, idle } = markAccepted(findings, own, (entry, f) => entry.file === null || entry.file === f.file);
  return [
    ...marked,
    ...idle.map((entry) =>
      findingOf(CHECK.acceptedNothing, {
        place: entry.place,
        field: "accepted",
        message: `${of === "show" ? "show.yaml and the kit have" : "The days have"} no finding ${entry.code}${entry.file === null ? "" : ` in ${entry.file}`} to accept.`,
        hint: "Take the entry away if the finding was mended, or correct its code or file. What is found in a day's own files is accepted in its day.yaml.",
      }),
    ),
  ];
}

/** Whether findings of a code are about more than one day: they are seen when all days have been read, and accepted in show.yaml. */
export function isAcrossDays(code: string): boolean {
  return Object.values(ACROSS_DAYS_CHECKS).some((kind) => kind.code === code);
}
