/** What the takes of all days can be filtered by: the facets of a day's takes, and the day. */
import { compareCodes } from "../../core/code-order.ts";
import type { Kit } from "../../ingest/records.ts";
import type { DayDigest, TakeDigest } from "../../summary/digest-types.ts";
import { chipsOf, type FilterBar, type FilterChip, OF_TAKES } from "../filters.ts";
import { dayShort, focalMark } from "../names.ts";
import type { Facet } from "../table.ts";

const FLAGS: readonly (readonly [name: string, label: string, has: (t: TakeDigest) => boolean])[] = [
  ["circled", "Circled", (t) => t.circled],
  ["plates", "Plates", (t) => t.plate !== null],
  ["findings", "With findings", (t) => t.findings > 0],
];

export function digestFacets(day: DayDigest, t: TakeDigest): readonly Facet[] {
  return [
    { name: "day", value: day.date },
    ...(t.lens === null ? [] : [{ name: "lens", value: t.lens }]),
    { name: "camera", value: t.camera },
    ...(t.scene === null ? [] : [{ name: "scene", value: t.scene }]),
    ...FLAGS.filter(([, , has]) => has(t)).map(([name]) => ({ name, value: "" })),
  ];
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
  const flags = FLAGS.flatMap(([name, label]) => chipsOf(facets, name).map((chip): FilterChip => ({ ...chip, label })));
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
    groups: flags.length === 0 ? groups : [{ label: "Kind", folded: false, chips: flags }, ...groups],
    all: takes === 1 ? "1 clip." : `All ${takes} clips shown.`,
  };
}

/** "35 mm, P35": two sets of lenses may share a focal length. */
function lensLabel(id: string, kit: Kit): string {
  const lens = kit.lenses.find((other) => other.id === id);
  return lens === undefined || (lens.focalMm === null && lens.focalMinMm === null) ? id : `${id}, ${focalMark(lens)} mm`;
}
