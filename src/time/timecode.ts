/**
 * Timecode labels and frames of the day, in whole numbers throughout.
 *
 * Drop frame leaves labels out, never pictures: at 29.97 the labels ;00 and ;01 (at 59.94 ;00 to ;03, at 119.88 ;000 to ;007)
 * are absent in every minute that is not divisible by ten, which keeps the labels within 86.4 ms a day of real time.
 *
 * @source D. Heidelberger, "Drop-Frame Timecode", after A. Duncan: frame = 3600 F h + 60 F m + F s + f - d (M - floor(M / 10)),
 *   M = 60 h + m, F the nominal rate, d the labels dropped a minute.
 */
import { droppedPerMinute, type FrameRate, nominalRate, rateLabel } from "./frame-rate.ts";

/** `form`: not written as a timecode. `range`: a part too large. `dropped-label`: a label drop frame leaves out. `drop-rate`: no drop frame at this rate. */
export type TimecodeProblemKind = "form" | "range" | "dropped-label" | "drop-rate";

export type TimecodeResult =
  | { readonly ok: true; readonly frame: number }
  | { readonly ok: false; readonly problem: string; readonly kind: TimecodeProblemKind };

const FORM = /^(\d{2}):(\d{2}):(\d{2})[:;.](\d{2,3})$/;

/**
 * Frame of the day, 0-based, of a label such as `14:22:07:11`.
 *
 * `:`, `;` and `.` before the frames are equal: whether labels are dropped is said by `dropFrame`, never guessed from the
 * sign. Refused: any other form, hour above 23, minute or second above 59, frame at or above the rate's base, a label that
 * drop frame leaves out, and drop frame at a rate that has none.
 *
 * @example parseTimecode("00:01:00;02", rational(30000, 1001), true) // { ok: true, frame: 1800 }
 */
export function parseTimecode(text: string, rate: FrameRate, dropFrame: boolean): TimecodeResult {
  const written = text.trim();
  const match = FORM.exec(written);
  if (!match) return refused("form", `"${written}" is not written as hours:minutes:seconds:frames, such as 14:22:07:11`);
  const drop = dropFrame ? droppedPerMinute(rate) : 0;
  if (dropFrame && drop === 0) return refused("drop-rate", `there is no drop-frame timecode at ${rateLabel(rate)} frames a second`);

  const base = nominalRate(rate);
  const hours = Number(match[1]);
  const minutes = Number(match[2]);
  const seconds = Number(match[3]);
  const frames = Number(match[4]);
  if (hours > 23) return refused("range", `"${written}" has hour ${hours}; a day ends at 23`);
  if (minutes > 59) return refused("range", `"${written}" has minute ${minutes}; an hour ends at 59`);
  if (seconds > 59) return refused("range", `"${written}" has second ${seconds}; a minute ends at 59`);
  if (frames >= base) {
    return refused("range", `"${written}" has frame ${frames}; at ${rateLabel(rate)} a second ends at frame ${base - 1}`);
  }
  if (frames < drop && seconds === 0 && minutes % 10 !== 0) {
    return refused(
      "dropped-label",
      `"${written}" is a label that drop-frame timecode leaves out; the minute begins at frame ${drop}`,
    );
  }
  const totalMinutes = hours * 60 + minutes;
  const dropped = drop * (totalMinutes - Math.floor(totalMinutes / 10));
  return { ok: true, frame: (totalMinutes * 60 + seconds) * base + frames - dropped };
}

function refused(kind: TimecodeProblemKind, problem: string): TimecodeResult {
  return { ok: false, kind, problem };
}

/**
 * Label of a frame of the day. Frames before 0 and after the last of the day wrap at midnight. `;` stands before the frames
 * when drop frame; a rate without drop frame counts plainly whatever the flag says. Frames have two digits, three at a base above 100.
 *
 * @example formatTimecode(1800, rational(30000, 1001), true) // "00:01:00;02"
 */
export function formatTimecode(frame: number, rate: FrameRate, dropFrame: boolean): string {
  const base = nominalRate(rate);
  const drop = dropFrame ? droppedPerMinute(rate) : 0;
  const label =
    drop === 0 ? wrap(frame, framesPerDay(rate, false)) : labelNumber(wrap(frame, framesPerDay(rate, true)), base, drop);
  const seconds = Math.floor(label / base);
  const clock = `${two(Math.floor(seconds / 3600))}:${two(Math.floor(seconds / 60) % 60)}:${two(seconds % 60)}`;
  const digits = base > 100 ? 3 : 2;
  return `${clock}${drop > 0 ? ";" : ":"}${String(label % base).padStart(digits, "0")}`;
}

/** The frame's number in a count that has every label: the dropped ones are put back. */
function labelNumber(frame: number, base: number, drop: number): number {
  const minute = base * 60 - drop;
  const block = base * 600 - 9 * drop;
  const blocks = Math.floor(frame / block);
  const rest = frame % block;
  // The first minute of a block keeps its labels, so that the counting of short minutes begins `drop` frames in.
  const shortMinutes = rest < drop ? 0 : Math.floor((rest - drop) / minute);
  return frame + drop * (9 * blocks + shortMinutes);
}

/** Frames in 24 hours of labels: 2,073,600 at 24; 2,589,408 at 29.97 drop frame. */
export function framesPerDay(rate: FrameRate, dropFrame: boolean): number {
  const drop = dropFrame ? droppedPerMinute(rate) : 0;
  return nominalRate(rate) * 86_400 - drop * 1296;
}

/** Frames forward from one frame of the day to another, 0 up to a day less one: past midnight counts on. */
export function framesForward(from: number, to: number, rate: FrameRate, dropFrame: boolean): number {
  return wrap(to - from, framesPerDay(rate, dropFrame));
}

function wrap(frame: number, day: number): number {
  return ((frame % day) + day) % day;
}

function two(n: number): string {
  return n < 10 ? `0${n}` : String(n);
}
