/** What the takes of all days can be filtered by: the facets of a day's takes, and the day. */
import { compareCodes } from "../../core/code-order.ts";
import type { Kit } from "../../ingest/records.ts";
import type { DayDigest, TakeDigest } from "../../summary/digest-types.ts";
import { chipsOf, type FilterBar, type FilterChip, facetsOf, flagGroup, lensMark, OF_TAKES } from "../filters.ts";
import { dayShort } from "../names.ts";
import type { Facet } from "../table.ts";

export function digestFacets(day: DayDigest, t: TakeDigest): readonly Facet[] {
  return [{ name: "day", value: day.date }, ...facetsOf(t)];
}

/** A group of more chips is folded: a whole show has many scenes and lenses. */
const MANY = 8;

export function digestBar(digests: readonly DayDigest[], kit: Kit): FilterBar {
  const facets = digests.flatMap((day) => day.takes.flatMap((take) => digestFacets(day, take)));
  const takes = digests.reduce((sum, day) => sum + day.takes.length, 0);
  const days = new Map(digests.map((day) => [day.date, dayShort(day)]));
  const group = (label: string, name: string, labelOf: (value: string) => string, order: "found" | "code" = "found") => {
    const chips = chipsOf(facets, name).map((chip): FilterChip => ({ ...chip, label: labelOf(chip.value) }));
    if (order === "code") chips.sort((a, b) => compareCodes(a.value, b.value));
    return { label, folded: chips.length > MANY, chips };
  };
  const kinds = flagGroup(facets);
  const groups = [
    group("Days", "day", (date) => days.get(date) ?? date),
    group("Cameras", "camera", (camera) => `Camera ${camera}`, "code"),
    group("Lenses", "lens", (id) => lensLabel(id, kit), "code"),
    group("Scenes", "scene", (scene) => `Scene ${scene}`, "code"),
  ].filter(({ chips }) => chips.length > 1);
  return {
    ...OF_TAKES,
    names: `day ${OF_TAKES.names}`,
    wayOut: "Take a filter off, or show all.",
    groups: kinds.chips.length === 0 ? groups : [kinds, ...groups],
    all: takes === 1 ? "1 clip." : `All ${takes} clips shown.`,
  };
}

/** "P35, 35 mm": two sets of lenses may share a focal length. */
function lensLabel(id: string, kit: Kit): string {
  const mark = lensMark(id, kit);
  return mark === null ? id : `${id}, ${mark}`;
}
