/** What the takes of a page can be filtered by: scene, camera, lens, plates, circled, with findings. */
import { compareCodes } from "../core/code-order.ts";
import { openFindings } from "../core/finding.ts";
import type { TakeSummary } from "../summary/types.ts";
import type { DayContext } from "./day/day-context.ts";
import { focalMark } from "./names.ts";
import type { Facet } from "./table.ts";

/** A chip: `name` and `value` are those of the rows' facets, and of the address `?lens=P35&camera=A&circled`. */
export interface FilterChip extends Facet {
  readonly label: string;
  readonly count: string;
}

export interface FilterGroup {
  readonly label: string;
  readonly chips: readonly FilterChip[];
}

export interface FilterBar {
  readonly groups: readonly FilterGroup[];
  /** "All 28 clips shown.": what stands until a filter is set. */
  readonly all: string;
}

/** Flags of a take, in the order of their chips. */
const FLAGS: readonly (readonly [name: string, label: string, has: (t: TakeSummary) => boolean])[] = [
  ["circled", "Circled", (t) => t.take.circled],
  ["plates", "Plates", (t) => t.take.plate !== null],
  ["findings", "With findings", (t) => openFindings(t.findings).length > 0],
];

/** The facets of a take's row. */
export function takeFacets(t: TakeSummary): readonly Facet[] {
  return [
    ...(t.take.lensId === null ? [] : [{ name: "lens", value: t.take.lensId }]),
    { name: "camera", value: t.take.camera },
    ...(t.take.scene === null ? [] : [{ name: "scene", value: t.take.scene }]),
    ...FLAGS.filter(([, , has]) => has(t)).map(([name]) => ({ name, value: "" })),
  ];
}

/** The chips for some takes. A group that would not part them is left out, and so is a flag that none has. */
export function filterBar(takes: readonly TakeSummary[], day: DayContext): FilterBar {
  const counted = (name: string) => {
    const counts = new Map<string, number>();
    for (const { value } of takes.flatMap(takeFacets).filter((facet) => facet.name === name))
      counts.set(value, (counts.get(value) ?? 0) + 1);
    return [...counts];
  };
  const flags = FLAGS.flatMap(([name, label]) =>
    counted(name).map(([value, count]): FilterChip => ({ name, value, label, count: String(count) })),
  );
  const scenes = counted("scene").sort(([a], [b]) => compareCodes(a, b));
  const cameras = counted("camera").sort(([a], [b]) => (a < b ? -1 : 1));
  const focal = (id: string) => {
    const lens = day.summary.kit.lenses.find((l) => l.id === id);
    return lens?.focalMm ?? lens?.focalMinMm ?? Number.POSITIVE_INFINITY;
  };
  // the shortest first; lenses that are alike stay in order of use
  const lenses = counted("lens").sort(([a], [b]) => (focal(a) === focal(b) ? 0 : focal(a) - focal(b)));
  const labels = lensLabels(
    lenses.map(([id]) => id),
    day,
  );
  const groups: readonly FilterGroup[] = [
    { label: "Kind", chips: flags },
    {
      label: "Scene",
      chips: scenes.map(([value, count]) => ({ name: "scene", value, label: `Scene ${value}`, count: String(count) })),
    },
    {
      label: "Camera",
      chips: cameras.map(([value, count]) => ({ name: "camera", value, label: `Camera ${value}`, count: String(count) })),
    },
    {
      label: "Lens",
      chips: lenses.map(([value, count]) => ({ name: "lens", value, label: labels.get(value) ?? value, count: String(count) })),
    },
  ];
  return {
    groups: groups.filter(({ label, chips }) => chips.length > (label === "Kind" ? 0 : 1)),
    all: takes.length === 1 ? "1 clip." : `All ${takes.length} clips shown.`,
  };
}

/** "35 mm"; the id as well where two lenses are marked alike. */
function lensLabels(ids: readonly string[], day: DayContext): ReadonlyMap<string, string> {
  const marks = ids.map((id) => {
    const lens = day.summary.kit.lenses.find((l) => l.id === id);
    return lens === undefined || (lens.focalMm === null && lens.focalMinMm === null) ? id : `${focalMark(lens)} mm`;
  });
  return new Map(
    ids.map((id, i) => {
      const mark = marks[i] ?? id;
      const twice = marks.filter((other) => other === mark).length > 1;
      return [id, twice ? `${mark}, ${id}` : mark];
    }),
  );
}
