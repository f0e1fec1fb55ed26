/** Pairs the plates of a day: a clean plate, a reference, an element stand with the slate they were made for. */
import { listWords } from "../../format/words.ts";
import type { TakeSummary } from "../../summary/types.ts";
import { takeName } from "../names.ts";

export interface PlatePair {
  /** Slate of the hero, or what the plates say they are of. */
  readonly slate: string;
  /** "24B, hero with clean". */
  readonly heading: string;
  readonly sentence: string;
  /** The hero first, then what was made for it. */
  readonly takes: readonly TakeSummary[];
}

export function pairPlates(plates: readonly TakeSummary[]): readonly PlatePair[] {
  const groups = new Map<string, TakeSummary[]>();
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

function pairSentence(heroes: readonly TakeSummary[], rest: readonly TakeSummary[]): string {
  const clean = rest.filter((t) => t.take.plate === "clean");
  if (heroes.length === 0) return "No hero of this slate is marked in the notes.";
  if (clean.length === 0) return "No clean plate is marked for this hero.";
  return clean.map((plate) => compare(plate, heroes)).join(" ");
}

/** A clean plate serves when the lens, its focal length and its stop are those of the hero. */
function compare(plate: TakeSummary, heroes: readonly TakeSummary[]): string {
  const partner =
    heroes.find((h) => h.take.camera === plate.take.camera && h.take.circled) ??
    heroes.find((h) => h.take.camera === plate.take.camera) ??
    heroes[0];
  if (partner === undefined) return "";
  const differs: string[] = [];
  if (partner.take.lensId !== plate.take.lensId) differs.push("another lens");
  if (partner.take.sensorMode?.sensorMode !== plate.take.sensorMode?.sensorMode) differs.push("another sensor mode");
  if (apart(partner.focal?.minMm, plate.focal?.minMm, 0.5)) differs.push("another focal length");
  if (apart(log2(partner.tStop?.typical), log2(plate.tStop?.typical), 0.075)) differs.push("another stop");
  if (apart(partner.cameraHeightM?.value, plate.cameraHeightM?.value, 0.01)) differs.push("another lens height");
  const names = `${takeName(plate.take)} against ${takeName(partner.take)}`;
  return differs.length === 0
    ? `${names}: same lens, mode, focal length, stop and height, as far as recorded.`
    : `${names}: ${listWords(differs)}.`;
}

function log2(t: number | null | undefined): number | undefined {
  return t === null || t === undefined ? undefined : Math.log2(t);
}

function apart(a: number | undefined, b: number | undefined, limit: number): boolean {
  return a !== undefined && b !== undefined && Math.abs(a - b) > limit;
}
