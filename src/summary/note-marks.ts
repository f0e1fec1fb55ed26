/** Places in time that the notes give: a timecode in the remarks with its words, and both ends of a noted focus range. */
import { type DistanceM, metresFromDioptres } from "../core/quantity.ts";
import type { Take } from "../model/types.ts";
import { framesForward, parseTimecode } from "../time/timecode.ts";

export interface NoteMark {
  readonly kind: "slate" | "mark";
  /** 0-based frame of the take. */
  readonly frame: number;
  readonly timecode: string;
  /** The clause that the timecode stands in, without it; empty when it stands alone. */
  readonly words: string;
}

const TIMECODE = /(?<![\d:;])\d{2}:\d{2}:\d{2}[:;]\d{2}(?![\d:;])/g;
const SLATE = /\b(?:slates?|slated|clap(?:s|per|ped)?|sticks|tail slate|end board|board)\b/i;
/** A clause ends at a comma, a full stop or a semicolon with a space behind it. */
const CLAUSE = /[,.;]\s+/;

/** Timecodes in the take's remark that lie inside the take, in order of time. Nothing is guessed: without a timecode there is no mark. */
export function noteMarks(take: Take): readonly NoteMark[] {
  const remark = take.note?.remarks?.value ?? null;
  if (remark === null || take.inFrame === null) return [];
  const found = remark.split(CLAUSE).flatMap((clause) =>
    [...clause.matchAll(TIMECODE)].flatMap(([timecode]): readonly NoteMark[] => {
      const frame = frameOf(timecode, take);
      if (frame === null) return [];
      const kind = SLATE.test(clause) ? "slate" : "mark";
      return [{ kind, frame, timecode, words: wordsOf(clause) }];
    }),
  );
  return found.sort((a, b) => a.frame - b.frame);
}

function frameOf(timecode: string, take: Take): number | null {
  const read = parseTimecode(timecode, take.rate, take.dropFrame);
  if (!read.ok || take.inFrame === null) return null;
  const frame = framesForward(take.inFrame, read.frame, take.rate, take.dropFrame);
  return frame < take.durationFrames ? frame : null;
}

/** The clause without its timecodes and without the word that led to them. */
function wordsOf(clause: string): string {
  return clause
    .replace(TIMECODE, " ")
    .replace(/\b(?:at|from|to|on)\s*$/i, "")
    .replace(/\b(?:at|from|to|on)\s{2,}/gi, "")
    .replace(/\s+/g, " ")
    .trim()
    .replace(/[.,;:]+$/, "");
}

export interface NotedEnds {
  readonly start: DistanceM;
  readonly end: DistanceM;
}

/** The ends of a noted focus range, in the order written: the take's first and last frame. `null` for one distance, which has no place in time. */
export function notedEnds(take: Take): NotedEnds | null {
  const focus = take.note?.focus?.value;
  if (focus === undefined || focus.fromDioptres === focus.toDioptres) return null;
  return { start: metresFromDioptres(focus.fromDioptres), end: metresFromDioptres(focus.toDioptres) };
}
