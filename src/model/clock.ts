/** From a log's clock to the picture's: offsets in frames, other rates, drop-frame against non-drop labels. */
import { sameRational } from "../core/rational.ts";
import type { LensLog } from "../ingest/log-record.ts";
import type { DayRecord } from "../ingest/records.ts";
import { droppedPerMinute, type FrameRate, nominalRate } from "../time/frame-rate.ts";
import { formatTimecode, framesForward, framesPerDay, parseTimecode } from "../time/timecode.ts";

/** Frame of the day at the picture's rate, or `null` when it counts from the take's own start. */
export type PictureFrame = (row: number, rate: FrameRate, dropFrame: boolean) => number | null;

/**
 * How a log's rows become frames of the picture: log + offset = picture, plus the day file's clock of that camera from its
 * timecode on. Fractions of a frame are kept for logs that count seconds, so that the nearest sample can be chosen.
 */
export function pictureFrames(log: LensLog, camera: string | null, record: DayRecord): PictureFrame {
  const clocks = record.clocks
    .filter((clock) => camera !== null && clock.camera === camera)
    .map((clock) => ({ offset: clock.offsetFrames, from: clock.from }));
  const timing = log.timing;
  const read = (row: number, rate: FrameRate, dropFrame: boolean): number | null => {
    let frame: number;
    if (timing.kind === "timecode") {
      frame = convertFrame(timing.frames[row] as number, log.rate, log.dropFrame, rate, dropFrame);
    } else {
      if (timing.start === null) return null;
      frame = convertFrame(timing.start, log.rate, log.dropFrame, rate, dropFrame) + framesSinceStart(log, row, rate);
    }
    frame += log.keys.clockOffsetFrames;
    for (const clock of clocks) {
      if (clock.from === null) frame += clock.offset;
      else {
        const from = parseTimecode(clock.from, rate, dropFrame);
        const shifted = frame + clock.offset;
        if (from.ok && isFrom(shifted, from.frame, rate, dropFrame)) frame = shifted;
      }
    }
    return modulo(frame, framesPerDay(rate, dropFrame));
  };
  let last: { row: number; rate: FrameRate; dropFrame: boolean; frame: number | null } | null = null;
  return (row, rate, dropFrame) => {
    // many takes are asked about one row: the answer is kept for the next
    if (last === null || last.row !== row || last.dropFrame !== dropFrame || last.rate !== rate)
      last = { row, rate, dropFrame, frame: read(row, rate, dropFrame) };
    return last.frame;
  };
}

/** Frames since the log's or the take's start for logs that count frames or seconds. May be a fraction. */
export function framesSinceStart(log: LensLog, row: number, rate: FrameRate): number {
  if (log.timing.kind === "frame") return log.timing.frames[row] as number;
  if (log.timing.kind === "time") return ((log.timing.seconds[row] as number) * rate.num) / rate.denom;
  return Number.NaN;
}

/**
 * A frame of the day from one rate's labels to another's. Labels of one nominal rate are kept as they read
 * (24 against 24000/1001; a dropped label becomes the next one); between nominal rates the second of the day is kept.
 */
export function convertFrame(frame: number, from: FrameRate, fromDrop: boolean, to: FrameRate, toDrop: boolean): number {
  if (fromDrop === toDrop && sameRational(from, to)) return frame;
  if (nominalRate(from) === nominalRate(to)) {
    if (fromDrop === toDrop) return frame;
    const label = formatTimecode(frame, from, fromDrop);
    const same = parseTimecode(label, to, toDrop);
    if (same.ok) return same.frame;
    const next = parseTimecode(label.replace(/\d+$/, firstLabel(to)), to, toDrop);
    return next.ok ? next.frame : frame;
  }
  const [clock, frames] = splitLabel(formatTimecode(frame, from, fromDrop));
  const base = nominalRate(to);
  const inSecond = Math.min(base - 1, Math.round((frames / nominalRate(from)) * base));
  const label = `${clock}:${String(inSecond).padStart(2, "0")}`;
  const parsed = parseTimecode(label, to, toDrop);
  if (parsed.ok) return parsed.frame;
  const next = parseTimecode(`${clock}:${firstLabel(to)}`, to, toDrop);
  return next.ok ? next.frame : frame;
}

/** Frames part of the first label of a minute that drop frame shortens. */
function firstLabel(rate: FrameRate): string {
  return String(droppedPerMinute(rate)).padStart(2, "0");
}

function splitLabel(label: string): [string, number] {
  return [label.slice(0, 8), Number(label.slice(9))];
}

/** Whether a frame lies at or after another in the twelve hours that follow it. */
function isFrom(frame: number, from: number, rate: FrameRate, dropFrame: boolean): boolean {
  const perDay = framesPerDay(rate, dropFrame);
  return framesForward(from, modulo(frame, perDay), rate, dropFrame) < perDay / 2;
}

function modulo(a: number, n: number): number {
  return ((a % n) + n) % n;
}
