/** Two places at which a clock's offset is known give its drift: a crystal's, or the slope between two rates. */

import type { Place } from "../../core/finding.ts";
import { MATCH } from "../../core/findings/match.ts";
import { rationalToNumber } from "../../core/rational.ts";
import { clockFromSyncPoints, isRateSlope } from "../../time/drift.ts";
import { framesForward, parseTimecode } from "../../time/timecode.ts";
import { sameName } from "../address.ts";
import type { DayContext } from "./day.ts";
import { round } from "./words.ts";

interface SyncPoint {
  readonly frame: number;
  readonly offsetFrames: number;
  readonly place: Place;
  readonly where: string;
}

export function checkSyncPoints(context: DayContext): void {
  for (const camera of new Set(context.takes.map((take) => sameName(take.camera)))) {
    const points = syncPoints(camera, context);
    for (let i = 1; i < points.length; i++) tellOfDrift(points[i - 1] as SyncPoint, points[i] as SyncPoint, camera, context);
  }
}

/** Offsets that say when they hold: entries of day.yaml with `from`, and logs with an offset of their own, in order of time. */
function syncPoints(camera: string, { takes, input, show }: DayContext): readonly SyncPoint[] {
  const fromDay = input.record.clocks
    .filter((clock) => sameName(clock.camera) === camera && clock.from !== null)
    .flatMap((clock): SyncPoint[] => {
      const from = parseTimecode(clock.from ?? "", show.rate, show.dropFrame);
      return from.ok
        ? [{ frame: from.frame, offsetFrames: clock.offsetFrames, place: clock.place, where: `from ${clock.from} on` }]
        : [];
    });
  if (fromDay.length > 1) return fromDay;
  const own = takes.flatMap((take): SyncPoint[] => {
    const log = input.logs.find((candidate) => candidate.file === take.logFiles[0]);
    if (sameName(take.camera) !== camera || log === undefined || take.inFrame === null) return [];
    if (log.keys.clockOffsetFrames === 0) return [];
    const place = log.keyPlace("clock_offset_frames");
    return [{ frame: take.inFrame, offsetFrames: log.keys.clockOffsetFrames, place, where: `in ${take.address}` }];
  });
  // logs of one offset say nothing about drift between them
  return own.filter((point, i) => i === 0 || point.offsetFrames !== own[i - 1]?.offsetFrames);
}

function tellOfDrift(a: SyncPoint, b: SyncPoint, camera: string, { show, tell }: DayContext): void {
  const perSecond = rationalToNumber(show.rate);
  const seconds = framesForward(a.frame, b.frame, show.rate, show.dropFrame) / perSecond;
  const apart = b.offsetFrames - a.offsetFrames;
  if (seconds < 60 || Math.abs(apart) <= show.limits.clockDriftFrames) return;
  const { ppm } = clockFromSyncPoints(
    { atSeconds: 0, offsetSeconds: a.offsetFrames / perSecond },
    { atSeconds: seconds, offsetSeconds: b.offsetFrames / perSecond },
  );
  const words = `The clock of camera ${camera.toUpperCase()} is off by ${a.offsetFrames} frames ${a.where} and by ${b.offsetFrames} ${b.where}`;
  const hourly = round(Math.abs(ppm) * 0.0036);
  if (isRateSlope(ppm, Math.abs(1 / perSecond / seconds) * 1e6)) {
    tell(MATCH.mixedRates, {
      place: b.place,
      field: "clocks",
      message: `${words}: ${hourly} s an hour, the slope between a rate and its 1000/1001, such as 24 and 23.976. That is no drift.`,
      hint: 'One of the two clocks ran at the other rate: write the log\'s own rate as "# rate", and take the offsets away.',
    });
    return;
  }
  tell(MATCH.clockDrift, {
    place: b.place,
    field: "clocks",
    message: `${words}: if it drifted, by ${round(ppm)} ppm (${hourly} s an hour), and up to ${Math.abs(apart)} frames in between.`,
    hint: "If the clock was set anew between the two, nothing needs to be done. Else add offsets in between, each with the timecode that it holds from.",
  });
}
