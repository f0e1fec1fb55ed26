/**
 * What is known of a take beyond its row in the table, as single facts. Those that all takes of a set-up share, or all of
 * one camera, are said once below the table, so that what stands beside a take is what is its own.
 */
import { NOT_CALCULATED, NOT_RECORDED } from "../../format/absent.ts";
import type { DistanceSystem } from "../../format/length.ts";
import { listWords, sentenceCase } from "../../format/words.ts";
import type { TakeSummary } from "../../summary/types.ts";
import type { HangingLine } from "../hanging.ts";
import { calculatedFigures, calibrationNote, notedFigures, sourcesWords } from "../take-words.ts";
import type { NumberedTake } from "../totals.ts";
import { hasPlateSheet } from "./ribbon-size.ts";

/** By where a fact comes from. */
export const FIGURE_GROUPS = ["logged", "noted", "kit", "calculated"] as const;

type FactGroup = "sources" | (typeof FIGURE_GROUPS)[number] | "not recorded" | "not calculated" | "lens look";

export interface TakeFact {
  readonly group: FactGroup;
  readonly text: string;
}

/** Facts of a set-up that are said once, and those that each take keeps. */
export interface SharedFacts {
  readonly lines: readonly HangingLine[];
  readonly own: (take: NumberedTake) => readonly TakeFact[];
}

/** @param isShort whether a take goes without what is worked out */
export function sharedFacts(
  takes: readonly NumberedTake[],
  distances: DistanceSystem,
  isShort: (t: TakeSummary) => boolean,
): SharedFacts {
  const short = takes.every(({ summary }) => isShort(summary));
  const facts = new Map(takes.map((take) => [take, factsOf(take.summary, distances, short)]));
  const common = (of: readonly NumberedTake[]): readonly TakeFact[] => {
    const [first, ...others] = of.map((take) => facts.get(take) ?? []);
    if (first === undefined || others.length === 0) return [];
    return first.filter((fact) => others.every((list) => has(list, fact)));
  };
  const cameras = [...new Set(takes.map(({ summary }) => summary.take.camera))];
  const ofAll = common(takes);
  const ofCamera = new Map(
    cameras.map((camera) => {
      const mine = common(takes.filter(({ summary }) => summary.take.camera === camera));
      return [camera, mine.filter((fact) => !has(ofAll, fact))];
    }),
  );
  return {
    lines: [
      ...sharedLine(cameras.length > 1 ? "All clips" : "All takes", ofAll),
      ...cameras.flatMap((camera) => sharedLine(`Camera ${camera}`, ofCamera.get(camera) ?? [])),
    ],
    own: (take) => {
      const said = [...ofAll, ...(ofCamera.get(take.summary.take.camera) ?? [])];
      const mine = isShort(take.summary) ? factsOf(take.summary, distances, true) : (facts.get(take) ?? []);
      return mine.filter((fact) => !has(said, fact));
    },
  };
}

function has(facts: readonly TakeFact[], { group, text }: TakeFact): boolean {
  return facts.some((fact) => fact.group === group && fact.text === text);
}

function sharedLine(label: string, facts: readonly TakeFact[]): readonly HangingLine[] {
  if (facts.length === 0) return [];
  const figures = FIGURE_GROUPS.flatMap((group) => {
    const text = figuresOf(facts, group);
    return text === "" ? [] : [`${sentenceCase(group)}: ${text}.`];
  });
  const sources = sourcesOf(facts);
  const look = figuresOf(facts, "lens look");
  const words = [sources === "" ? "" : `${sources}.`, ...figures, absentOf(facts), look === "" ? "" : `Lens look: ${look}.`];
  return [{ label, text: words.filter((text) => text !== "").join(" ") }];
}

/** All values of a plate are on its sheet; a short take has what people wrote down alone. */
function factsOf(t: TakeSummary, distances: DistanceSystem, short: boolean): readonly TakeFact[] {
  const sources: TakeFact = { group: "sources", text: sourcesWords(t) };
  if (hasPlateSheet(t)) return [sources];
  const figures = [...notedFigures(t, distances), ...calculatedFigures(t, distances)].flatMap((figure): readonly TakeFact[] => {
    const group = FIGURE_GROUPS.find((name) => name === figure.source);
    if (group !== undefined) return [{ group, text: `${figure.term} ${figure.text}` }];
    return figure.text === NOT_RECORDED || figure.text === NOT_CALCULATED ? [{ group: figure.text, text: figure.term }] : [];
  });
  if (short) return [sources, ...figures.filter(({ group }) => group === "noted")];
  const note = calibrationNote(t.calibration, distances);
  return [sources, ...figures, ...(note === "" || t.take.track === null ? [] : [{ group: "lens look", text: note } as const])];
}

/** Where the figures of the row come from; empty when that is said elsewhere. */
export function sourcesOf(facts: readonly TakeFact[]): string {
  return facts.find(({ group }) => group === "sources")?.text ?? "";
}

export function figuresOf(facts: readonly TakeFact[], group: FactGroup): string {
  return facts
    .filter((fact) => fact.group === group)
    .map(({ text }) => text)
    .join("; ");
}

/** "Not recorded: filters and tilt. Not calculated: distortion and shading." */
export function absentOf(facts: readonly TakeFact[]): string {
  const clauses = [NOT_RECORDED, NOT_CALCULATED].flatMap((group) => {
    const terms = facts.filter((fact) => fact.group === group).map(({ text }) => text);
    return terms.length === 0 ? [] : [`${sentenceCase(group)}: ${listWords(terms)}.`];
  });
  return clauses.join(" ");
}
