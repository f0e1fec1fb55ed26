/**
 * One generation of an ASC MHL history: the manifest with the hash of every file, and the chain file that vouches for it.
 *
 * @source ASC MHL 1.0 specification and its XML Schemas (repository ascmitc/mhl, xsd/).
 */
import type { FileHashes } from "./hashes.ts";
import { readXml, type XmlElement, xmlText } from "./xml.ts";

export const HISTORY_FOLDER = "ascmhl";
export const CHAIN_NAME = "ascmhl_chain.xml";

/** Files that are no part of a pack. The standard's own list of what is left out. */
const IGNORED = [".DS_Store", HISTORY_FOLDER, `${HISTORY_FOLDER}/`] as const;

/** Who made a generation, and when. Nothing here comes from the clock or the machine. */
export interface HistorySettings {
  /** UTC, such as `2026-10-06T18:30:00Z`. */
  readonly created: string;
  readonly host: string;
  readonly tool: { readonly name: string; readonly version: string };
  /** Name of the pack's folder. */
  readonly folder: string;
}

export interface ListedFile {
  /** Relative to the pack, with `/`. */
  readonly path: string;
  readonly bytes: number;
  readonly hashes: FileHashes;
}

/** `0001_2026-10-06_2026-10-06_183000Z.mhl` */
export function manifestName(generation: number, { created, folder }: HistorySettings): string {
  const [date, time = ""] = created.split("T");
  return `${String(generation).padStart(4, "0")}_${folder}_${date}_${time.slice(0, 8).replaceAll(":", "")}Z.mhl`;
}

/** Text of a manifest; files in the order given. Every issue is a complete list of its own, so that all its hashes are originals. */
export function manifestText(files: readonly ListedFile[], settings: HistorySettings): string {
  const { created, host, tool } = settings;
  const hash = ({ path, bytes, hashes }: ListedFile) => [
    "    <hash>",
    `      <path size="${bytes}">${xmlText(path)}</path>`,
    `      <c4 action="original">${hashes.c4}</c4>`,
    `      <md5 action="original">${hashes.md5}</md5>`,
    "    </hash>",
  ];
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    '<hashlist version="2.0" xmlns="urn:ASC:MHL:v2.0">',
    "  <creatorinfo>",
    `    <creationdate>${created.replace("Z", "+00:00")}</creationdate>`,
    `    <hostname>${xmlText(host)}</hostname>`,
    `    <tool version="${xmlText(tool.version)}">${xmlText(tool.name)}</tool>`,
    "  </creatorinfo>",
    "  <processinfo>",
    "    <process>in-place</process>",
    "    <ignore>",
    ...IGNORED.map((pattern) => `      <pattern>${xmlText(pattern)}</pattern>`),
    "    </ignore>",
    "  </processinfo>",
    ...(files.length === 0 ? [] : ["  <hashes>", ...files.flatMap(hash), "  </hashes>"]),
    "</hashlist>",
    "",
  ].join("\n");
}

export interface ChainLink {
  readonly generation: number;
  /** Name of the manifest in the history's folder. */
  readonly name: string;
  readonly c4: string;
}

export function chainText(links: readonly ChainLink[]): string {
  const link = ({ generation, name, c4 }: ChainLink) => [
    `  <hashlist sequencenr="${generation}">`,
    `    <path>${xmlText(name)}</path>`,
    `    <c4>${c4}</c4>`,
    "  </hashlist>",
  ];
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    '<ascmhldirectory xmlns="urn:ASC:MHL:DIRECTORY:v2.0">',
    ...links.flatMap(link),
    "</ascmhldirectory>",
    "",
  ].join("\n");
}

/** Links of a chain file in order; `null` when it is none. A manifest is a plain name: a chain that points elsewhere is refused. */
export function readChain(text: string): readonly ChainLink[] | null {
  const root = readXml(text);
  if (root === null || root.name !== "ascmhldirectory") return null;
  const links = root.children.map((element): ChainLink | null => {
    const name = textOf(element, "path");
    const c4 = textOf(element, "c4");
    const generation = Number(element.attributes.sequencenr);
    if (element.name !== "hashlist" || name === null || c4 === null || !Number.isSafeInteger(generation)) return null;
    return /^[^/\\]+$/.test(name) && name !== ".." ? { generation, name, c4 } : null;
  });
  return links.length > 0 && links.every((link) => link !== null) ? links : null;
}

/** Formats of hashes that a manifest may use, best first. */
export const HASH_FORMATS = ["c4", "sha1", "md5", "xxh128", "xxh3", "xxh64"] as const;
export type HashFormat = (typeof HASH_FORMATS)[number];

export interface ReadFile {
  readonly path: string;
  readonly bytes: number | null;
  readonly hashes: Readonly<Partial<Record<HashFormat, string>>>;
  /** Set when the one who made the list found the file changed. */
  readonly failed: boolean;
}

export interface ReadManifest {
  readonly created: string;
  readonly host: string;
  readonly tool: string;
  readonly files: readonly ReadFile[];
}

/** A manifest as data; `null` when it is none. Folders are left out: they say nothing that the files do not. */
export function readManifest(text: string): ReadManifest | null {
  const root = readXml(text);
  if (root === null || root.name !== "hashlist") return null;
  const creator = root.children.find((e) => e.name === "creatorinfo");
  const hashes = root.children.find((e) => e.name === "hashes")?.children ?? [];
  const files = hashes.filter((e) => e.name === "hash").map(readFile);
  if (creator === undefined || files.some((file) => file === null)) return null;
  return {
    created: textOf(creator, "creationdate") ?? "",
    host: textOf(creator, "hostname") ?? "",
    tool: textOf(creator, "tool") ?? "",
    files: files.filter((file) => file !== null),
  };
}

function readFile(element: XmlElement): ReadFile | null {
  const path = element.children.find((e) => e.name === "path");
  if (path === undefined || !isInside(path.text)) return null;
  const size = path.attributes.size;
  const hashes: Partial<Record<HashFormat, string>> = {};
  let failed = false;
  for (const entry of element.children) {
    const format = HASH_FORMATS.find((f) => f === entry.name);
    if (format === undefined) continue;
    if (entry.attributes.action === "failed") failed = true;
    else hashes[format] = entry.text.trim();
  }
  return { path: path.text, bytes: size !== undefined && /^\d+$/.test(size) ? Number(size) : null, hashes, failed };
}

/** Paths of a manifest lead to files of the pack and nowhere else. */
function isInside(path: string): boolean {
  return path !== "" && !/^[/\\]|^[A-Za-z]:|\\|\0/.test(path) && !path.split("/").includes("..");
}

function textOf(element: XmlElement, name: string): string | null {
  return element.children.find((e) => e.name === name)?.text.trim() ?? null;
}
