/**
 * A clock that is off by the same number of frames all day, seen by the focus that logs and notes have at the start and the end of
 * takes: where no log fits its note as it stands, and all fit when moved by one offset, that offset is proposed.
 */
import { MATCH } from "../../core/findings/match.ts";
import type { LensLog } from "../../ingest/log/log-record.ts";
import { framesForward, framesPerDay } from "../../time/timecode.ts";
import { sameName } from "../address.ts";
import { pictureFrames } from "../clock.ts";
import { ruleOf } from "../match-rule.ts";
import type { Take } from "../types.ts";
import type { DayContext } from "./day.ts";
import { plainPerSecond } from "./words.ts";

/** An offset is proposed when it is known to this, in seconds: a wider range is a guess. */
const SHARP_SECONDS = 0.5;
/** Notes are rounded by about this share of a distance: an offset is read from ends that fit so well. */
const ROUNDING = 0.03;
/** A noted pull must be so many times the allowed difference, or start and end look alike. */
const CLEAR_PULL = 3;

interface Marked {
  readonly take: Take;
  readonly log: LensLog;
  readonly start: number;
  readonly end: number;
}

export function checkClockOffset(context: DayContext): void {
  for (const camera of new Set(context.takes.map((take) => sameName(take.camera)))) {
    const marked = context.takes.filter((take) => sameName(take.camera) === camera).flatMap((take) => markedTake(take, context));
    if (marked.length > 0) checkCamera(marked, context);
  }
}

/** A take whose note gives two clearly different distances, with the log that names it. */
function markedTake(take: Take, { input, show }: DayContext): Marked[] {
  const focus = take.note?.focus?.value ?? null;
  if (focus === null || take.inFrame === null || take.note?.tcIn == null || take.note.tcOut === null) return [];
  const { fromDioptres: start, toDioptres: end } = focus;
  const far = Math.min(start, end);
  const near = Math.max(start, end);
  if (near - far <= CLEAR_PULL * show.limits.focusDifferenceFraction * near) return [];
  const served = input.logs.find((log) => log.file === take.logFiles[0]);
  const log = served ?? input.logs.find((candidate) => namesTake(candidate, take));
  if (log?.columns.focus === undefined || log.keys.distanceFrom !== "image-plane") return [];
  return [{ take, log, start, end }];
}

function namesTake(log: LensLog, take: Take): boolean {
  const same = (key: string | null, name: string | null): boolean =>
    key !== null && name !== null && sameName(key) === sameName(name);
  const rule = ruleOf(log);
  if (rule === "clip") return same(log.keys.clip, take.clip);
  if (rule === "slate and take") {
    const camera = log.keys.camera === null || same(log.keys.camera, take.camera);
    return camera && same(log.keys.slate, take.slate) && same(log.keys.take, take.take);
  }
  return rule !== null && same(log.keys.camera, take.camera);
}

function checkCamera(marked: readonly Marked[], { input, show, tell }: DayContext): void {
  const allowed = show.limits.focusDifferenceFraction;
  if (marked.some((one) => fitsAsItStands(one, allowed))) return;
  const first = marked[0] as Marked;
  const reach = Math.round(show.limits.clockSearchSeconds * plainPerSecond(first.take));
  const rows = new Map<LensLog, ReadonlyMap<number, number>>();
  let possible: number[] | null = null;
  for (const { take, log, start, end } of marked) {
    if (take.rate !== first.take.rate && plainPerSecond(take) !== plainPerSecond(first.take)) return;
    let byFrame = rows.get(log);
    if (byFrame === undefined) {
      byFrame = focusByFrame(log, take, input.record);
      rows.set(log, byFrame);
    }
    const perDay = framesPerDay(take.rate, take.dropFrame);
    const at = (frame: number): number =>
      byFrame.get(((((take.inFrame as number) + frame) % perDay) + perDay) % perDay) ?? Number.NaN;
    const fits = (offset: number, tolerance: number): boolean =>
      near(at(-offset), start, tolerance) && near(at(take.durationFrames - 1 - offset), end, tolerance);
    if (fits(0, allowed)) return;
    const offsets: readonly number[] = possible ?? Array.from({ length: 2 * reach + 1 }, (_, i) => i - reach);
    possible = offsets.filter((offset) => fits(offset, Math.min(allowed, ROUNDING)));
    if (possible.length === 0) return;
  }
  if (possible === null) return;
  const low = possible[0] as number;
  const high = possible.at(-1) as number;
  const oneRun = possible.length === high - low + 1;
  if (!oneRun || high - low > SHARP_SECONDS * plainPerSecond(first.take)) return;
  const offset = Math.round((low + high) / 2);
  const signed = `${offset > 0 ? "+" : "\u2212"}${Math.abs(offset)}`;
  tell(MATCH.clockOffset, {
    place: first.log.keyPlace("clock_offset_frames"),
    field: "clock_offset_frames",
    message: `The focus at the start and the end of ${marked.length === 1 ? first.take.address : `${marked.length} takes of camera ${first.take.camera}`} fits the notes when the log's clock is moved by ${signed} frames${low === high ? "" : ` (between ${low} and ${high})`}, and not as it stands.`,
    hint: `If the clocks differed, write "# clock_offset_frames: ${first.log.keys.clockOffsetFrames + offset}" in the log, or "clocks: {${first.take.camera}: {offset_frames: ${offset}}}" in day.yaml.`,
    take: marked.length === 1 ? first.take.address : null,
  });
}

/** Whether the take's first and last frame have the noted distances already; the usual case, and cheap to see. */
function fitsAsItStands({ take, start, end }: Marked, allowed: number): boolean {
  const focus = take.track?.columns.focus;
  return focus !== undefined && near(focus[0] as number, start, allowed) && near(focus.at(-1) as number, end, allowed);
}

/** Logged dioptres by frame of the day on the take's clock; the first row of a frame counts. */
function focusByFrame(log: LensLog, take: Take, record: DayContext["input"]["record"]): ReadonlyMap<number, number> {
  const clock = pictureFrames(log, take.camera, record);
  const focus = log.columns.focus as Float64Array;
  const frames = new Map<number, number>();
  for (let row = 0; row < log.rows; row++) {
    if (log.rejected[row] === 1) continue;
    const picture = clock(row, take.rate, take.dropFrame);
    if (picture === null) return new Map();
    const frame = framesForward(0, Math.round(picture), take.rate, take.dropFrame);
    if (!frames.has(frame)) frames.set(frame, focus[row] as number);
  }
  return frames;
}

function near(logged: number, noted: number, allowed: number): boolean {
  return logged <= noted / (1 - allowed) + 1e-9 && logged >= noted / (1 + allowed) - 1e-9;
}
