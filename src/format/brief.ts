/** Text cut to what a place can hold, and said to be cut. */
import { cutPlace } from "./text-cut.ts";

/** Whether the text is longer than `most` characters. */
function isLong(text: string, most: number): boolean {
  return [...text].length > most;
}

/**
 * The text up to the last whole word within `most` characters, followed by words that say where the rest stands; unchanged when it
 * fits. A word longer than the place is cut itself.
 *
 * @example brief("Boat drifted out of frame", 12, "rest in the notes") // "Boat drifted (rest in the notes)"
 */
export function brief(text: string, most: number, where: string): string {
  if (!isLong(text, most)) return text;
  const kept = text.slice(0, cutPlace(text, most));
  return `${kept.replace(/[\s,;:.]+$/, "")} (${where})`;
}

/** A text in two parts: together, with nothing between them, they are the text. */
export interface Folded {
  readonly beginning: string;
  /** Empty when the text is short enough to stand whole. */
  readonly rest: string;
}

/** What of a long text is seen before a reader asks for more. */
const SEEN = 240;
/** A rest shorter than the words that would stand for it is no rest. */
const LEAST_REST = 60;

/** The beginning of a long text up to a word's end, and the rest, which begins with the space after that word. */
export function folded(text: string): Folded {
  if (!isLong(text, SEEN + LEAST_REST)) return { beginning: text, rest: "" };
  const place = cutPlace(text, SEEN);
  return { beginning: text.slice(0, place), rest: text.slice(place) };
}
