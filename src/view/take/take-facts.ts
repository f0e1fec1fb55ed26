/** The strip under a take's name: when, how long, which lens, its ranges. */

import type { Source } from "../../core/quantity.ts";
import { NOT_LOGGED, NOT_RECORDED } from "../../format/absent.ts";
import { distanceRange } from "../../format/length.ts";
import { thousands, trimmed } from "../../format/number.ts";
import { withUnit } from "../../format/space.ts";
import { stopRange, stops } from "../../format/stop.ts";
import { durationText } from "../../format/time.ts";
import { plural } from "../../format/words.ts";
import type { TakeSummary } from "../../summary/types.ts";
import { rateLabel } from "../../time/frame-rate.ts";
import type { DayContext } from "../day/day-context.ts";
import { type Fact, fact, factOr } from "../facts.ts";
import { hrefTo } from "../links.ts";
import { lensName } from "../names.ts";

export function takeStrip(t: TakeSummary, day: DayContext, path: string): readonly Fact[] {
  const { take } = t;
  const extent: Source = take.note?.tcIn == null ? "logged" : "noted";
  const frames = take.durationFrames;
  return [
    factOr("Timecode in", t.timecodeIn, NOT_RECORDED, { source: extent, cls: "nb" }),
    factOr("Out (first frame after)", t.timecodeOut, NOT_RECORDED, { source: extent, cls: "nb" }),
    factOr("Length", frames === 0 ? null : durationText(frames, take.rate), NOT_RECORDED, {
      source: `${thousands(frames)} frames at ${rateLabel(take.rate)}`,
    }),
    lensFact(t, day, path),
    focalFact(t),
    stopFact(t),
    focusFact(t, day),
    factOr("Clip", take.clip, NOT_RECORDED, {
      source: take.roll === null ? "noted" : `noted, roll ${take.roll}`,
      cls: "nb",
    }),
  ];
}

function lensFact(t: TakeSummary, day: DayContext, path: string): Fact {
  const { lens, lensId, lensSource } = t.take;
  if (lensId === null) return fact("Lens", NOT_RECORDED, { cls: "absent" });
  const target = day.lensPaths.get(lensId);
  const where = lensSource ?? "noted";
  if (lens === null || target === undefined) return fact("Lens", lensId, { source: `${where}, not in the kit` });
  const serial = lens.serial === null ? `${where}, kit` : `serial ${lens.serial}, ${where}`;
  return fact("Lens", lensName(lens, lensId), { source: serial, href: hrefTo(path, target) });
}

function focalFact(t: TakeSummary): Fact {
  return t.focal === null
    ? fact("Focal length", NOT_RECORDED, { cls: "absent" })
    : fact("Focal length", focalRange(t.focal.minMm, t.focal.maxMm), { source: t.focal.source });
}

function stopFact(t: TakeSummary): Fact {
  if (t.tStop === null) return fact("Stop", t.take.track === null ? NOT_RECORDED : NOT_LOGGED, { cls: "absent" });
  const { widest, deepest, rangeStops, source } = t.tStop;
  const range = rangeStops < 0.05 ? "" : `, ${stops(rangeStops)}`;
  return fact("Stop", stopRange(widest, deepest), { source: `${source}${range}` });
}

function focusFact(t: TakeSummary, day: DayContext): Fact {
  if (t.focus === null) return fact("Focus", t.take.track === null ? NOT_RECORDED : NOT_LOGGED, { cls: "absent" });
  const pulls = t.pulls === null ? "" : `, ${plural(t.pulls.length, "pull")}`;
  return fact("Focus", distanceRange(t.focus.nearestM, t.focus.farthestM, day.site.show.distances), {
    source: `${t.focus.source}${t.take.track?.focusTable === undefined ? "" : " from the encoder table"}${pulls}`,
  });
}

/** "35 to 50 mm": the shorter focal length first, the unit once. */
export function focalRange(minMm: number, maxMm: number): string {
  const low = trimmed(minMm, 1);
  const high = trimmed(maxMm, 1);
  return withUnit(low === high ? low : `${low} to ${high}`, "mm");
}
