/** Files of a pack as links with sizes. */
import { fileSize } from "../format/amounts.ts";
import { plural } from "../format/words.ts";
import type { PackFile, SiteContext } from "./context.ts";
import { hrefTo, packPath } from "./links.ts";

export interface FileLink {
  readonly label: string;
  readonly href: string;
  /** "96 KB", or what the target is when it is a page. */
  readonly size: string;
}

const ABOUT: Readonly<Record<string, string>> = {
  "README.txt": "what each file is, units, how to verify",
  "LOSSES.md": "what each format cannot hold",
  "day.json": "every figure of the day",
  "takes.csv": "a row a take",
  "findings.csv": "a row a finding",
  "datapackage.json": "what the columns mean",
  "lens.csv": "a row a frame",
  "lens.opentrackio.jsonl": "OpenTrackIO samples, a line a frame",
  "camera.usda": "camera with lens, USD",
  "maps.csv": "which map serves which frames",
  "markers.csv": "focus pulls and gaps inside takes",
  "bins.csv": "a row a take, by scene",
};

export function fileLink(file: PackFile, date: string, fromPath: string, folder = ""): FileLink {
  const shown = folder === "" ? file.name : file.name.slice(folder.length);
  const base = file.name.slice(file.name.lastIndexOf("/") + 1);
  const about = ABOUT[base] ?? aboutExtension(base);
  return {
    label: about === "" ? shown : `${shown}, ${about}`,
    href: hrefTo(fromPath, packPath(date, file.name)),
    size: fileSize(file.bytes),
  };
}

function aboutExtension(name: string): string {
  if (name.endsWith("-camera-report.pdf")) return "to print and sign";
  if (name.endsWith(".pdf")) return "to print";
  if (/^undistort.*\.exr$/.test(name)) return "map, recorded to ideal";
  if (/^redistort.*\.exr$/.test(name)) return "map, ideal to recorded";
  if (/^shading.*\.exr$/.test(name)) return "brightness";
  if (name.endsWith(".otio")) return "OpenTimelineIO timeline";
  if (name.endsWith(".edl")) return "edit list";
  return "";
}

/** A table beside the show-wide pages as a list of one link; empty where it is not written. */
export function showTableLinks(context: SiteContext, fromPath: string, name: string): readonly FileLink[] {
  const tables = (context.showTables ?? []).filter((file) => file.name === name);
  return tables.map((file) => ({ label: file.name, href: hrefTo(fromPath, file.name), size: fileSize(file.bytes) }));
}

/** A numbered file, such as `vfx/a-24b-3/undistort-0017.exr`. */
const NUMBERED = /^(.*-)(\d+)(\.[a-z0-9]+)$/;
/** Longer series are one line: `maps.csv` beside them says which frames each serves. */
const MOST_OF_A_SERIES = 3;

/** Lines for files in their order; a long series of numbered ones is one line that leads to its first, with the size of all. */
function lines(files: readonly PackFile[], date: string, fromPath: string, folder: string): readonly FileLink[] {
  const links: FileLink[] = [];
  for (let i = 0; i < files.length; ) {
    const length = seriesLength(files, i);
    const series = files.slice(i, i + length);
    const [first] = series;
    if (first !== undefined && length > MOST_OF_A_SERIES) links.push(seriesLink(first, series, date, fromPath, folder));
    else links.push(...series.map((file) => fileLink(file, date, fromPath, folder)));
    i += length;
  }
  return links;
}

/** How many files from `start` on differ in their number alone; 1 for a file without one. */
function seriesLength(files: readonly PackFile[], start: number): number {
  const first = NUMBERED.exec(files[start]?.name ?? "");
  if (first === null) return 1;
  let length = 1;
  for (; start + length < files.length; length++) {
    const next = NUMBERED.exec(files[start + length]?.name ?? "");
    if (next === null || next[1] !== first[1] || next[3] !== first[3]) break;
  }
  return length;
}

function seriesLink(first: PackFile, series: readonly PackFile[], date: string, fromPath: string, folder: string): FileLink {
  const name = first.name.slice(folder.length);
  const last = NUMBERED.exec(series[series.length - 1]?.name ?? "")?.[2] ?? "";
  const about = aboutExtension(first.name.slice(first.name.lastIndexOf("/") + 1));
  return {
    label: [`${name.replace(/\.[^.]*$/, "")} to ${last}`, plural(series.length, "file"), about]
      .filter((words) => words !== "")
      .join(", "),
    href: hrefTo(fromPath, packPath(date, first.name)),
    size: fileSize(series.reduce((sum, file) => sum + file.bytes, 0)),
  };
}

/** One file of the pack as a link; `undefined` when it was not written. */
export function packFileLink(context: SiteContext, date: string, fromPath: string, name: string): FileLink | undefined {
  const file = context.packFiles.find((other) => other.name === name);
  return file === undefined ? undefined : fileLink(file, date, fromPath);
}

/** Files of the pack whose name passes, as links from a page, in the pack's order. */
export function fileLinks(
  context: SiteContext,
  date: string,
  fromPath: string,
  wanted: (name: string) => boolean,
  folder = "",
): readonly FileLink[] {
  return lines(
    context.packFiles.filter((file) => wanted(file.name)),
    date,
    fromPath,
    folder,
  );
}
