/** Extent of a take as its note gives it: timecode in, and the first frame after. */
import type { Finding } from "../core/finding.ts";
import { findingOf } from "../core/findings/kind.ts";
import { MATCH } from "../core/findings/match.ts";
import { sameRational } from "../core/rational.ts";
import type { Cell, NoteRow, ShowRecord } from "../ingest/records.ts";
import { type FrameRate, rateLabel, supportsDropFrame } from "../time/frame-rate.ts";
import { framesForward, framesPerDay, parseTimecode } from "../time/timecode.ts";

export interface NotedExtent {
  readonly rate: FrameRate;
  readonly dropFrame: boolean;
  /** Frame of the day; `null` when the note gives none that can be read. */
  readonly inFrame: number | null;
  /** Frame of the day of the first frame after the take; `null` likewise. */
  readonly outFrame: number | null;
  readonly findings: readonly Finding[];
}

/** A take longer than this is a typing error: the out point lies before the in point. */
const LONGEST_TAKE_SECONDS = 6 * 3600;

/** Reads a note's `tc_in` and `tc_out` at the take's rate; drop-frame is the show's flag, never inferred from the rate. */
export function notedExtent(note: NoteRow, show: ShowRecord, address: string): NotedExtent {
  const rate = note.rate?.value ?? show.rate;
  const dropFrame = show.dropFrame && (sameRational(rate, show.rate) || supportsDropFrame(rate));
  const findings: Finding[] = [];
  const read = (cell: Cell<string> | null, field: string): number | null => {
    if (cell === null) return null;
    const parsed = parseTimecode(cell.text, rate, dropFrame);
    if (parsed.ok) return parsed.frame;
    findings.push(
      findingOf(MATCH.timecode, {
        place: cell.place,
        field,
        message: parsed.problem.includes(cell.text.trim())
          ? `${field} ${parsed.problem}.`
          : `${field} is "${cell.text}": ${parsed.problem}.`,
        hint: `${meantLabel(cell.text, rate, dropFrame)}Write hours, minutes, seconds and frames at ${rateLabel(rate)}${dropFrame ? " drop-frame" : ""}, such as 10:05:12${dropFrame ? ";" : ":"}08. Another rate goes into the column "rate".`,
        take: address,
      }),
    );
    return null;
  };
  const inFrame = read(note.tcIn, "tc_in");
  const written = read(note.tcOut, "tc_out");
  const perDay = framesPerDay(rate, dropFrame);
  const outFrame = written === null ? null : (written + (show.timecodeOut === "inclusive" ? 1 : 0)) % perDay;
  if (inFrame !== null && outFrame !== null && note.tcOut !== null) {
    const duration = framesForward(inFrame, outFrame, rate, dropFrame);
    if (duration === 0 || duration > (LONGEST_TAKE_SECONDS * rate.num) / rate.denom) {
      findings.push(
        findingOf(MATCH.endsBeforeStart, {
          place: note.tcOut.place,
          field: "tc_out",
          message: `The take ends at ${note.tcOut.text}, which is not after its start at ${note.tcIn?.text ?? ""}.`,
          hint: "Correct tc_in or tc_out; the two may have been swapped. A take may run past midnight; one of more than six hours is taken for a mistake.",
          take: address,
        }),
      );
      return { rate, dropFrame, inFrame, outFrame: null, findings };
    }
  }
  return { rate, dropFrame, inFrame, outFrame, findings };
}

/** A question whether letters that look like digits were meant as those; empty where that gives no timecode. */
function meantLabel(text: string, rate: FrameRate, dropFrame: boolean): string {
  const meant = text
    .trim()
    .replace(/[oO]/g, "0")
    .replace(/[iIlL]/g, "1");
  return meant !== text.trim() && parseTimecode(meant, rate, dropFrame).ok ? `Is it ${meant}? ` : "";
}
