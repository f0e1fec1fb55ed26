/** Whether the calibration served at a frame, as a sentence. The words are those of the readout's last cell. */
import { NOT_LOGGED } from "./absent.ts";
import { sentenceCase } from "./words.ts";

export interface CalibrationSentence {
  readonly text: string;
  /** Whether the reader has to know it before using the figures. */
  readonly warns: boolean;
}

const NONE = "none: ";

/**
 * The sentence of a frame's calibration words; empty words are a frame that was not logged.
 *
 * @example calibrationSentence("outside the table on focus").text // "Outside the table on focus: its nearest point stands in."
 */
export function calibrationSentence(words: string): CalibrationSentence {
  if (words === "") return { text: `The lens is ${NOT_LOGGED}.`, warns: true };
  if (words.startsWith(NONE)) return { text: `Lens look not calculated: ${words.slice(NONE.length)}.`, warns: true };
  if (words.startsWith("outside")) return { text: `${sentenceCase(words)}: its nearest point stands in.`, warns: true };
  return { text: `${sentenceCase(words)}.`, warns: false };
}
