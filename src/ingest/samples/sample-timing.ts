import { type FrameRate, parseFrameRate, supportsDropFrame } from "../../time/frame-rate.ts";
import { parseTimecode } from "../../time/timecode.ts";
import { fractionOf, isObject, type JsonObject } from "./sample-fields.ts";

/** Rate and drop flag of a log of samples. */
export interface SampleClock {
  readonly rate: FrameRate;
  /** `null` when no sample gives a rate: the show's is used. */
  readonly ownRate: FrameRate | null;
  readonly dropFrame: boolean;
  readonly ownDropFrame: boolean | null;
}

/**
 * The clock of a log from its first sample with a timecode. In schema 1.0.0 there is no drop flag, so that the show's holds; from
 * 1.0.1 on an absent flag is the default, false.
 */
export function clockOf(sample: JsonObject | null, show: { readonly rate: FrameRate; readonly dropFrame: boolean }): SampleClock {
  const timecode = sample === null ? null : timecodeOf(sample);
  const fraction = timecode === null ? null : fractionOf(timecode.frameRate);
  const ownRate = fraction === null ? null : parseFrameRate(`${fraction.num}/${fraction.denom}`);
  const rate = ownRate ?? show.rate;
  const said = typeof timecode?.dropFrame === "boolean" ? timecode.dropFrame : null;
  const ownDropFrame = said ?? (sample !== null && hasDropFlag(sample) ? false : null);
  return { rate, ownRate, ownDropFrame, dropFrame: supportsDropFrame(rate) && (ownDropFrame ?? show.dropFrame) };
}

/** `timing.timecode`, or `null`. */
export function timecodeOf(sample: JsonObject): JsonObject | null {
  const timing = sample.timing;
  return isObject(timing) && isObject(timing.timecode) ? timing.timecode : null;
}

function hasDropFlag(sample: JsonObject): boolean {
  const version = isObject(sample.protocol) ? sample.protocol.version : null;
  if (!Array.isArray(version) || version.some((part) => typeof part !== "number")) return false;
  const [major = 0, minor = 0, patch = 0] = version as number[];
  return major * 10_000 + minor * 100 + patch >= 10_001;
}

export type SampleTime =
  | { readonly ok: true; readonly frame: number; readonly subFrame: number }
  | { readonly ok: false; readonly problem: string; readonly dropped: boolean };

/** Frame of the day of a sample. Refused: no timecode, parts that are no whole numbers, another rate than the log's, a skipped label. */
export function sampleTime(sample: JsonObject, clock: SampleClock): SampleTime {
  const timecode = timecodeOf(sample);
  if (timecode === null) return { ok: false, problem: "the sample has no timing.timecode", dropped: false };
  const parts = ["hours", "minutes", "seconds", "frames"].map((name) => timecode[name]);
  if (!parts.every((part) => Number.isInteger(part) && (part as number) >= 0 && (part as number) < 1000)) {
    return { ok: false, problem: "timing.timecode has no whole hours, minutes, seconds and frames", dropped: false };
  }
  const own = fractionOf(timecode.frameRate);
  if (own !== null && parseFrameRate(`${own.num}/${own.denom}`) === null) {
    return {
      ok: false,
      problem: `timing.timecode has the frameRate ${own.num}/${own.denom}, which no timecode has`,
      dropped: false,
    };
  }
  if (clock.ownRate !== null && (own === null || own.num * clock.rate.denom !== clock.rate.num * own.denom)) {
    return { ok: false, problem: "timing.timecode has another frameRate than the first sample", dropped: false };
  }
  const result = parseTimecode(labelOf(parts as number[], clock.dropFrame), clock.rate, clock.dropFrame);
  if (!result.ok) return { ok: false, problem: result.problem, dropped: result.kind === "dropped-label" };
  return { ok: true, frame: result.frame, subFrame: typeof timecode.subFrame === "number" ? timecode.subFrame : 0 };
}

/** A sample's timecode as people write it. */
export function labelOf(parts: readonly number[], dropFrame: boolean): string {
  const [hours = 0, minutes = 0, seconds = 0, frames = 0] = parts;
  const two = (n: number): string => String(n).padStart(2, "0");
  return `${two(hours)}:${two(minutes)}:${two(seconds)}${dropFrame ? ";" : ":"}${two(frames)}`;
}
