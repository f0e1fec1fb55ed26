/** How far the show has come, day by day and to date. */
import type { FindingCounts } from "../core/finding.ts";
import type { DayRecord } from "../ingest/records.ts";
import type { DayDigest } from "./digest-types.ts";
import { type SceneFigures, sceneFigures } from "./scenes.ts";

/** Counts and lengths of one day or of all days so far. */
export interface ProgressFigures {
  /** `null` when nothing is scheduled in the day files. */
  readonly eighthsScheduled: number | null;
  readonly eighthsCompleted: number | null;
  readonly setups: number;
  readonly takes: number;
  readonly clips: number;
  readonly circled: number;
  readonly cameraSeconds: Readonly<Record<string, number>>;
  readonly mediaSeconds: number;
  readonly circledSeconds: number;
  readonly shootingRatio: number | null;
}

export interface DayProgress {
  readonly date: string;
  readonly day: number | null;
  readonly record: DayRecord;
  readonly own: ProgressFigures;
  /** Pages count by scene: each once, with the most that one day scheduled of it. The rest are sums of the days. */
  readonly toDate: ProgressFigures;
  /** Pages of the scenes scheduled so far that no day says are completed. */
  readonly eighthsRemaining: number | null;
  /** Open findings of the day. */
  readonly open: FindingCounts;
}

const NOTHING: ProgressFigures = {
  eighthsScheduled: null,
  eighthsCompleted: null,
  setups: 0,
  takes: 0,
  clips: 0,
  circled: 0,
  cameraSeconds: {},
  mediaSeconds: 0,
  circledSeconds: 0,
  shootingRatio: null,
};

/** In order of the digests, which are in order of date. */
export function progress(digests: readonly DayDigest[]): readonly DayProgress[] {
  const scenes = sceneFigures(digests);
  const days: DayProgress[] = [];
  let before = NOTHING;
  for (const digest of digests) {
    const own = figuresOf(digest);
    const pages = pagesUntil(scenes, digest.date);
    const { scheduled, completed } = pages;
    const toDate = { ...sumOf(before, own), eighthsScheduled: scheduled, eighthsCompleted: completed };
    const remaining = scheduled === null ? null : scheduled - (completed ?? 0);
    const { date, day, record, findingCounts: open } = digest;
    days.push({ date, day, record, own, toDate, eighthsRemaining: remaining, open });
    before = toDate;
  }
  return days;
}

/** Several days as one: counts and lengths added. */
export function sumOfDays(days: readonly DayProgress[]): ProgressFigures {
  return days.reduce((sum, { own }) => sumOf(sum, own), NOTHING);
}

function figuresOf({ totals, cameraSeconds }: DayDigest): ProgressFigures {
  return {
    eighthsScheduled: totals.eighthsScheduled,
    eighthsCompleted: totals.eighthsCompleted,
    setups: totals.slates,
    takes: totals.takes,
    clips: totals.clips,
    circled: totals.circled,
    cameraSeconds,
    mediaSeconds: totals.mediaSeconds,
    circledSeconds: totals.circledSeconds,
    shootingRatio: totals.shootingRatio,
  };
}

function sumOf(a: ProgressFigures, b: ProgressFigures): ProgressFigures {
  const cameraSeconds: Record<string, number> = { ...a.cameraSeconds };
  for (const [camera, seconds] of Object.entries(b.cameraSeconds)) cameraSeconds[camera] = (cameraSeconds[camera] ?? 0) + seconds;
  const mediaSeconds = a.mediaSeconds + b.mediaSeconds;
  const circledSeconds = a.circledSeconds + b.circledSeconds;
  return {
    eighthsScheduled: sumOrNull(a.eighthsScheduled, b.eighthsScheduled),
    eighthsCompleted: sumOrNull(a.eighthsCompleted, b.eighthsCompleted),
    setups: a.setups + b.setups,
    takes: a.takes + b.takes,
    clips: a.clips + b.clips,
    circled: a.circled + b.circled,
    cameraSeconds,
    mediaSeconds,
    circledSeconds,
    shootingRatio: circledSeconds > 0 ? mediaSeconds / circledSeconds : null,
  };
}

function sumOrNull(a: number | null, b: number | null): number | null {
  return a === null && b === null ? null : (a ?? 0) + (b ?? 0);
}

/** Pages of the scenes as they stood at the end of a day. */
function pagesUntil(scenes: readonly SceneFigures[], date: string): { scheduled: number | null; completed: number | null } {
  let scheduled: number | null = null;
  let completed: number | null = null;
  for (const scene of scenes) {
    const known = scene.days.flatMap((day) => (day.date <= date && day.eighths !== null ? [day.eighths] : []));
    if (known.length === 0) continue;
    const eighths = Math.max(...known);
    scheduled = (scheduled ?? 0) + eighths;
    completed = (completed ?? 0) + (scene.completedOn !== null && scene.completedOn <= date ? eighths : 0);
  }
  return { scheduled, completed };
}
