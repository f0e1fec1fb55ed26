/** Sums and orders that the report needs and the summary does not hold. */
import type { DaySummary, TakeSummary } from "../summary/types.ts";
import { framesPerSecond } from "../time/frame-rate.ts";
import { lensName } from "../view/names.ts";

/** Seconds of media of each camera in letter order, duplicates left out; at each take's own timecode rate. */
export function cameraSeconds(summary: DaySummary): readonly (readonly [string, number])[] {
  const seconds = new Map<string, number>();
  for (const camera of Object.keys(summary.totals.mediaFrames)) seconds.set(camera, 0);
  for (const { take } of summary.takes) {
    if (take.duplicate) continue;
    seconds.set(take.camera, (seconds.get(take.camera) ?? 0) + take.durationFrames / framesPerSecond(take.rate));
  }
  return [...seconds];
}

/** Seconds of media of each lens by its id, duplicates left out. */
export function lensSeconds(summary: DaySummary): ReadonlyMap<string, number> {
  const seconds = new Map<string, number>();
  for (const { take } of summary.takes) {
    if (take.duplicate || take.lensId === null) continue;
    seconds.set(take.lensId, (seconds.get(take.lensId) ?? 0) + take.durationFrames / framesPerSecond(take.rate));
  }
  return seconds;
}

export interface SlateTakes {
  readonly slate: string;
  readonly takes: readonly NumberedTake[];
}

export interface NumberedTake {
  readonly summary: TakeSummary;
  /** Name of the take's place in the document. */
  readonly target: string;
}

/** Name of the place of a slate by its number (0-based) in the order of the report. */
export function slateTarget(index: number): string {
  return `slate${String(index + 1).padStart(5, "0")}`;
}

/** Name of the place of a plate sheet by its number (0-based) among `plateSlates`. */
export function plateTarget(index: number): string {
  return `plate${String(index + 1).padStart(5, "0")}`;
}

/** Slates with plates, each with its plates alone; a repeated address is left out. */
export function plateSlates(summary: DaySummary): readonly SlateTakes[] {
  return takesBySlate(summary)
    .map(({ slate, takes }) => ({ slate, takes: takes.filter(({ summary: t }) => t.take.plate !== null && !t.take.duplicate) }))
    .filter(({ takes }) => takes.length > 0);
}

/** Takes by slate: slates by their first take, takes in shooting order, cameras of one take together. */
export function takesBySlate(summary: DaySummary): readonly SlateTakes[] {
  const slates = new Map<string, NumberedTake[]>();
  summary.takes.forEach((take, i) => {
    const list = slates.get(take.take.slate) ?? [];
    // Digits only, so that the order of names is the same in every locale.
    list.push({ summary: take, target: `take${String(i + 1).padStart(5, "0")}` });
    slates.set(take.take.slate, list);
  });
  return [...slates].map(([slate, takes]) => ({ slate, takes }));
}

export interface KitChange {
  readonly take: TakeSummary;
  readonly what: "lens" | "sensor mode" | "filters";
  readonly from: string;
  readonly to: string;
}

/** What was changed on a camera from one take to the next, in shooting order; only where both takes say it. */
export function kitChanges(summary: DaySummary): readonly KitChange[] {
  const before = new Map<string, string>();
  const changes: KitChange[] = [];
  for (const take of summary.takes.filter((t) => !t.take.duplicate)) {
    const { camera, lensId, lens, sensorMode } = take.take;
    const now = [
      ["lens", lensId === null ? null : lensName(lens, lensId)],
      ["sensor mode", sensorMode?.sensorMode ?? null],
      ["filters", take.filters],
    ] as const;
    for (const [what, to] of now) {
      const from = before.get(`${what} ${camera}`);
      if (to === null) continue;
      if (from !== undefined && from !== to) changes.push({ take, what, from, to });
      before.set(`${what} ${camera}`, to);
    }
  }
  return changes;
}
