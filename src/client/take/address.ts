/** The frame in the page's address: `#tc=14:22:34:03`. */
import { framesForward, parseTimecode } from "../../time/timecode.ts";

/** What places a timecode in a take. */
export interface TakeTime {
  readonly rate: { readonly num: number; readonly denom: number };
  readonly dropFrame: boolean;
  readonly inFrame: number | null;
  readonly frames: number;
}

/** Timecode of a fragment, as written; `null` for any other fragment. */
export function timecodeOfHash(hash: string): string | null {
  const match = /^#tc=(.+)$/.exec(hash);
  if (match === null) return null;
  try {
    return decodeURIComponent(match[1] ?? "");
  } catch {
    return null;
  }
}

/** @example hashOfTimecode("14:22:34:03") // "#tc=14:22:34:03" */
export function hashOfTimecode(timecode: string): string {
  return `#tc=${timecode}`;
}

export type FoundFrame = { readonly ok: true; readonly frame: number } | { readonly ok: false; readonly problem: string };

/**
 * Frame of the take that a reader means: a timecode, the same in eight digits without signs, or the number of a frame as
 * the page counts them, from 1. Refused in a sentence when it is none of these or lies outside the take.
 *
 * @example frameOf("14223403", take) // the frame of 14:22:34:03
 */
export function frameOf(text: string, take: TakeTime): FoundFrame {
  const written = text.trim();
  if (/^\d{1,6}$/.test(written)) return inTake(Number(written) - 1, written, take);
  const digits = /^(\d\d)(\d\d)(\d\d)(\d\d)$/.exec(written);
  const parsed = parseTimecode(digits === null ? written : digits.slice(1).join(":"), take.rate, take.dropFrame);
  if (!parsed.ok) return { ok: false, problem: `${parsed.problem}.` };
  if (take.inFrame === null) return { ok: false, problem: "The take has no timecode; write the number of a frame." };
  return inTake(framesForward(take.inFrame, parsed.frame, take.rate, take.dropFrame), written, take);
}

function inTake(frame: number, written: string, take: TakeTime): FoundFrame {
  if (frame >= 0 && frame < take.frames) return { ok: true, frame };
  return { ok: false, problem: `${written} is not in the take.` };
}
