/** The scenes of a show over all its days: what was scheduled, what was shot of it, and how alike its set-ups are exposed. */
import { compareCodes } from "../core/code-order.ts";
import { sameName, takeKey } from "../model/address.ts";
import { lowerMiddle } from "../stats/summary.ts";
import type { DayDigest, TakeDigest } from "./digest-types.ts";

/** What became of a scene on a day, as the day file says it; `null` when it does not. */
export type SceneResult = "completed" | "part" | "not shot";

/** A day on which a scene was scheduled, shot or named among the results. */
export interface SceneDay {
  readonly date: string;
  readonly day: number | null;
  /** Slates of the day that are noted for the scene, in shooting order; empty when nothing was shot of it. */
  readonly slates: readonly string[];
  /** Pages scheduled on that day in eighths. */
  readonly eighths: number | null;
  readonly result: SceneResult | null;
}

/** How far the set-ups of a scene lie apart. */
export interface SetupSpread {
  readonly spreadStops: number;
  /** Light on the sensor, or before ND where no two set-ups have their filters recorded. */
  readonly of: "light" | "before ND";
  readonly brightest: string;
  readonly darkest: string;
  readonly setups: number;
  /** Set-ups without the parts that it needs. */
  readonly leftOut: number;
}

export interface SceneFigures {
  /** As it is first written; `null`: takes that name no scene. */
  readonly scene: string | null;
  readonly days: readonly SceneDay[];
  /** A slate counts once a day, as in the totals of the days. */
  readonly setups: number;
  /** A take counts once whatever the cameras. */
  readonly takes: number;
  readonly clips: number;
  readonly circled: number;
  readonly mediaSeconds: number;
  readonly lenses: readonly string[];
  /** The most that was scheduled of it on one day: a scene that goes on the next day is not counted twice. */
  readonly eighths: number | null;
  /** Date on which it was first said to be completed. */
  readonly completedOn: string | null;
  /** The newest result that any day says. */
  readonly result: SceneResult | null;
  /** `null` with fewer than two set-ups whose exposure is known. */
  readonly exposure: SetupSpread | null;
}

interface Collected {
  readonly scene: string | null;
  readonly days: SceneDay[];
  readonly takes: { readonly date: string; readonly take: TakeDigest }[];
}

/** All scenes in the order of an index, the takes that name none last. Digests are in order of date. */
export function sceneFigures(digests: readonly DayDigest[]): readonly SceneFigures[] {
  const scenes = new Map<string, Collected>();
  for (const digest of digests) {
    for (const [key, { scene, takes }] of scenesOfDay(digest)) {
      const known = scenes.get(key) ?? { scene, days: [], takes: [] };
      scenes.set(key, known);
      known.days.push(sceneDay(digest, scene, takes));
      known.takes.push(...takes.map((take) => ({ date: digest.date, take })));
    }
  }
  return [...scenes.values()].map(figuresOf).sort((a, b) => {
    if (a.scene === null || b.scene === null) return Number(a.scene === null) - Number(b.scene === null);
    return compareCodes(a.scene, b.scene);
  });
}

interface OfDay {
  readonly scene: string | null;
  readonly takes: TakeDigest[];
}

/** Scenes that a day's notes or its day file name, by the form in which names are compared; takes without one under "". */
function scenesOfDay({ record, takes }: DayDigest): ReadonlyMap<string, OfDay> {
  const found = new Map<string, OfDay>();
  const at = (scene: string | null): OfDay => {
    const key = scene === null ? "" : sameName(scene);
    const known = found.get(key) ?? { scene, takes: [] };
    found.set(key, known);
    return known;
  };
  const { scheduled, completed, part, notShot } = record;
  for (const scene of [...scheduled.map((s) => s.scene), ...completed, ...part, ...notShot]) at(scene);
  for (const take of takes) at(take.scene).takes.push(take);
  return found;
}

function sceneDay({ date, day, record }: DayDigest, scene: string | null, takes: readonly TakeDigest[]): SceneDay {
  const slates = new Map(takes.map((take) => [sameName(take.slate), take.slate]));
  const named = (names: readonly string[]) => scene !== null && names.some((name) => sameName(name) === sameName(scene));
  const scheduled = record.scheduled.find((s) => named([s.scene]));
  const result = named(record.completed) ? "completed" : named(record.part) ? "part" : named(record.notShot) ? "not shot" : null;
  return { date, day, slates: [...slates.values()], eighths: scheduled?.eighths ?? null, result };
}

function figuresOf({ scene, days, takes }: Collected): SceneFigures {
  const ofDay = ({ date, take }: Collected["takes"][number]) => `${date} ${takeKey(take)}`;
  const scheduled = days.flatMap((day) => (day.eighths === null ? [] : [day.eighths]));
  const lenses = new Set(takes.flatMap(({ take }) => (take.lens === null ? [] : [take.lens])));
  return {
    scene,
    days,
    setups: days.reduce((sum, day) => sum + day.slates.length, 0),
    takes: new Set(takes.map(ofDay)).size,
    clips: takes.length,
    circled: new Set(takes.filter(({ take }) => take.circled).map(ofDay)).size,
    mediaSeconds: takes.reduce((sum, { take }) => sum + take.durationSeconds, 0),
    lenses: [...lenses].sort(compareCodes),
    eighths: scheduled.length === 0 ? null : Math.max(...scheduled),
    completedOn: days.find((day) => day.result === "completed")?.date ?? null,
    result: days.findLast((day) => day.result !== null)?.result ?? null,
    exposure: scene === null ? null : setupSpread(takes.map(({ take }) => take)),
  };
}

/** Difference between the brightest and the darkest set-up, each by its middle clip. */
function setupSpread(takes: readonly TakeDigest[]): SetupSpread | null {
  const light = spreadOf(takes, (take) => take.lightStops);
  if (light !== null) return { ...light, of: "light" };
  const beforeNd = spreadOf(takes, (take) => take.beforeNdStops);
  return beforeNd === null ? null : { ...beforeNd, of: "before ND" };
}

function spreadOf(takes: readonly TakeDigest[], of: (take: TakeDigest) => number | null): Omit<SetupSpread, "of"> | null {
  const bySlate = new Map<string, { readonly slate: string; readonly stops: number[] }>();
  for (const take of takes) {
    const known = bySlate.get(sameName(take.slate)) ?? { slate: take.slate, stops: [] };
    bySlate.set(sameName(take.slate), known);
    const stops = of(take);
    if (stops !== null) known.stops.push(stops);
  }
  const setups = [...bySlate.values()].flatMap(({ slate, stops }) => {
    const middle = lowerMiddle(stops);
    return middle === null ? [] : [{ slate, middle }];
  });
  const byLight = [...setups].sort((a, b) => a.middle - b.middle);
  const [darkest, brightest] = [byLight[0], byLight.at(-1)];
  if (darkest === undefined || brightest === undefined || byLight.length < 2) return null;
  return {
    spreadStops: brightest.middle - darkest.middle,
    brightest: brightest.slate,
    darkest: darkest.slate,
    setups: setups.length,
    leftOut: bySlate.size - setups.length,
  };
}
