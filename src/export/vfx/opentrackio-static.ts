/** The static block of OpenTrackIO samples: what holds for the whole take. */
import { rational } from "../../core/rational.ts";
import type { TakeSummary } from "../../summary/types.ts";
import { type FrameRate, framesPerSecond, parseFrameRate } from "../../time/frame-rate.ts";

type Json = Readonly<Record<string, unknown>>;

const MOST_TEXT = 1023;
const MOST_NUM = 2 ** 31 - 1;

/** `static` of a take's first sample; keys that are not known are absent. */
export function staticBlock(summary: TakeSummary): Json {
  const { take } = summary;
  return {
    ...maybe("duration", fraction(take.durationFrames * take.rate.denom, take.rate.num)),
    camera: camera(summary),
    ...maybe("lens", nonEmpty(lens(summary))),
  };
}

function camera({ take, ei, shutterDeg }: TakeSummary): Json {
  const mode = take.sensorMode;
  const resolution =
    mode === null || mode.resolutionX === null || mode.resolutionY === null
      ? null
      : { height: mode.resolutionY, width: mode.resolutionX };
  return {
    ...maybe("captureFrameRate", captureRate(take.captureFps, take.rate)),
    ...maybe("activeSensorPhysicalDimensions", mode && { height: mode.activeHeightMm, width: mode.activeWidthMm }),
    ...maybe("activeSensorResolution", resolution),
    ...maybe("model", text(mode?.body)),
    ...maybe("serialNumber", text(mode?.serial)),
    ...maybe("label", text(take.camera)),
    ...maybe("anamorphicSqueeze", fraction(Math.round(take.squeeze * 10_000), 10_000)),
    ...maybe("isoSpeed", ei !== null && Number.isInteger(ei) && ei >= 1 ? ei : null),
    ...maybe("shutterAngle", shutterDeg !== null && shutterDeg > 0 && shutterDeg <= 360 ? shutterDeg : null),
  };
}

function lens({ take, overscan }: TakeSummary): Json {
  const { lens: kit, calibration } = take;
  const factor = (percent: number | undefined) => (percent === undefined ? null : Math.max(1, 1 + percent / 100));
  const history = [calibration?.madeOn, calibration?.madeBy, calibration?.source].flatMap((part) => text(part) ?? []);
  return {
    ...maybe("distortionOverscanMax", factor(overscan?.redistort?.percent)),
    ...maybe("undistortionOverscanMax", factor(overscan?.undistort?.percent)),
    ...maybe("make", text(kit?.maker)),
    ...maybe("model", text([kit?.series, take.lensId].filter((part) => part).join(" "))),
    ...maybe("serialNumber", text(kit?.serial)),
    ...maybe("nominalFocalLength", kit?.kind === "prime" ? kit.focalMm : null),
    ...maybe("calibrationHistory", history.length === 0 ? null : history),
  };
}

/** The capture rate as a fraction: the timecode rate itself where the two agree. */
export function captureRate(fps: number, rate: FrameRate): { readonly num: number; readonly denom: number } | null {
  if (Math.abs(fps - framesPerSecond(rate)) < 0.002) return { num: rate.num, denom: rate.denom };
  const known = parseFrameRate(String(fps));
  return known === null ? fraction(Math.round(fps * 1000), 1000) : { num: known.num, denom: known.denom };
}

function fraction(num: number, denom: number): { readonly num: number; readonly denom: number } | null {
  if (!Number.isSafeInteger(num) || num < 1) return null;
  const lowest = rational(num, denom);
  return lowest.num > MOST_NUM ? null : { num: lowest.num, denom: lowest.denom };
}

function text(value: string | null | undefined): string | null {
  const trimmed = (value ?? "").trim();
  return trimmed === "" ? null : [...trimmed].slice(0, MOST_TEXT).join("");
}

function nonEmpty(block: Json): Json | null {
  return Object.keys(block).length === 0 ? null : block;
}

/** An object with the key, or without it: the standard has no null. */
export function maybe(key: string, value: unknown): Json {
  return value === null || value === undefined ? {} : { [key]: value };
}
