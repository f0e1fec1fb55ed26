/** From a log's clock to the picture's: offsets in frames, other rates, drop-frame against non-drop labels. */
import { sameRational } from "../core/rational.ts";
import type { LensLog } from "../ingest/log/log-record.ts";
import type { DayRecord } from "../ingest/records.ts";
import { droppedPerMinute, type FrameRate, nominalRate } from "../time/frame-rate.ts";
import { formatTimecode, framesForward, framesPerDay, parseTimecode } from "../time/timecode.ts";
import { sameName } from "./address.ts";
import { modulo } from "./order.ts";

/** Frame of the day at the picture's rate, or `null` when it counts from the take's own start. */
export type PictureFrame = (row: number, rate: FrameRate, dropFrame: boolean) => number | null;

/**
 * How a log's rows become frames of the picture: log + offset = picture, plus the day file's clock of that camera from its
 * timecode on. Fractions of a frame are kept for logs that count seconds, so that the nearest sample can be chosen.
 */
export function pictureFrames(log: LensLog, camera: string | null, record: DayRecord): PictureFrame {
  const clocks = record.clocks
    .filter((clock) => camera !== null && sameName(clock.camera) === sameName(camera))
    .map((clock) => ({ offset: clock.offsetFrames, from: clock.from }));
  const timing = log.timing;
  const read = (row: number, rate: FrameRate, dropFrame: boolean): number | null => {
    let frame: number;
    if (timing.kind === "timecode") {
      frame = placeOfLabel(timing.frames[row] as number, log.rate, log.dropFrame, rate, dropFrame);
    } else {
      if (timing.start === null) return null;
      frame = convertFrame(timing.start, log.rate, log.dropFrame, rate, dropFrame) + framesSinceStart(log, row, rate);
    }
    frame += log.keys.clockOffsetFrames;
    frame += clockOffset(clocks, frame, rate, dropFrame);
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

/** Whether a log counts other frames than the picture, so that its samples fall between them. */
export function hasOwnRate(log: LensLog, rate: FrameRate): boolean {
  return nominalRate(log.rate) !== nominalRate(rate);
}

/** As {@link convertFrame}, and between nominal rates with the fraction of a frame at which the label stands. */
function placeOfLabel(frame: number, from: FrameRate, fromDrop: boolean, to: FrameRate, toDrop: boolean): number {
  if (nominalRate(from) === nominalRate(to)) return convertFrame(frame, from, fromDrop, to, toDrop);
  const [clock, frames] = splitLabel(formatTimecode(frame, from, fromDrop));
  const inSecond = (frames / nominalRate(from)) * nominalRate(to);
  const start = parseTimecode(`${clock}:${"0".repeat(firstLabel(to).length)}`, to, toDrop);
  if (start.ok) return start.frame + inSecond;
  const next = parseTimecode(`${clock}:${firstLabel(to)}`, to, toDrop);
  return next.ok ? next.frame + Math.max(0, inSecond - droppedPerMinute(to)) : frame;
}

interface ClockSetting {
  readonly offset: number;
  readonly from: string | null;
}

/** The offset that holds at a frame: that of the latest `from` before it, else the one for the whole day, else 0. */
function clockOffset(clocks: readonly ClockSetting[], frame: number, rate: FrameRate, dropFrame: boolean): number {
  let offset = 0;
  let age = Number.POSITIVE_INFINITY;
  for (const clock of clocks) {
    if (clock.from === null) {
      if (age === Number.POSITIVE_INFINITY) offset = clock.offset;
      continue;
    }
    const from = parseTimecode(clock.from, rate, dropFrame);
    if (!from.ok) continue;
    const since = sinceStart(frame + clock.offset, from.frame, rate, dropFrame);
    if (since === null || since >= age) continue;
    age = since;
    offset = clock.offset;
  }
  return offset;
}

/** Frames since the log's or the take's start for logs that count frames or seconds. A fraction where the log has another rate. */
export function framesSinceStart(log: LensLog, row: number, rate: FrameRate): number {
  if (log.timing.kind === "frame") {
    const frame = log.timing.frames[row] as number;
    return hasOwnRate(log, rate) ? (frame * rate.num * log.rate.denom) / (rate.denom * log.rate.num) : frame;
  }
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

/** Frames from a start to a frame in the twelve hours that follow it; `null` before it. */
function sinceStart(frame: number, from: number, rate: FrameRate, dropFrame: boolean): number | null {
  const perDay = framesPerDay(rate, dropFrame);
  const forward = framesForward(from, modulo(frame, perDay), rate, dropFrame);
  return forward < perDay / 2 ? forward : null;
}
