/** The hours of the day: meals, takes outside call and wrap, dates of logs around midnight. */
import { CHECK } from "../../core/findings/check.ts";
import { rationalToNumber } from "../../core/rational.ts";
import { nominalRate } from "../../time/frame-rate.ts";
import { beginOfShootingDay, secondsInto } from "../order.ts";
import type { Take } from "../types.ts";
import type { DayContext } from "./day.ts";
import { round } from "./words.ts";

/** Share of the takes that must lie between call and wrap before timecode is taken for the time of day. */
const HABIT = 0.8;
const FEWEST_TAKES = 5;

export function checkHours(context: DayContext): void {
  mealsLate(context);
  takesOutside(context);
  datesNotPastMidnight(context);
}

function mealsLate({ input, show, tell }: DayContext): void {
  const { call, meals } = input.record;
  let from = call === null ? null : { minutes: call, words: "call" };
  for (const [i, meal] of meals.entries()) {
    const hours = from === null ? 0 : (meal.out - from.minutes) / 60;
    if (from !== null && hours > show.limits.mealHours + 1e-9) {
      tell(CHECK.mealLate, {
        place: input.keyPlace(`meals.${i}.out`),
        field: `meals.${i}.out`,
        message: `The meal at ${clock(meal.out)} is ${duration(meal.out - from.minutes)} after ${from.words} (${clock(from.minutes)}); the show looks at more than ${round(show.limits.mealHours)} h.`,
        hint: "Correct the time if it is a slip. This is a record, not a legal finding: agreements and local law decide. The limit is check.meal_hours in show.yaml.",
      });
    }
    if (meal.in !== null) from = { minutes: meal.in, words: "the meal before" };
  }
}

function takesOutside({ takes, input, show, tell }: DayContext): void {
  const { call, wrap } = input.record;
  if (call === null || wrap === null || wrap <= call) return;
  const begin = beginOfShootingDay([], call);
  // the hour before the call is that of order.ts
  const length = (wrap - call + 60 + show.limits.afterWrapMinutes) * 60;
  const timed = takes.filter((take) => take.note?.tcIn != null && take.inFrame !== null);
  const outside = timed.filter((take) => secondsInto(begin, secondOfDay(take)) > length);
  if (timed.length < FEWEST_TAKES || timed.length - outside.length < HABIT * timed.length) return;
  for (const take of outside) {
    tell(CHECK.takeOutsideHours, {
      place: take.note?.tcIn?.place ?? null,
      field: "tc_in",
      message: `The take begins at ${take.note?.tcIn?.text ?? ""}, and the day went from ${clock(call)} to ${clock(wrap)}; the other takes lie within it.`,
      hint: "Correct tc_in, or call and wrap in day.yaml. If the camera's clock was off, say so in the remarks and accept the finding; a take of another day goes into that day's folder.",
      take: take.address,
    });
  }
}

/** A log of the next date whose take begins after the call and before midnight. */
function datesNotPastMidnight({ takes, input, tell }: DayContext): void {
  const { call } = input.record;
  if (call === null) return;
  for (const log of input.logs) {
    const { date } = log.keys;
    if (date === null || date <= input.date) continue;
    const take = takes.find((one) => one.logFiles.includes(log.file) && one.inFrame !== null);
    if (take === undefined || secondOfDay(take) < beginOfShootingDay([], call)) continue;
    tell(CHECK.dateNotPastMidnight, {
      place: log.keyPlace("date"),
      field: "date",
      message: `The log is of ${date}, and its take begins at ${take.note?.tcIn?.text ?? "a time"} on ${input.date}, before midnight.`,
      hint: "If the recorder's date was wrong, correct it in the log; else move the log, and the take, to the folder of its own day.",
      take: take.address,
    });
  }
}

function secondOfDay(take: Take): number {
  return (take.inFrame as number) / (take.dropFrame ? rationalToNumber(take.rate) : nominalRate(take.rate));
}

/** `13:05`, past midnight `00:40+1`. */
function clock(minutes: number): string {
  const days = Math.floor(minutes / 1440);
  const [hour, minute] = [Math.floor((minutes % 1440) / 60), minutes % 60].map((part) => String(part).padStart(2, "0"));
  return `${hour}:${minute}${days > 0 ? `+${days}` : ""}`;
}

function duration(minutes: number): string {
  const rest = minutes % 60;
  return `${Math.floor(minutes / 60)} h${rest === 0 ? "" : ` ${rest} min`}`;
}
