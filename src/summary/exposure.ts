/** Exposure of takes against each other: light on the sensor, and with the exposure index counted; the spread over a slate. */

import { sameName } from "../model/address.ts";
import type { Take } from "../model/types.ts";
import { miredFromKelvin, relativeExposure } from "../optics/exposure.ts";
import type { TakeSummary } from "./types.ts";

/** What an exposure is made of. The frame rate is always known: a blank `capture_fps` is the timecode's rate. */
export type ExposurePart = "stop" | "shutter" | "nd" | "ei";

/** Relative exposures in stops, larger is brighter. Only differences between takes mean anything. */
export interface TakeExposure {
  /** The stop that was counted: the typical logged one, else the noted one; `null` when none is known or a range is noted. */
  readonly tStop: number | null;
  /** Stop, shutter and neutral density. `null` when one of them is not recorded: a blank density is not "none". */
  readonly lightStops: number | null;
  /** The same with the exposure index, which a digital recording may only carry as a remark. */
  readonly withEiStops: number | null;
  /** Stop and shutter alone, for takes of which the filters are not recorded. */
  readonly beforeNdStops: number | null;
  /** What is not recorded, in the order stop, shutter, nd, ei. */
  readonly missing: readonly ExposurePart[];
}

/** The figures of a take that its exposure is made of. */
export type ExposureParts = Pick<TakeSummary, "tStop" | "shutterDeg" | "ndStops" | "ei"> & {
  readonly take: Pick<Take, "captureFps">;
};

/**
 * Relative exposure of a take: -2 log2 T + log2(shutter angle / 360 / capture rate) - ND stops, and + log2(EI / 100).
 *
 * @source Derived from first principles; see `relativeExposure`.
 */
export function takeExposure({ tStop, shutterDeg, ndStops, ei, take }: ExposureParts): TakeExposure {
  const typical = positive(tStop?.typical ?? null);
  const shutter = positive(shutterDeg);
  const index = positive(ei);
  const missing: ExposurePart[] = [];
  if (typical === null) missing.push("stop");
  if (shutter === null) missing.push("shutter");
  if (ndStops === null) missing.push("nd");
  if (index === null) missing.push("ei");
  const base = { tStop: typical, lightStops: null, withEiStops: null, beforeNdStops: null, missing };
  if (typical === null || shutter === null) return base;
  const at = (nd: number, sensitivity: number) =>
    relativeExposure({ tStop: typical, shutterDeg: shutter, fps: take.captureFps, ei: sensitivity, ndStops: nd });
  const beforeNdStops = at(0, 100).light;
  if (ndStops === null) return { ...base, beforeNdStops };
  const { light, withEi } = at(ndStops, index ?? 100);
  return { ...base, lightStops: light, withEiStops: index === null ? null : withEi, beforeNdStops };
}

/** Brightest and darkest of some takes. */
export interface ExposureSpread {
  /** Difference between the brightest and the darkest in stops; 0 for one take. */
  readonly spreadStops: number;
  readonly brightest: { readonly address: string; readonly stops: number };
  readonly darkest: { readonly address: string; readonly stops: number };
  /** Takes (one per camera) that have all parts, and those that were left out because one is not recorded. */
  readonly clips: number;
  readonly leftOut: number;
}

export interface ColourTemperatureSpread {
  /** Mired between the lowest and the highest setting; 0 for one take or one setting. */
  readonly shiftMired: number;
  readonly lowestK: number;
  readonly highestK: number;
  readonly clips: number;
  readonly leftOut: number;
}

/** How far the takes and cameras of a slate lie apart. A part is `null` when no take has what it needs. */
export interface SlateExposure {
  readonly slate: string;
  /** In order of their first take. */
  readonly cameras: readonly string[];
  readonly clips: number;
  readonly light: ExposureSpread | null;
  readonly withEi: ExposureSpread | null;
  readonly beforeNd: ExposureSpread | null;
  readonly colourTemperature: ColourTemperatureSpread | null;
}

/** For each slate, in shooting order, its spread over takes and cameras. Takes with an address of an earlier one do not count. */
export function slateExposures(takes: readonly TakeSummary[]): SlateExposure[] {
  const bySlate = new Map<string, TakeSummary[]>();
  for (const summary of takes) {
    if (summary.take.duplicate) continue;
    const slate = sameName(summary.take.slate);
    const known = bySlate.get(slate);
    if (known === undefined) bySlate.set(slate, [summary]);
    else known.push(summary);
  }
  return [...bySlate.values()].map((clips) => ({
    slate: clips[0]?.take.slate ?? "",
    cameras: [...new Set(clips.map((clip) => clip.take.camera))],
    clips: clips.length,
    light: spread(clips, (exposure) => exposure.lightStops),
    withEi: spread(clips, (exposure) => exposure.withEiStops),
    beforeNd: spread(clips, (exposure) => exposure.beforeNdStops),
    colourTemperature: temperatures(clips),
  }));
}

function spread(clips: readonly TakeSummary[], of: (exposure: TakeExposure) => number | null): ExposureSpread | null {
  const known = clips.flatMap(({ take, exposure }) => {
    const stops = of(exposure);
    return stops === null ? [] : [{ address: take.address, stops }];
  });
  const [first] = known;
  if (first === undefined) return null;
  const brightest = known.reduce((best, one) => (one.stops > best.stops ? one : best), first);
  const darkest = known.reduce((best, one) => (one.stops < best.stops ? one : best), first);
  return {
    spreadStops: brightest.stops - darkest.stops,
    brightest,
    darkest,
    clips: known.length,
    leftOut: clips.length - known.length,
  };
}

function temperatures(clips: readonly TakeSummary[]): ColourTemperatureSpread | null {
  const known = clips.flatMap(({ whiteBalanceK }) => (positive(whiteBalanceK) === null ? [] : [whiteBalanceK as number]));
  if (known.length === 0) return null;
  const lowestK = Math.min(...known);
  const highestK = Math.max(...known);
  return {
    shiftMired: miredFromKelvin(lowestK) - miredFromKelvin(highestK),
    lowestK,
    highestK,
    clips: known.length,
    leftOut: clips.length - known.length,
  };
}

function positive(value: number | null): number | null {
  return value !== null && value > 0 ? value : null;
}
