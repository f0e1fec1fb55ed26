import { type FrameRate, parseFrameRate } from "../../time/frame-rate.ts";
import { readNumber } from "./number.ts";
import { type Reading, read, refuse } from "./reading.ts";

/** A text that is not blank. */
export function readText(text: string): Reading<string> {
  const written = text.trim();
  return written === "" ? refuse("the text is empty", "Write a text, or delete the key.") : read(written);
}

/** `true` or `false` (also `yes`, `no`, `1`, `0`, in any case). */
export function readBoolean(text: string): Reading<boolean> {
  const word = text.trim().toLowerCase();
  if (["true", "yes", "1"].includes(word)) return read(true);
  if (["false", "no", "0"].includes(word)) return read(false);
  return refuse(`neither true nor false: "${text.trim()}"`, "Write true or false.");
}

/** A frame rate such as `24`, `23.976` or `24000/1001`. */
export function readRate(text: string): Reading<FrameRate> {
  const rate = parseFrameRate(text);
  return rate === null ? refuse(`not a frame rate: "${text.trim()}"`, rateHint(text)) : read(rate);
}

/** The rates that are written in many ways: as decimals and exactly. */
const SLOW_RATES = [
  ["23.976", "24000/1001"],
  ["29.97", "30000/1001"],
  ["47.952", "48000/1001"],
  ["59.94", "60000/1001"],
  ["119.88", "120000/1001"],
] as const;
/** How far from a rate a slip of it is: 23.97 and 29.98. */
const NEAR_RATE = 0.08;

function rateHint(text: string): string {
  const bare = text
    .trim()
    .replace(",", ".")
    .replace(/\s*(?:fps|frames\/s|p|i|hz|nd|ndf|df)$/i, "");
  const near = SLOW_RATES.find(([decimal]) => Math.abs(Number(bare) - Number(decimal)) < NEAR_RATE && Number(bare) % 1 !== 0);
  if (near !== undefined) return `Write ${near[0]}, or exactly ${near[1]}.`;
  const rate = parseFrameRate(bare);
  return rate === null ? "Write 24, 25, 29.97 or an exact 24000/1001." : `Write ${bare}.`;
}

/** A whole number, negative ones included. Refused: more than nine digits. */
export function readWhole(text: string): Reading<number> {
  const number = readNumber(text);
  if (!number.ok) return number;
  if (Math.abs(number.value) >= 1e9) return refuse(`too large: "${text.trim()}"`, "Write a whole number of at most nine digits.");
  return Number.isInteger(number.value) ? number : refuse(`not a whole number: "${text.trim()}"`, "Write a whole number.");
}

/** No setting is larger. */
const LARGEST = 1e9;

/** A reader of numbers within limits, both ends included unless `above` is given. */
export function numberWithin(limits: { from?: number; above?: number; upTo?: number }): (text: string) => Reading<number> {
  return (text) => {
    const number = readNumber(text);
    if (!number.ok) return number;
    const { from = Number.NEGATIVE_INFINITY, above = Number.NEGATIVE_INFINITY, upTo = LARGEST } = limits;
    if (number.value >= from && number.value > above && number.value <= upTo) return number;
    const low = limits.above !== undefined ? `greater than ${above}` : `at least ${from}`;
    const range = limits.upTo === undefined ? low : `${low} and at most ${upTo}`;
    return refuse(`${number.value} is out of range`, `The number must be ${range}.`);
  };
}
