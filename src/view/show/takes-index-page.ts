/** All takes of the show as the index of a book: by slate from A to Z. It serves readers without script, and Find in the browser. */
import { compareCodes } from "../../core/code-order.ts";
import { plural } from "../../format/words.ts";
import type { Kit } from "../../ingest/records.ts";
import type { DayDigest, TakeDigest } from "../../summary/digest-types.ts";
import type { PageModel, SiteContext } from "../context.ts";
import { showTableLinks } from "../files.ts";
import type { FilterBar } from "../filters.ts";
import { CLIPS_TABLE_PATH, dayPath, foldName, freeName, hrefTo, TAKES_PATH, takePath } from "../links.ts";
import { dayHeading, dayShort } from "../names.ts";
import { pageBase } from "../page.ts";
import { MOST_ROWS, type TableModel } from "../table.ts";
import { digestBar } from "./digest-filters.ts";
import { headingOf, takesTable } from "./takes-table.ts";

export interface IndexTake {
  readonly href: string;
  readonly take: string;
  readonly ringCls: string;
  readonly camera: string;
  /** ", circled" for who cannot see the ring; else empty. */
  readonly circledWords: string;
  readonly clip: string;
}

export interface IndexSlate {
  readonly slate: string;
  readonly day: string;
  readonly dayHref: string;
  readonly takes: readonly IndexTake[];
}

export interface IndexGroup {
  readonly id: string;
  readonly heading: string;
  readonly slates: readonly IndexSlate[];
}

export interface TakesIndexPage extends PageModel {
  readonly about: string;
  /** All takes as one table to sort and to filter; a show with more than that has the list alone, which leaves none out. */
  readonly hasTable: boolean;
  readonly table: TableModel;
  readonly filters: FilterBar;
  readonly hasList: boolean;
  readonly days: readonly { readonly label: string; readonly href: string; readonly takes: string }[];
  readonly groups: readonly IndexGroup[];
  readonly hasTakes: boolean;
}

export function takesIndexPage(digests: readonly DayDigest[], kit: Kit, context: SiteContext): TakesIndexPage {
  const clips = digests.reduce((total, d) => total + d.takes.length, 0);
  const takes = digests.reduce((total, d) => total + d.totals.takes, 0);
  const hasTable = clips > 0 && clips <= MOST_ROWS;
  const [file] = showTableLinks(context, TAKES_PATH, CLIPS_TABLE_PATH);
  return {
    ...pageBase(
      {
        path: TAKES_PATH,
        title: "All takes",
        trail: [{ label: "All takes", path: TAKES_PATH }],
        styles: ["groups.css", "more-chips.css", "takes-index.css"],
      },
      context,
    ),
    about: `${plural(takes, "take")} in ${plural(clips, "clip")}, by slate.`,
    days: digests.map((d) => ({
      label: dayShort(d),
      href: hrefTo(TAKES_PATH, dayPath(d.date)),
      takes: plural(d.totals.takes, "take"),
    })),
    hasTable,
    table: takesTable(hasTable ? digests : [], kit, file),
    filters: digestBar(hasTable ? digests : [], kit),
    hasList: clips > MOST_ROWS,
    groups: groupsOf(digests),
    hasTakes: clips > 0,
  };
}

function groupsOf(digests: readonly DayDigest[]): readonly IndexGroup[] {
  const slates = digests.flatMap((d) => slatesOf(d)).sort((a, b) => compareCodes(a.slate, b.slate));
  const groups = new Map<string, IndexSlate[]>();
  for (const entry of slates) {
    const heading = headingOf(entry.slate);
    const group = groups.get(heading);
    if (group === undefined) groups.set(heading, [entry]);
    else group.push(entry);
  }
  const ids = new Set<string>();
  return [...groups].map(([heading, entries]) => {
    return { id: freeName(`slates-${foldName(heading)}`, ids), heading, slates: entries };
  });
}

/** Slates of a day in the order of their first take. */
function slatesOf(d: DayDigest): readonly IndexSlate[] {
  const slates = new Map<string, TakeDigest[]>();
  for (const t of d.takes) {
    const takes = slates.get(t.slate);
    if (takes === undefined) slates.set(t.slate, [t]);
    else takes.push(t);
  }
  return [...slates].map(([slate, takes]) => ({
    slate,
    day: dayHeading(d),
    dayHref: hrefTo(TAKES_PATH, dayPath(d.date)),
    takes: takes.map((t) => ({
      href: hrefTo(TAKES_PATH, takePath(d.date, t.address)),
      take: t.take,
      ringCls: t.circled ? "ring on" : "ring",
      camera: t.camera,
      circledWords: t.circled ? ", circled" : "",
      clip: t.clip ?? "",
    })),
  }));
}
