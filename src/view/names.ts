/** Names of takes, days and lenses as the pages write them. */

import { dateShort } from "../format/time.ts";
import type { PageDistances } from "../format/units.ts";
import { sentenceCase } from "../format/words.ts";
import type { Lens } from "../ingest/records.ts";
import type { Take } from "../model/types.ts";
import type { DayRef } from "./context.ts";

/** "24B take 3 A": unique in a day. */
export function takeName(take: { readonly slate: string; readonly take: string; readonly camera: string }): string {
  return `${take.slate} take ${take.take} ${take.camera}`;
}

/** "Day 9, 6 October" or, when the day has no number, "6 October". */
export function dayShort(day: DayRef): string {
  const date = dateShort(day.date);
  return day.day === null ? date : `Day ${day.day}, ${date}`;
}

/** "Day 9" or "Day of 6 October 2026" when the number is not recorded. */
export function dayHeading(day: DayRef): string {
  return day.day === null ? `Day of ${dateShort(day.date)}` : `Day ${day.day}`;
}

/** The heading inside a sentence: "day 9", "day of 6 October". */
export function dayInSentence(day: DayRef): string {
  return dayHeading(day).replace(/^Day/, "day");
}

/** Marked focal length without unit: "35", "28–80"; the lens's id where the kit has neither. */
export function focalMark(lens: Lens): string {
  if (lens.kind === "zoom" && lens.focalMinMm !== null && lens.focalMaxMm !== null) {
    return `${lens.focalMinMm}–${lens.focalMaxMm}`;
  }
  return lens.focalMm === null ? lens.id : String(lens.focalMm);
}

/** "Fathom 28–80" for a lens of the kit, its id for any other. */
export function lensName(lens: Lens | null, id: string): string {
  if (lens === null) return id;
  const series = lens.series ?? lens.maker;
  return series === null ? `${lens.id}, ${focalMark(lens)} mm` : `${series} ${focalMark(lens)}`;
}

/** "Main unit" from `main`; a name that already says so stays. */
export function unitName(unit: string): string {
  const text = sentenceCase(tradeWords(unit));
  return /\bunit\b/i.test(text) ? text : `${text} unit`;
}

/** Words for a take's standing: "Circled, good. Plate: hero of 24B." */
export function standing(take: Take): string {
  const first = [take.circled ? "circled" : null, take.status === null ? null : tradeWords(take.status)]
    .filter((word) => word !== null)
    .join(", ");
  const plate = plateWords(take);
  const sentences = [first === "" ? null : sentence(first), plate === null ? null : `Plate: ${plate}.`];
  return sentences.filter((text) => text !== null).join(" ");
}

/** Abbreviations of the trade, which stand in capitals wherever they stand. */
const ABBREVIATIONS = /\b(?:ng|mos|pu|vfx)\b/gi;

/** The words as they are said: "NG", "false start", "VFX supervisor". */
export function tradeWords(text: string): string {
  return text.replace(ABBREVIATIONS, (word) => word.toUpperCase());
}

/** "hero", "clean, of 24B" or `null` for a take that is no plate. */
export function plateWords(take: { readonly plate: string | null; readonly plateOf: string | null }): string | null {
  if (take.plate === null) return null;
  return take.plateOf === null ? take.plate : `${take.plate}, of ${take.plateOf}`;
}

/** How a take turned out and what was remarked, as sentences; `null` when neither is noted. */
export function remarkWords(status: string | null, remarks: string | null): string | null {
  const words = [status === null ? null : sentence(tradeWords(status)), remarks].filter((text) => text !== null).join(" ");
  return words === "" ? null : words;
}

/** A name or a note as a sentence of its own. Findings need none: their messages are sentences already. */
export function sentence(text: string): string {
  return `${sentenceCase(text)}${/[.!?]$/.test(text) ? "" : "."}`;
}

export type Distances = PageDistances;
