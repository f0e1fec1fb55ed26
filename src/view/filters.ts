/** What the takes of a page can be filtered by: scene, camera, lens, plates, circled, with findings. */
import { compareCodes } from "../core/code-order.ts";
import { openFindings } from "../core/finding.ts";
import { thousands } from "../format/number.ts";
import type { Kit } from "../ingest/records.ts";
import type { TakeDigest } from "../summary/digest-types.ts";
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
  /** Many chips that few readers need: one press away. */
  readonly folded: boolean;
  readonly chips: readonly FilterChip[];
}

export interface FilterBar {
  readonly groups: readonly FilterGroup[];
  /** "All 28 clips shown.": what stands until a filter is set. */
  readonly all: string;
  /** Name of the box for words. */
  readonly label: string;
  /** What is filtered, as a word for one and for several. */
  readonly one: string;
  readonly many: string;
  /** What to do when nothing is left. */
  readonly wayOut: string;
  /** Facets that an address of this page may name, with spaces between. */
  readonly names: string;
}

/** How the filters of takes speak. */
export const OF_TAKES = {
  label: "Find in these takes",
  one: "clip",
  many: "clips",
  wayOut: "Take a filter off, show all, or look on all days with \u2018Find a take\u2019.",
  names: "lens camera scene circled plates findings",
} as const;

/** Values of one facet in the order of their first, with how often each stands; the label is the value. */
export function chipsOf(facets: readonly Facet[], name: string): FilterChip[] {
  const counts = new Map<string, number>();
  for (const facet of facets) if (facet.name === name) counts.set(facet.value, (counts.get(facet.value) ?? 0) + 1);
  return [...counts].map(([value, count]) => ({ name, value, label: value, count: thousands(count) }));
}

/** What a take is filtered by. */
type Filtered = Pick<TakeDigest, "lens" | "camera" | "scene" | "circled" | "plate" | "findings">;

/** Flags of a take, in the order of their chips. */
const FLAGS: readonly (readonly [name: string, label: string, has: (t: Filtered) => boolean])[] = [
  ["circled", "Circled", (t) => t.circled],
  ["plates", "Plates", (t) => t.plate !== null],
  ["findings", "With findings", (t) => t.findings > 0],
];

export function facetsOf(t: Filtered): readonly Facet[] {
  return [
    ...(t.lens === null ? [] : [{ name: "lens", value: t.lens }]),
    { name: "camera", value: t.camera },
    ...(t.scene === null ? [] : [{ name: "scene", value: t.scene }]),
    ...FLAGS.filter(([, , has]) => has(t)).map(([name]) => ({ name, value: "" })),
  ];
}

/** The facets of a take's row. */
export function takeFacets({ take, findings }: TakeSummary): readonly Facet[] {
  return facetsOf({ ...take, lens: take.lensId, findings: openFindings(findings).length });
}

/** The chips of the flags; one that no take has is left out. */
export function flagGroup(facets: readonly Facet[]): FilterGroup {
  const chips = FLAGS.flatMap(([name, label]) => chipsOf(facets, name).map((chip): FilterChip => ({ ...chip, label })));
  return { label: "Kind", folded: false, chips };
}

/** "35 mm" of a lens of the kit; `null` where no focal length is known. */
export function lensMark(id: string, kit: Kit): string | null {
  const lens = kit.lenses.find((l) => l.id === id);
  return lens === undefined || (lens.focalMm === null && lens.focalMinMm === null) ? null : `${focalMark(lens)} mm`;
}

/** The chips for some takes. A group that would not part them is left out, and so is a flag that none has. */
export function filterBar(takes: readonly TakeSummary[], day: DayContext): FilterBar {
  const facets = takes.flatMap(takeFacets);
  const counted = (name: string) => chipsOf(facets, name);
  const scenes = counted("scene").sort((a, b) => compareCodes(a.value, b.value));
  const cameras = counted("camera").sort((a, b) => (a.value < b.value ? -1 : 1));
  const focal = (id: string) => {
    const lens = day.summary.kit.lenses.find((l) => l.id === id);
    return lens?.focalMm ?? lens?.focalMinMm ?? Number.POSITIVE_INFINITY;
  };
  // the shortest first; lenses that are alike stay in order of use
  const lenses = counted("lens").sort((a, b) => (focal(a.value) === focal(b.value) ? 0 : focal(a.value) - focal(b.value)));
  const labels = lensLabels(
    lenses.map(({ value }) => value),
    day.summary.kit,
  );
  const kinds = flagGroup(facets);
  const groups: readonly FilterGroup[] = [
    { label: "Scene", folded: false, chips: scenes.map((chip) => ({ ...chip, label: `Scene ${chip.value}` })) },
    { label: "Camera", folded: false, chips: cameras.map((chip) => ({ ...chip, label: `Camera ${chip.value}` })) },
    { label: "Lens", folded: false, chips: lenses.map((chip) => ({ ...chip, label: labels.get(chip.value) ?? chip.value })) },
  ];
  return {
    groups: [...(kinds.chips.length > 0 ? [kinds] : []), ...groups.filter(({ chips }) => chips.length > 1)],
    ...OF_TAKES,
    all: takes.length === 1 ? "1 clip." : `All ${thousands(takes.length)} clips shown.`,
  };
}

/** "35 mm"; the id as well where two lenses are marked alike. */
function lensLabels(ids: readonly string[], kit: Kit): ReadonlyMap<string, string> {
  const marks = ids.map((id) => lensMark(id, kit) ?? id);
  return new Map(
    ids.map((id, i) => {
      const mark = marks[i] ?? id;
      const twice = marks.filter((other) => other === mark).length > 1;
      return [id, twice ? `${mark}, ${id}` : mark];
    }),
  );
}
