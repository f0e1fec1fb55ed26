/** Takes as reels: which takes a timeline can hold, by camera and rate. */
import { foldName } from "../../model/address.ts";
import type { DaySummary, TakeSummary } from "../../summary/types.ts";
import { type FrameRate, rateLabel } from "../../time/frame-rate.ts";

/** A take with a place in time. */
export interface TimedTake {
  readonly summary: TakeSummary;
  /** Frame of the day of its first frame, at its own rate. */
  readonly inFrame: number;
}

/** The takes of one camera that count in one way. */
export interface RateGroup {
  readonly rate: FrameRate;
  readonly dropFrame: boolean;
  readonly takes: readonly TimedTake[];
}

export interface CameraReel {
  readonly camera: string;
  /** The camera as a part of file names, unlike that of every other camera of the day, whatever the case. */
  readonly fileName: string;
  /** In shooting order; the takes that have a timecode. */
  readonly takes: readonly TimedTake[];
  /** Takes without a timecode: no timeline can hold them. */
  readonly untimed: readonly TakeSummary[];
}

/** Reels in order of the camera letter. A camera none of whose takes has a timecode has a reel without takes. */
export function cameraReels(summary: DaySummary): readonly CameraReel[] {
  const letters = [...new Set(summary.takes.map((t) => t.take.camera))].sort((a, b) => (a < b ? -1 : 1));
  const used = new Set<string>();
  return letters.map((camera) => {
    const own = summary.takes.filter((t) => t.take.camera === camera);
    const takes = own.flatMap((t): TimedTake[] => (isTimed(t) ? [{ summary: t, inFrame: t.take.inFrame }] : []));
    return { camera, fileName: unlike(camera, used), takes, untimed: own.filter((t) => !isTimed(t)) };
  });
}

function isTimed(t: TakeSummary): t is TakeSummary & { readonly take: { readonly inFrame: number } } {
  return t.take.inFrame !== null && t.take.durationFrames > 0;
}

function unlike(camera: string, used: Set<string>): string {
  const base = /^[A-Za-z0-9]{1,12}$/.test(camera) ? camera : foldName(camera).slice(0, 24);
  let name = base;
  for (let n = 2; used.has(name.toLowerCase()); n++) name = `${base}-${n}`;
  used.add(name.toLowerCase());
  return name;
}

/** The takes of a reel by rate and way of counting, in order of their first take. */
export function rateGroups(reel: CameraReel): readonly RateGroup[] {
  const groups = new Map<string, { rate: FrameRate; dropFrame: boolean; takes: TimedTake[] }>();
  for (const timed of reel.takes) {
    const { rate, dropFrame } = timed.summary.take;
    const key = rateName(rate, dropFrame);
    const group = groups.get(key) ?? { rate, dropFrame, takes: [] };
    group.takes.push(timed);
    groups.set(key, group);
  }
  return [...groups.values()];
}

/** A rate in file names: `24`, `23.976`, `29.97-df`. */
export function rateName(rate: FrameRate, dropFrame: boolean): string {
  return `${rateLabel(rate)}${dropFrame ? "-df" : ""}`;
}

/** Name of a take on a reel, where the camera is said already: slate and take. */
export function clipName(t: TakeSummary): string {
  return `${t.take.slate}-${t.take.take}`;
}
