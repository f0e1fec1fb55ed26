/** Files of a pack as links with sizes. */
import { fileSize } from "../format/amounts.ts";
import type { PackFile, SiteContext } from "./context.ts";
import { hrefTo, packPath } from "./links.ts";

export interface FileLink {
  readonly label: string;
  readonly href: string;
  /** "96 KB", or what the target is when it is a page. */
  readonly size: string;
}

const ABOUT: Readonly<Record<string, string>> = {
  "day.json": "every figure of the day",
  "takes.csv": "a row a take",
  "findings.csv": "a row a finding",
  "datapackage.json": "what the columns mean",
  "lens.csv": "a row a frame",
  "lens.opentrackio.jsonl": "OpenTrackIO samples, a line a frame",
  "camera.usda": "camera with lens, USD",
  "maps.csv": "which map serves which frames",
  "markers.csv": "markers",
  "bins.csv": "bins",
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
  if (/^undistort.*\.exr$/.test(name)) return "map, recorded to ideal";
  if (/^redistort.*\.exr$/.test(name)) return "map, ideal to recorded";
  if (/^shading.*\.exr$/.test(name)) return "brightness";
  if (name.endsWith(".otio")) return "OpenTimelineIO timeline";
  if (name.endsWith(".edl")) return "edit list";
  return "";
}

/** Files of the pack whose name passes, as links from a page, in the pack's order. */
export function fileLinks(
  context: SiteContext,
  date: string,
  fromPath: string,
  wanted: (name: string) => boolean,
  folder = "",
): readonly FileLink[] {
  return context.packFiles.filter((file) => wanted(file.name)).map((file) => fileLink(file, date, fromPath, folder));
}
