/** Tables with more rows than a page prints and no file that holds them: their CSV is written beside the page. */
import { fileSize } from "../format/amounts.ts";
import type { PageSet } from "./context.ts";
import { hrefTo } from "./links.ts";
import type { TableModel } from "./table.ts";

/** A file to write: path below the output folder, and its text. */
export interface TableFile {
  readonly path: string;
  readonly text: string;
}

/** `days/2026-10-06/vfx.html` and `others-table`: `days/2026-10-06/vfx.others-table.csv`. */
function tablePath(page: string, table: string): string {
  return `${page.replace(/\.html$/, "")}.${table}.csv`;
}

/** The pages with a link to that file under each such table. */
export function linkTableFiles<T>(pages: T): T {
  return mapTables(pages, "", (table, page) => {
    const path = tablePath(page, table.id);
    const size = fileSize(new TextEncoder().encode(table.overflow).length);
    return { ...table, hasFile: true, file: { label: "All rows as CSV", href: hrefTo(page, path), size } };
  });
}

/** The files that those links lead to. */
export function tableFiles(pages: PageSet): readonly TableFile[] {
  const files: TableFile[] = [];
  mapTables(pages, "", (table, page) => {
    files.push({ path: tablePath(page, table.id), text: table.overflow });
    return table;
  });
  return files;
}

/** A copy where tables that overflow have been changed; what holds none is the very same object. */
function mapTables<T>(value: T, page: string, change: (table: TableModel, page: string) => TableModel): T {
  if (value === null || typeof value !== "object") return value;
  if (isOverflowing(value)) return change(value, page) as T & TableModel;
  const here = "path" in value && "storeKey" in value ? String(value.path) : page;
  if (Array.isArray(value)) {
    const mapped = value.map((item) => mapTables(item, here, change));
    return mapped.some((item, i) => item !== value[i]) ? (mapped as T) : value;
  }
  const entries = Object.entries(value).map(([key, item]) => [key, mapTables(item, here, change), item] as const);
  return entries.some(([, after, before]) => after !== before)
    ? (Object.fromEntries(entries.map(([key, after]) => [key, after])) as T)
    : value;
}

function isOverflowing(value: object): value is TableModel {
  return "overflow" in value && typeof value.overflow === "string" && value.overflow !== "";
}
