/** From the records of a day to its takes: who they are, when they ran, which log rows and which lens belong to them. */
import { type Finding, sortFindings } from "../core/finding.ts";
import { rationalToNumber } from "../core/rational.ts";
import type { DayInput, ShowInput } from "../ingest/records.ts";
import { nominalRate } from "../time/frame-rate.ts";
import { attributeFindings } from "./attribute.ts";
import { checkDay } from "./checks/day.ts";
import { checkTake } from "./checks/take.ts";
import { completeTake } from "./complete-take.ts";
import type { TakeDraft } from "./draft.ts";
import { draftTakes } from "./drafts.ts";
import { matchLogs } from "./match.ts";
import { beginOfShootingDay, secondsInto } from "./order.ts";
import { stillFindings } from "./still-lens.ts";
import type { Day, Take } from "./types.ts";

/**
 * Joins a day's notes and logs.
 *
 * @param earlier findings of reading the show and the day; they are kept
 * @returns takes in shooting order, then by camera; every log row counted once in `rows`
 */
export function buildDay(show: ShowInput, input: DayInput, earlier: readonly Finding[]): Day {
  const findings: Finding[] = [...earlier];
  const drafts = draftTakes(show.show, input, findings);
  const matching = matchLogs(drafts, input.logs, input.record);
  findings.push(...matching.findings);

  const starts = drafts.filter((draft) => draft.inFrame !== null).map(secondOfDay);
  const begin = beginOfShootingDay(starts, input.record.call);
  const takes: Take[] = [];
  let previousOrder = 0;
  drafts.forEach((draft, i) => {
    const order = draft.inFrame === null ? previousOrder : secondsInto(begin, secondOfDay(draft));
    previousOrder = order;
    const take = completeTake(draft, matching.served.get(i) ?? null, order, show, input, findings);
    takes.push(take);
    findings.push(...checkTake(take, show.show, input, show.kit), ...stillFindings(take, show.show.limits));
  });
  const position = new Map(takes.map((take, i) => [take, i]));
  takes.sort(
    (a, b) =>
      a.order - b.order ||
      (a.camera < b.camera ? -1 : a.camera > b.camera ? 1 : (position.get(a) as number) - (position.get(b) as number)),
  );
  return Object.freeze({
    show: show.show,
    date: input.date,
    record: input.record,
    takes,
    rows: matching.rows,
    logs: matching.logs,
    findings: sortFindings(attributeFindings([...findings, ...checkDay(takes, show.show, input, show.kit)], takes)),
    files: input.files,
  });
}

function secondOfDay(draft: TakeDraft): number {
  return (draft.inFrame as number) / (draft.dropFrame ? rationalToNumber(draft.rate) : nominalRate(draft.rate));
}
