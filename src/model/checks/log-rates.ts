/** Timecode of the logs against the show's rate. */
import { MATCH } from "../../core/findings/match.ts";
import { nominalRate, rateLabel } from "../../time/frame-rate.ts";
import type { DayContext } from "./day.ts";

/** One log of another rate is a recorder's setting; when all say the same, the show's rate is the likelier slip. */
const FEWEST_LOGS = 2;

/** One finding a day, at the first log: all logs with timecode are at one rate, and neither the show nor a note says it. */
export function checkLogRates({ input, show, tell }: DayContext): void {
  const timed = input.logs.filter((log) => log.timing.kind === "timecode");
  const [first] = timed;
  const rate = first?.keys.rate ?? null;
  if (first === undefined || rate === null || timed.length < FEWEST_LOGS || nominalRate(rate) === nominalRate(show.rate)) return;
  if (timed.some((log) => log.keys.rate === null || nominalRate(log.keys.rate) !== nominalRate(rate))) return;
  if (input.notes.some((note) => note.rate !== null)) return;
  tell(MATCH.ratesDiffer, {
    place: first.keyPlace("rate"),
    field: "rate",
    message: `All ${timed.length} logs of the day count timecode at ${rateLabel(rate)} frames a second, and the show at ${rateLabel(show.rate)}.`,
    hint: `If the cameras ran at ${rateLabel(rate)}, correct rate in show.yaml, or write the rate of this day's takes into the column "rate" of the notes. If only the recorders did, nothing needs to be done.`,
  });
}
