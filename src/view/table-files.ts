/** Tables with more rows than a page prints and no file that holds them: their CSV is written beside the page. */
import { fileSize } from "../format/amounts.ts";
import type { PageSet } from "./context.ts";
import { hrefTo } from "./links.ts";
import { NO_FILE, type TableModel } from "./table.ts";

/** What of a table, or of a list that is none, a file beside the page holds. */
export type FileBeside = Pick<TableModel, "id" | "overflow" | "file" | "hasFile">;

/** A file of that text beside the page, once the page's tables are linked; none for an empty text. */
export function fileBeside(id: string, text: string): FileBeside {
  return { id, overflow: text, file: NO_FILE, hasFile: false };
}

/** A file to write: path below the output folder, and its text. */
export interface TableFile {
  readonly path: string;
  readonly text: string;
}

/** The pages with a link to that file under each such table. A page without one is the very same object. */
export function linkTableFiles(pages: PageSet): PageSet {
  const linked = Object.entries(pages).map(([kind, models]) => [
    kind,
    models.map((page) => mapTables(page, (table) => withFile(table, page.path))),
  ]);
  return Object.fromEntries(linked);
}

/** The files that those links lead to. */
export function tableFiles(pages: PageSet): readonly TableFile[] {
  return Object.values(pages)
    .flat()
    .flatMap((page) => overflowing(page).map((table) => ({ path: tablePath(page.path, table.id), text: table.overflow })));
}

/** `days/2026-10-06/vfx.html` and `others-table`: `days/2026-10-06/vfx.others-table.csv`. */
function tablePath(page: string, table: string): string {
  return `${page.replace(/\.html$/, "")}.${table}.csv`;
}

function withFile(table: FileBeside, page: string): FileBeside {
  const size = fileSize(new TextEncoder().encode(table.overflow).length);
  return { ...table, hasFile: true, file: { label: "All rows as CSV", href: hrefTo(page, tablePath(page, table.id)), size } };
}

/** A copy where tables that overflow have been changed; what holds none is the very same object. */
function mapTables<T>(value: T, change: (table: FileBeside) => FileBeside): T {
  if (value === null || typeof value !== "object") return value;
  if (isOverflowing(value)) return change(value) as T & FileBeside;
  if (Array.isArray(value)) {
    const mapped = value.map((item) => mapTables(item, change));
    return mapped.some((item, i) => item !== value[i]) ? (mapped as T) : value;
  }
  const entries = Object.entries(value).map(([key, item]) => [key, mapTables(item, change), item] as const);
  return entries.some(([, after, before]) => after !== before)
    ? (Object.fromEntries(entries.map(([key, after]) => [key, after])) as T)
    : value;
}

/** The tables in a page model that overflow, in the order in which they stand in it. */
function overflowing(value: unknown): readonly FileBeside[] {
  if (value === null || typeof value !== "object") return [];
  return isOverflowing(value) ? [value] : Object.values(value).flatMap((item) => overflowing(item));
}

function isOverflowing(value: object): value is FileBeside {
  return "overflow" in value && typeof value.overflow === "string" && value.overflow !== "";
}
