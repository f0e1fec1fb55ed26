/** What the day's clock says: when each camera rolled, and its lenses in turn. */
import { dayMinutes } from "../../format/time.ts";
import { countWords, listWords } from "../../format/words.ts";
import { type DayTimes, lensesOn } from "./day-times.ts";

/** More lenses than this are a list that nobody listens to: each once instead. */
const MOST_IN_TURN = 8;

export function clockTitle(times: DayTimes): string {
  if (times.cameras.length === 0) return "No camera rolled; hours of the day only";
  const parts = times.cameras.map((camera) => {
    const end = Math.max(...camera.rolls.map((r) => r.to));
    return `camera ${camera.camera} rolled from ${dayMinutes(Math.floor(camera.rolls[0]?.from ?? 0))} to ${dayMinutes(Math.floor(end))}`;
  });
  const words = parts.join(", ");
  return words.charAt(0).toUpperCase() + words.slice(1);
}

export function clockWords(times: DayTimes): string {
  const cameras = times.cameras.map((camera) => {
    const inTurn = lensesOn(camera.rolls).map((l) => l.words);
    const lenses =
      inTurn.length > MOST_IN_TURN
        ? `${countWords(inTurn.length - 1, "lens change")} between ${listWords([...new Set(inTurn)])}`
        : `lenses in turn ${listWords(inTurn)}`;
    return `Camera ${camera.camera}: ${countWords(camera.rolls.length, "clip")}; ${lenses}.`;
  });
  return [
    `Clock time from ${dayMinutes(times.from)} to ${dayMinutes(times.to)}; one block of the border is half an hour.`,
    ...cameras,
  ].join(" ");
}
