/** The day for VFX: plates with hero and clean paired, their lens look and files, then every other take. */
import type { PageModel } from "../context.ts";
import type { DayContext } from "../day/day-context.ts";
import { type DayHead, dayHead, dayTitle } from "../day/day-page.ts";
import { type FileLink, fileLinks } from "../files.ts";
import { type FilterBar, filterBar } from "../filters.ts";
import { dayPath, foldName, freeName, hrefTo, PLATES_PATH, platePath } from "../links.ts";
import { dayShort } from "../names.ts";
import { pageBase } from "../page.ts";
import type { TableModel } from "../table.ts";
import { type PlatePair, pairPlates } from "./plates.ts";
import { lookTable, standTable } from "./vfx-tables.ts";

export interface PlateGroup {
  readonly id: string;
  readonly heading: string;
  /** What differs between the hero and its clean plate, in words. */
  readonly sentence: string;
  /** A sheet to print for each slate of the group. */
  readonly sheets: readonly { readonly label: string; readonly href: string }[];
  readonly stand: TableModel;
  readonly look: TableModel;
}

export interface VfxPage extends PageModel, DayHead {
  readonly filters: FilterBar;
  readonly groups: readonly PlateGroup[];
  readonly hasGroups: boolean;
  readonly others: TableModel;
  readonly othersLook: TableModel;
  readonly hasOthers: boolean;
  readonly othersHeading: string;
  /** What stands in the place of a table without rows. */
  readonly noOthers: string;
  readonly files: readonly FileLink[];
  readonly hasFiles: boolean;
  readonly platesHref: string;
}

export function vfxPage(day: DayContext): VfxPage {
  const { summary, site } = day;
  const path = dayPath(summary.date, "vfx");
  const ref = { date: summary.date, day: summary.day.record.day };
  const plates = day.takes.filter((t) => t.take.plate !== null);
  const ids = new Set<string>();
  const others = day.takes.filter((t) => t.take.plate === null);
  const files = fileLinks(
    site,
    summary.date,
    path,
    (name) => name === "day.json" || name === "datapackage.json" || name === "takes.csv" || name.endsWith("-vfx.pdf"),
  );
  return {
    ...pageBase(
      {
        path,
        title: `VFX, ${dayTitle(day.summary.day.record)}`,
        trail: [
          { label: dayShort(ref), path: dayPath(summary.date) },
          { label: "VFX", path },
        ],
        styles: ["day.css", "wide.css", "broad.css"],
        landscape: true,
      },
      site,
    ),
    ...dayHead(day.summary.day.record, site),
    filters: filterBar(day.takes, day),
    groups: pairPlates(plates).map((pair) => plateGroup(pair, day, path, freeName(`plate-${foldName(pair.slate)}`, ids))),
    hasGroups: plates.length > 0,
    others: standTable("others-table", "Takes that are not marked as plates", others, day, path, false),
    othersLook: lookTable("others-look", "Lens look at the middle logged frame", others, day, path),
    hasOthers: others.length > 0,
    othersHeading: plates.length === 0 ? "All takes" : "Takes that are not plates",
    noOthers: plates.length === 0 ? "No take of this day was found." : "Every take of this day is a plate.",
    files,
    hasFiles: files.length > 0,
    platesHref: hrefTo(path, PLATES_PATH),
  };
}

function plateGroup(pair: PlatePair, day: DayContext, path: string, id: string): PlateGroup {
  return {
    id,
    heading: pair.heading,
    sentence: pair.sentence,
    stand: standTable(`${id}-table`, `Plates: ${pair.heading}`, pair.takes, day, path, true),
    look: lookTable(`${id}-look`, "Lens look at the middle logged frame, and each take's files", pair.takes, day, path),
    sheets: sheetLinks(pair, day.summary.date, path),
  };
}

function sheetLinks(pair: PlatePair, date: string, path: string): PlateGroup["sheets"] {
  const byPath = new Map(pair.takes.map((t) => [platePath(date, t.take.slate), t.take.slate]));
  return [...byPath].map(([sheet, slate]) => ({ label: `Plate sheet ${slate}`, href: hrefTo(path, sheet) }));
}
