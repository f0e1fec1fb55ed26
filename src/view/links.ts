/** Paths of the pages and relative hrefs between them: the only place that knows where a page lies. */
import type { Kit } from "../ingest/records.ts";
import { foldName as foldSlate } from "../model/address.ts";

export const HOME_PATH = "index.html";
export const KIT_PATH = "kit.html";
export const METHODS_PATH = "methods.html";
export const FINDINGS_PATH = "findings.html";
export const TAKES_PATH = "takes.html";
export const SCENES_PATH = "scenes.html";
export const PLATES_PATH = "plates.html";
export const CLIPS_PATH = "clips.html";
export const SHOW_PRODUCTION_PATH = "production.html";
export const ABOUT_PATH = "about.html";

/** Tables beside the show-wide pages. */
export const CLIPS_TABLE_PATH = "clips.csv";
export const INPUTS_TABLE_PATH = "inputs.csv";

/** The pages of a day beside its takes. */
export type DayPageName = "index" | "editorial" | "vfx" | "production" | "findings";

export function dayPath(date: string, name: DayPageName = "index"): string {
  return `days/${date}/${name}.html`;
}

export function takePath(date: string, address: string): string {
  return `days/${date}/takes/${address}.html`;
}

/** The sheet of a plate set-up; slates that fold alike, as in a take's address, have one. */
export function platePath(date: string, slate: string): string {
  return `days/${date}/plate-${foldSlate(slate)}.html`;
}

/** The script with every frame of a take, beside its page. */
export function takeDataPath(date: string, address: string): string {
  return `days/${date}/takes/${address}.data.js`;
}

/** A still of a day, or a picture made from one, by its name in the report. */
export function stillPath(date: string, name: string): string {
  return `days/${date}/stills/${name}`;
}

/** A file of a day's pack by its name in the pack. */
export function packPath(date: string, name: string): string {
  return `packs/${date}/${name}`;
}

/**
 * Relative href from one file of the site to another, with an optional fragment: parent steps as needed, each part
 * percent-encoded. A page's link to itself with a fragment is the fragment alone.
 *
 * @example hrefTo("days/2026-10-06/index.html", "kit.html") // "../../kit.html"
 */
export function hrefTo(fromPath: string, toPath: string, fragment = ""): string {
  const hash = fragment === "" ? "" : `#${fragment}`;
  if (fromPath === toPath && hash !== "") return hash;
  const from = fromPath.split("/").slice(0, -1);
  const to = toPath.split("/");
  let shared = 0;
  while (shared < from.length && shared < to.length - 1 && from[shared] === to[shared]) shared++;
  const up = from.slice(shared).map(() => "..");
  return [...up, ...to.slice(shared).map(encodeURIComponent)].join("/") + hash;
}

/** Prefix from a page to the output folder: `""`, `"../../"` ... */
export function rootPrefix(path: string): string {
  return "../".repeat(path.split("/").length - 1);
}

/** Id of the row and the anchor of a slate on its day page; several spellings that fold alike are numbered in order. */
export function foldName(text: string): string {
  const folded = text
    .normalize("NFD")
    .replace(/[\u0300-\u036f]/g, "")
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-+|-+$/g, "");
  return folded === "" ? "x" : folded;
}

/** Fragment of each slate on the page of a day, by the slate as written, in the order of their first take. */
export function slateAnchors(slates: readonly string[]): ReadonlyMap<string, string> {
  const anchors = new Map<string, string>();
  const taken = new Set<string>();
  for (const slate of slates) {
    if (anchors.has(slate)) continue;
    anchors.set(slate, freeName(`slate-${foldName(slate)}`, taken));
  }
  return anchors;
}

/** The name, or the name with `-2`, `-3` when it is taken; it is taken then. */
export function freeName(base: string, taken: Set<string>): string {
  let name = base;
  for (let n = 2; taken.has(name); n++) name = `${base}-${n}`;
  taken.add(name);
  return name;
}

const PLAIN_FILE_NAME = /^[A-Za-z0-9](?:[A-Za-z0-9-]{0,38}[A-Za-z0-9])?$/;
/** Names that some file systems keep for devices. */
const DEVICE_NAME = /^(con|prn|aux|nul|com[0-9]|lpt[0-9])$/i;

/**
 * Path of each lens's page by lens id. A plain id is its own file name; any other is folded to `a-z 0-9 -`. Two names
 * that differ only by case would be one file on many disks: later ones get `-2`, `-3` in the order of the kit.
 */
export function lensPaths(kit: Kit): ReadonlyMap<string, string> {
  const paths = new Map<string, string>();
  const taken = new Set<string>();
  for (const lens of kit.lenses) {
    if (paths.has(lens.id)) continue;
    const plain = PLAIN_FILE_NAME.test(lens.id) && !DEVICE_NAME.test(lens.id);
    const base = plain ? lens.id : foldName(lens.id).slice(0, 40) + (DEVICE_NAME.test(lens.id) ? "-lens" : "");
    let name = base;
    for (let n = 2; taken.has(name.toLowerCase()); n++) name = `${base}-${n}`;
    taken.add(name.toLowerCase());
    paths.set(lens.id, `lenses/${name}.html`);
  }
  return paths;
}
