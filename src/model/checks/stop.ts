/** The stop: note against log, fractions added to the number, and jumps between two frames. */
import { CHECK } from "../../core/findings/check.ts";
import { FULL_STOPS, inBetweenStop, isStopLabel, stopsBetween } from "../../optics/exposure.ts";
import { loggedTrack, logPlaceWords, type TakeContext } from "./context.ts";
import { round, sortedValues } from "./words.ts";

/** Fractions of a stop as people say them, the commonest first. */
const FRACTIONS: readonly (readonly [string, number])[] = [
  ["1/2", 1 / 2],
  ["1/3", 1 / 3],
  ["2/3", 2 / 3],
];
/** Under T4 odd numbers are engraved on lenses (T1.5, T2.3), so that without a log nothing is said of them. */
const SMALLEST_SUM_WITHOUT_LOG = 4;

/** The noted stop against the range that holds nine logged frames of ten: one frame of noise is not a stop pull. */
export function checkStop(context: TakeContext): void {
  const { take, limits, logFile, tell } = context;
  const noted = take.note?.stop ?? null;
  if (noted === null) return;
  const kind = noted.value.kind === "f" ? "f" : "t";
  const logged = sortedValues(take, kind);
  const widest = logged[Math.floor(0.05 * (logged.length - 1))] ?? null;
  const deepest = logged[Math.ceil(0.95 * (logged.length - 1))] ?? null;
  if (checkSum(context, widest, deepest)) return;
  if (widest === null || deepest === null || logFile === null) return;
  const from = Math.min(noted.value.from, noted.value.to);
  const to = Math.max(noted.value.from, noted.value.to);
  const apart = Math.max(stopsBetween(widest, from), stopsBetween(to, deepest));
  if (apart <= limits.stopDifference) return;
  const letter = kind.toUpperCase();
  const range = widest === deepest ? `${letter}${round(widest)}` : `${letter}${round(widest)} to ${letter}${round(deepest)}`;
  tell(CHECK.stopDiffers, {
    place: noted.place,
    field: "stop",
    message: `The note says ${noted.text}, the log ${range} (${round(apart)} stop apart). The log's is shown.`,
    hint: `Correct the note, or look at ${logFile}. A pull is written 4-5.6.`,
  });
}

/**
 * A fraction of a stop that was added to the number: 5.6 and a half is T6.7, and 6.1 is what a pocket calculator makes of it.
 * With a log, only when the log has the stop that was meant; without one, only for numbers that no scale has.
 */
function checkSum({ take, limits, tell }: TakeContext, widest: number | null, deepest: number | null): boolean {
  const noted = take.note?.stop ?? null;
  const written = /^[tf/ ]*(\d+(?:\.\d+)?)$/i.exec(noted?.text.trim() ?? "");
  if (noted === null || written === null || isStopLabel(Number(written[1]))) return false;
  const number = noted.value.from;
  for (const full of FULL_STOPS) {
    for (const [words, fraction] of FRACTIONS) {
      // written with one decimal: 5.6 1/3 comes out as 5.9
      if (Math.abs(Number(number.toFixed(1)) - Number((full + fraction).toFixed(1))) > 1e-9) continue;
      const meant = inBetweenStop(full, fraction) ?? full;
      const logSays =
        widest !== null &&
        deepest !== null &&
        Math.abs(stopsBetween(meant, widest)) <= limits.stopDifference &&
        Math.abs(stopsBetween(meant, deepest)) <= limits.stopDifference &&
        Math.abs(stopsBetween(meant, widest)) < Math.abs(stopsBetween(number, widest));
      const noScaleHasIt = widest === null && fraction === 1 / 2 && full >= SMALLEST_SUM_WITHOUT_LOG;
      if (!logSays && !noScaleHasIt) continue;
      tell(CHECK.fractionAdded, {
        place: noted.place,
        field: "stop",
        message: `${noted.text} is ${full} and ${round(fraction)} added up; ${full} ${words} is T${round(meant)}${logSays ? ", which is what the log has" : ""}.`,
        hint: `If ${full} and ${words} of a stop was meant, write "${full} ${words}".`,
      });
      return true;
    }
  }
  return false;
}

/** A stop that changes by more than the limit from one frame to the next: no hand and no motor is that fast. */
export function checkStopJumps(context: TakeContext): void {
  const logged = loggedTrack(context);
  const { take, limits, tell } = context;
  if (logged === null) return;
  const column = logged.track.columns.t === undefined ? "f" : "t";
  const values = logged.track.columns[column];
  if (values === undefined) return;
  const widest = (column === "t" ? take.lens?.widestT : take.lens?.widestF) ?? null;
  // a value that the lens cannot have is said already
  const possible = (value: number): boolean => widest === null || stopsBetween(value, widest) <= limits.widerThanLensStops;
  for (let i = 1; i < values.length; i++) {
    const before = values[i - 1] as number;
    const now = values[i] as number;
    const jump = Math.abs(stopsBetween(before, now));
    if (!(jump > limits.stopJumpStops) || !possible(before) || !possible(now)) continue;
    const cell = logged.log.cell(logged.track.row[i] as number, column);
    tell(CHECK.stopJumps, {
      place: cell.place,
      field: column,
      message: `The stop jumps from ${column.toUpperCase()}${round(before)} to ${column.toUpperCase()}${cell.text} within one frame, ${round(jump)} stop.`,
      hint: `A reading was probably lost or mistaken; look at the rows around it (${logPlaceWords(context)} on). The limit is check.stop_jump_stops in show.yaml.`,
    });
    return;
  }
}
