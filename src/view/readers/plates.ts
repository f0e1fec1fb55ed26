/** Pairs the plates of a day or of a show: a clean plate, a reference, an element stand with the slate they were made for. */
import { listWords } from "../../format/words.ts";
import type { Take } from "../../model/types.ts";
import { stopsBetween } from "../../optics/exposure.ts";
import type { TakeSummary } from "../../summary/types.ts";
import { takeName } from "../names.ts";

/** What pairing looks at: a take's summary has it, and so has what a day leaves behind for the page of all plates. */
export interface PlateTake {
  readonly take: Pick<Take, "slate" | "take" | "camera" | "circled" | "lensId"> & {
    readonly plate: string | null;
    readonly plateOf: string | null;
    readonly sensorMode: { readonly sensorMode: string } | null;
  };
  readonly focal: { readonly minMm: number } | null;
  readonly tStop: { readonly widest: number; readonly deepest: number; readonly typical: number | null } | null;
  readonly cameraHeightM: { readonly value: number } | null;
}

export interface PlatePair<T extends PlateTake = TakeSummary> {
  /** The slate that the plates belong to. */
  readonly slate: string;
  /** "24B, hero with clean". */
  readonly heading: string;
  readonly sentence: string;
  /** The hero first, then what was made for it. */
  readonly takes: readonly T[];
}

export function pairPlates<T extends PlateTake>(plates: readonly T[]): readonly PlatePair<T>[] {
  const groups = new Map<string, T[]>();
  for (const t of plates) {
    const slate = t.take.plateOf ?? t.take.slate;
    const group = groups.get(slate);
    if (group === undefined) groups.set(slate, [t]);
    else group.push(t);
  }
  return [...groups].map(([slate, members]) => {
    const heroes = members.filter((t) => t.take.plate === "hero");
    const rest = members.filter((t) => t.take.plate !== "hero");
    const kinds = [...new Set([...heroes, ...rest].map((t) => t.take.plate ?? ""))];
    return {
      slate,
      heading: `${slate}: ${listWords(kinds)}`,
      sentence: pairSentence(heroes, rest),
      takes: [...heroes, ...rest],
    };
  });
}

function pairSentence(heroes: readonly PlateTake[], rest: readonly PlateTake[]): string {
  const clean = rest.filter((t) => t.take.plate === "clean");
  if (heroes.length === 0) return "No hero of this slate is marked in the notes.";
  if (clean.length === 0) return "No clean plate is marked for this hero.";
  return clean.map((plate) => compare(plate, heroes)).join(" ");
}

/** Stops by which a plate may lie outside what its hero used. */
const STOPS_APART = 0.15;

/** A clean plate serves when the lens and its focal length are those of the hero, and its stop is one that the hero used. */
function compare(plate: PlateTake, heroes: readonly PlateTake[]): string {
  const partner =
    heroes.find((h) => h.take.camera === plate.take.camera && h.take.circled) ??
    heroes.find((h) => h.take.camera === plate.take.camera) ??
    heroes[0];
  if (partner === undefined) return "";
  const differs: string[] = [];
  if (partner.take.lensId !== plate.take.lensId) differs.push("another lens");
  if (partner.take.sensorMode?.sensorMode !== plate.take.sensorMode?.sensorMode) differs.push("another sensor mode");
  if (apart(partner.focal?.minMm, plate.focal?.minMm, 0.5)) differs.push("another focal length");
  if (stopsOutside(plate.tStop, partner.tStop) > STOPS_APART) differs.push("another stop");
  if (apart(partner.cameraHeightM?.value, plate.cameraHeightM?.value, 0.01)) differs.push("another lens height");
  const names = `${takeName(plate.take)} against ${takeName(partner.take)}`;
  return differs.length === 0
    ? `${names}: same lens, mode, focal length, stop and height, as far as recorded.`
    : `${names}: ${listWords(differs)}.`;
}

function stopsOutside(plate: PlateTake["tStop"], hero: PlateTake["tStop"]): number {
  const typical = plate?.typical ?? null;
  return typical === null || hero === null ? 0 : Math.max(stopsBetween(typical, hero.widest), stopsBetween(hero.deepest, typical));
}

function apart(a: number | undefined, b: number | undefined, limit: number): boolean {
  return a !== undefined && b !== undefined && Math.abs(a - b) > limit;
}
