/** One day of a report as a zip: its pack, its pages with what they need, and a first page. */
import type { ShowInput } from "../../ingest/records.ts";
import type { DayDigest } from "../../summary/digest-types.ts";
import { SEARCH_ROWS_PATH, searchRows, searchRowsScript } from "../../view/show/search-rows.ts";
import type { OutFolder } from "../effects.ts";
import { filePieces } from "../file-pieces.ts";
import { isHistory } from "../pack-history.ts";
import type { LargeZipEntry, ZipEntry } from "./zip.ts";
import { zipIndex } from "./zip-index.ts";
import { neededFiles, withoutDeadLinks } from "./zip-pages.ts";

/** Pages about the show that a day's pages explain themselves with. */
const SHOW_PAGES = /^(kit|methods)\.html$|^lenses\/[^/]+\.html$/;

/** A file of this many bytes or more is never in memory as a whole, such as a clip that somebody put into the pack. */
const LARGE_BYTES = 256e6;

/** Entries in name order. Pages of other days stay at home, links to them are taken out, and search knows this day alone. */
export function dayEntries(out: OutFolder, show: ShowInput, digest: DayDigest): readonly (ZipEntry | LargeZipEntry)[] {
  const { date, day } = digest;
  const all = new Set(out.files("").filter((file) => !file.startsWith(".")));
  const wanted = [...all].filter((file) => {
    const ofTheDay = file.startsWith(`days/${date}/`) || file.startsWith(`packs/${date}/`);
    return ofTheDay || file.startsWith("assets/") || SHOW_PAGES.test(file);
  });
  const taken = new Set(wanted);
  for (const page of wanted.filter(isPage)) {
    for (const file of neededFiles(page, textOf(out, page))) if (all.has(file)) taken.add(file);
  }
  const isThere = (file: string) => taken.has(file) || file === "index.html" || file === SEARCH_ROWS_PATH;
  const pack = [...taken].filter((file) => file.startsWith(`packs/${date}/`) && !isHistory(file)).sort();
  const packFiles = pack.map((file) => ({ name: file.slice(`packs/${date}/`.length), bytes: out.size(file) ?? 0 }));
  const index: ZipEntry = {
    name: "index.html",
    read: () => Buffer.from(zipIndex({ show: show.show, date, day, packFiles, isThere })),
  };
  const search: ZipEntry = {
    name: SEARCH_ROWS_PATH,
    read: () => Buffer.from(searchRowsScript(searchRows([digest], show.kit))),
  };
  taken.delete(SEARCH_ROWS_PATH);
  const files = [...taken].map((name): ZipEntry | LargeZipEntry => {
    if ((out.size(name) ?? 0) >= LARGE_BYTES) return { name, pieces: () => filePieces(out.absolute(name)) };
    if (!isPage(name) || name.startsWith("packs/")) return { name, read: () => out.read(name) ?? new Uint8Array() };
    return { name, read: () => Buffer.from(withoutDeadLinks(name, textOf(out, name), isThere)) };
  });
  return [index, search, ...files].sort((a, b) => (a.name < b.name ? -1 : 1));
}

function isPage(file: string): boolean {
  return file.endsWith(".html");
}

function textOf(out: OutFolder, file: string): string {
  return new TextDecoder().decode(out.read(file) ?? new Uint8Array());
}
