import { nearestNames } from "../../core/nearest-name.ts";
import type { PlateKind, TakeStatus } from "../records.ts";
import { type Reading, read, refuse } from "./reading.ts";

const YES = ["y", "yes", "x", "*", "true", "\u2713", "\u2714", "o"];
const NO = ["", "n", "no", "false", "-"];

const STATUS: readonly TakeStatus[] = ["good", "ng", "incomplete", "false start", "tail slate"];
const PLATES: readonly PlateKind[] = ["hero", "clean", "reference", "element", "tile", "grid"];
const SOUND = ["sync", "mos"] as const;

/** Whether a take is circled: `y`, `yes`, `x`, `*` or a tick; blank, `n`, `no` or `-` is not. */
export function readCircled(text: string): Reading<boolean> {
  const word = text.trim().toLowerCase();
  if (YES.includes(word)) return read(true);
  if (NO.includes(word)) return read(false);
  return refuse(`not a mark: "${text.trim()}"`, "Write y, x or * for a circled take, or leave the cell blank.");
}

/** `good`, `ng`, `incomplete`, `false start` or `tail slate`; case, `_` and `-` do not matter. */
export function readStatus(text: string): Reading<TakeStatus> {
  // The nearest word to "no good" is "good".
  if (/^(no[ -]?good|n\.\s?g\.?|n\/g|bad)$/i.test(text.trim()))
    return refuse(`not a known word: "${text.trim()}"`, "Write ng for a take that is no good.");
  return oneOf(text, STATUS);
}

export function readPlate(text: string): Reading<PlateKind> {
  return oneOf(text, PLATES);
}

export function readSound(text: string): Reading<"sync" | "mos"> {
  return oneOf(text, SOUND);
}

/** One of a few words; case and the sign between two words do not matter. Refused with the nearest word. */
export function oneOf<W extends string>(text: string, words: readonly W[]): Reading<W> {
  const fold = (word: string): string =>
    word
      .trim()
      .toLowerCase()
      .replace(/[\s_-]+/g, " ");
  const word = words.find((w) => fold(w) === fold(text));
  if (word !== undefined) return read(word);
  const [near] = nearestNames(text.trim().toLowerCase(), words);
  const list = `${words.slice(0, -1).join(", ")} or ${words.at(-1)}`;
  return refuse(`not a known word: "${text.trim()}"`, `Write ${list}.${near === undefined ? "" : ` Did you mean "${near}"?`}`);
}
