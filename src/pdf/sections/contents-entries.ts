/** What a camera report holds, in its order: known before a page is drawn. */
import type { DaySummary } from "../../summary/types.ts";
import { plateSlates, plateTarget, slateTarget, takesBySlate } from "../totals.ts";
import { FINDINGS_TARGET, FINDINGS_TITLE } from "./findings.ts";
import { SCENES_TARGET, SCENES_TITLE } from "./glance.ts";
import { LENSES_TARGET, LENSES_TITLE } from "./lenses.ts";
import { METHODS_TARGET, METHODS_TITLE } from "./methods.ts";
import { PLATES_TITLE } from "./plate-sheets.ts";
import { SETUPS_TARGET, SETUPS_TITLE } from "./take-sheets.ts";

export interface ContentsEntry {
  readonly title: string;
  readonly target: string;
  /** Parts of the section: slates. */
  readonly parts: readonly { readonly title: string; readonly target: string }[];
}

/** @param allScenes whether a page of all scenes follows the first page */
export function contentsEntries(summary: DaySummary, allScenes: boolean): readonly ContentsEntry[] {
  const slates = takesBySlate(summary).map(({ slate }, i) => ({ title: slate, target: slateTarget(i) }));
  const plates = plateSlates(summary).map(({ slate }, i) => ({ title: slate, target: plateTarget(i) }));
  return [
    ...(allScenes ? [{ title: SCENES_TITLE, target: SCENES_TARGET, parts: [] }] : []),
    { title: SETUPS_TITLE, target: SETUPS_TARGET, parts: slates },
    ...(plates.length === 0 ? [] : [{ title: PLATES_TITLE, target: plates[0]?.target ?? "", parts: plates }]),
    { title: LENSES_TITLE, target: LENSES_TARGET, parts: [] },
    { title: FINDINGS_TITLE, target: FINDINGS_TARGET, parts: [] },
    { title: METHODS_TITLE, target: METHODS_TARGET, parts: [] },
  ];
}
