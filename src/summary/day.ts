/** A day's figures: takes, totals, lens use. */
import { countFindings, sortFindings } from "../core/finding.ts";
import { FINDINGS_PER_CODE_AND_FILE } from "../core/findings/collect.ts";
import { limitFindings } from "../core/findings/limit.ts";
import type { DistanceM } from "../core/quantity.ts";
import { numberFromDistance } from "../core/quantity.ts";
import type { Kit } from "../ingest/records.ts";
import { acceptFindings } from "../model/accept.ts";
import { sameName, takeKey } from "../model/address.ts";
import type { Day } from "../model/types.ts";
import { slateExposures } from "./exposure.ts";
import { summariseTake } from "./take.ts";
import type { DaySummary, DayTotals, LensUse, TakeSummary } from "./types.ts";

/** @param most findings of one code in one file that are listed one by one (0: all); a take keeps all of its own */
export function summariseDay(day: Day, kit: Kit, most = FINDINGS_PER_CODE_AND_FILE): DaySummary {
  const summaries = day.takes.map((take) =>
    summariseTake(
      take,
      day.findings.filter((finding) => finding.take === take.address),
      day.show.limits,
    ),
  );
  const known = new Set(day.findings);
  const all = [...day.findings, ...summaries.flatMap((take) => take.findings.filter((finding) => !known.has(finding)))];
  const findings = sortFindings(limitFindings(sortFindings(acceptFindings(all, day.record.accepted)), most));
  // a take has its findings as the day has them, with what was accepted
  const takes = summaries.map((summary) =>
    day.record.accepted.length === 0
      ? summary
      : Object.freeze({
          ...summary,
          findings: acceptFindings(summary.findings, day.record.accepted).filter((f) => f.take === summary.take.address),
        }),
  );
  return Object.freeze({
    show: day.show,
    kit,
    day,
    date: day.date,
    takes,
    totals: dayTotals(takes, day),
    lensUse: lensUse(takes),
    findings,
    findingCounts: countFindings(findings),
    rows: day.rows,
    slateExposure: slateExposures(takes),
  });
}

/** A take counts once whatever the cameras, a clip per camera; a duplicate address counts nowhere. */
function dayTotals(summaries: readonly TakeSummary[], day: Day): DayTotals {
  const clips = summaries.filter((summary) => !summary.take.duplicate);
  const circledKeys = new Set(clips.filter((clip) => clip.take.circled).map(({ take }) => takeKey(take)));
  const circledClips = clips.filter(({ take }) => circledKeys.has(takeKey(take)));
  const mediaSeconds = sum(clips.map((clip) => clip.durationSeconds));
  const circledSeconds = sum(circledClips.map((clip) => clip.durationSeconds));
  const mediaFrames: Record<string, number> = {};
  for (const camera of [...new Set(clips.map((clip) => clip.take.camera))].sort()) {
    mediaFrames[camera] = sum(clips.filter((clip) => clip.take.camera === camera).map((clip) => clip.framesExpected));
  }
  const completed = new Set(day.record.completed.map(sameName));
  const eighths = (wanted: (scene: string) => boolean): number | null => {
    const scenes = day.record.scheduled.filter((scene) => wanted(sameName(scene.scene)) && scene.eighths !== null);
    return day.record.scheduled.length === 0 ? null : sum(scenes.map((scene) => scene.eighths ?? 0));
  };
  return {
    slates: new Set(clips.map((clip) => sameName(clip.take.slate))).size,
    takes: new Set(clips.map(({ take }) => takeKey(take))).size,
    clips: clips.length,
    circled: circledKeys.size,
    eighthsScheduled: eighths(() => true),
    eighthsCompleted: eighths((scene) => completed.has(scene)),
    mediaFrames,
    mediaSeconds,
    circledSeconds,
    shootingRatio: circledSeconds > 0 ? mediaSeconds / circledSeconds : null,
    framesExpected: sum(clips.map((clip) => clip.framesExpected)),
    framesLogged: sum(clips.map((clip) => clip.framesLogged)),
  };
}

/** Per lens that served, in order of its id: clips, shot frames, ranges from logs, else notes. */
export function lensUse(summaries: readonly TakeSummary[]): LensUse[] {
  const byLens = new Map<string, TakeSummary[]>();
  for (const summary of summaries) {
    const id = summary.take.lensId;
    if (id === null || summary.take.duplicate) continue;
    byLens.set(id, [...(byLens.get(id) ?? []), summary]);
  }
  return [...byLens]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([lens, takes]) => ({
      lens,
      takes: takes.length,
      frames: sum(takes.map((take) => take.framesExpected)),
      focalMm: widen(takes.map((take) => (take.focal === null ? null : { min: take.focal.minMm, max: take.focal.maxMm }))),
      tStop: stops(takes),
      focus: focus(takes),
    }));
}

/** Logged stops, else noted ones, widest and deepest. */
function stops(takes: readonly TakeSummary[]): LensUse["tStop"] {
  const range = widen(takes.map((take) => (take.tStop === null ? null : { min: take.tStop.widest, max: take.tStop.deepest })));
  return range === null ? null : { widest: range.min, deepest: range.max };
}

function focus(takes: readonly TakeSummary[]): LensUse["focus"] {
  let nearest: DistanceM | null = null;
  let farthest: DistanceM | null = null;
  for (const take of takes) {
    if (take.focus === null) continue;
    if (nearest === null || numberFromDistance(take.focus.nearestM) < numberFromDistance(nearest)) nearest = take.focus.nearestM;
    if (farthest === null || numberFromDistance(take.focus.farthestM) > numberFromDistance(farthest))
      farthest = take.focus.farthestM;
  }
  return nearest === null || farthest === null ? null : { nearestM: nearest, farthestM: farthest };
}

function widen(ranges: readonly ({ min: number; max: number } | null)[]): { min: number; max: number } | null {
  const known = ranges.filter((range) => range !== null);
  if (known.length === 0) return null;
  return { min: Math.min(...known.map((range) => range.min)), max: Math.max(...known.map((range) => range.max)) };
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
