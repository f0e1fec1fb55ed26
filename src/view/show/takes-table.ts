/** All takes of the show as one table, under the numbers of their slates. */
import { compareCodes } from "../../core/code-order.ts";
import { NOT_RECORDED } from "../../format/absent.ts";
import { minutesSeconds } from "../../format/time.ts";
import { listWords, plural } from "../../format/words.ts";
import type { Kit } from "../../ingest/records.ts";
import type { DayDigest, TakeDigest } from "../../summary/digest-types.ts";
import type { FileLink } from "../files.ts";
import { groupedTable } from "../grouped-table.ts";
import { dayPath, foldName, freeName, hrefTo, lensPaths, TAKES_PATH, takePath } from "../links.ts";
import { dayHeading, takeName } from "../names.ts";
import { cell, column, num, type Row, type RowGroup, row, type TableModel, textOr } from "../table.ts";
import { digestFacets } from "./digest-filters.ts";

/** A take with its day and its place in the order of the day. */
interface Placed {
  readonly day: DayDigest;
  readonly take: TakeDigest;
  readonly place: number;
}

export function takesTable(digests: readonly DayDigest[], kit: Kit, file: FileLink | undefined): TableModel {
  const lenses = lensPaths(kit);
  const columns = [
    column("Take"),
    column("Day", { unit: "and order of shooting" }),
    column("Timecode in"),
    column("Clip"),
    column("Length", { unit: "min:s", num: true }),
    column("Lens"),
    column("Scene"),
    column("Circled"),
  ];
  const groups = slateGroups(digests).map(({ takes, ...group }) => ({ ...group, rows: takes.map((one) => takeRow(one, lenses)) }));
  return groupedTable("all-takes-table", "All takes, by slate", columns, groups, "Slates", { order: "order of slates", file });
}

function slateGroups(digests: readonly DayDigest[]): readonly (Omit<RowGroup, "rows"> & { readonly takes: readonly Placed[] })[] {
  const placed = digests.flatMap((day) => day.takes.map((take, place) => ({ day, take, place })));
  const inOrder = [...placed].sort((a, b) => compareCodes(a.take.slate, b.take.slate));
  const headings = new Map<string, Placed[]>();
  for (const one of inOrder) {
    const heading = headingOf(one.take.slate);
    const own = headings.get(heading);
    if (own === undefined) headings.set(heading, [one]);
    else own.push(one);
  }
  const ids = new Set<string>();
  return [...headings].map(([heading, takes]) => {
    const slates = [...new Set(takes.map(({ take }) => take.slate))];
    return {
      id: freeName(`slates-${foldName(heading)}`, ids),
      heading,
      about: slates.length === 1 ? "" : `slates ${listWords(slates)}; `,
      count: plural(takes.length, "clip"),
      takes,
    };
  });
}

function takeRow({ day, take, place }: Placed, lenses: ReadonlyMap<string, string>): Row {
  const lens = take.lens === null ? undefined : lenses.get(take.lens);
  return row(
    cell(takeName(take), { nb: true, href: hrefTo(TAKES_PATH, takePath(day.date, take.address)) }),
    [
      // sorted by day, takes stand as they were shot
      cell(dayHeading(day), { nb: true, href: hrefTo(TAKES_PATH, dayPath(day.date)), value: `${day.date} ${place}` }),
      textOr(take.timecodeIn, NOT_RECORDED, { nb: true }),
      textOr(take.clip, NOT_RECORDED, { nb: true }),
      take.durationFrames === 0 ? cell(NOT_RECORDED, { num: true, absent: true }) : num(minutesSeconds(take.durationSeconds)),
      lens === undefined
        ? textOr(take.lens, NOT_RECORDED, { nb: true })
        : cell(take.lens ?? "", { nb: true, href: hrefTo(TAKES_PATH, lens) }),
      textOr(take.scene, NOT_RECORDED),
      cell(take.circled ? "circled" : "no", { cls: take.circled ? "is-circled" : "" }),
    ],
    "",
    { facets: digestFacets(day, take) },
  );
}

/** Slates stand under their number, those that begin with a letter under it. */
export function headingOf(slate: string): string {
  const number = /^\d+/.exec(slate)?.[0];
  return number ?? /\p{L}/u.exec(slate)?.[0]?.toUpperCase() ?? "Other";
}
