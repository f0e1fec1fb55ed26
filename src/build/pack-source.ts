/** The files of a pack where they lie: in a folder, or in a zip that nobody has unpacked. */
import { lstatSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { compareText } from "../core/finding.ts";
import type { NamedBytes } from "../export/mhl/history.ts";
import { HISTORY_FOLDER } from "../export/mhl/manifest.ts";
import { filePieces } from "./file-pieces.ts";
import { readZipped, type ZippedFile, zippedFiles } from "./zip/read-zip.ts";

export interface Present {
  /** Relative to the pack, with `/`. */
  readonly path: string;
  readonly kind: "file" | "other";
  readonly bytes: number;
}

export interface PackSource {
  /** The pack's folder in the zip; `null` where it is a folder of the disk. */
  readonly inZip: string | null;
  /** Files at any depth, links as they are; the history and what file managers leave behind are no part of it. */
  files(): readonly Present[];
  /** Hash lists and their chain, by name. */
  history(): readonly NamedBytes[];
  /** Hands the content to `take` in pieces; throws what the disk says, or `ZipProblem`. */
  read(path: string, take: (piece: Uint8Array) => void): void;
}

export function folderSource(folder: string): PackSource {
  return {
    inZip: null,
    files: () => filesBelow(folder, ""),
    history() {
      const lists = join(folder, HISTORY_FOLDER);
      return readdirSync(lists, { withFileTypes: true })
        .filter((entry) => entry.isFile() && !entry.name.startsWith("."))
        .map((entry) => ({ name: entry.name, bytes: readFileSync(join(lists, entry.name)) }))
        .sort((a, b) => compareText(a.name, b.name));
    },
    read(path, take) {
      for (const piece of filePieces(join(folder, path))) take(piece);
    },
  };
}

function filesBelow(root: string, folder: string): readonly Present[] {
  return readdirSync(join(root, folder), { withFileTypes: true }).flatMap((entry): readonly Present[] => {
    const path = folder === "" ? entry.name : `${folder}/${entry.name}`;
    if (entry.name === ".DS_Store" || (entry.name === HISTORY_FOLDER && entry.isDirectory())) return [];
    if (entry.isDirectory()) return filesBelow(root, path);
    return [{ path, kind: entry.isFile() ? "file" : "other", bytes: lstatSync(join(root, path)).size }];
  });
}

/** Folders in a zip that have a hash list; throws `ZipProblem`. */
export function packsInZip(zip: string): readonly PackSource[] {
  const files = zippedFiles(zip);
  const lists = files.flatMap(({ name }) => {
    const [, folder] = new RegExp(`^(.*?)(?:^|/)${HISTORY_FOLDER}/[^/]+\\.mhl$`).exec(name) ?? [];
    return folder === undefined ? [] : [folder];
  });
  return [...new Set(lists)].sort(compareText).map((folder) => zipSource(zip, files, folder));
}

function zipSource(zip: string, all: readonly ZippedFile[], folder: string): PackSource {
  const start = folder === "" ? "" : `${folder}/`;
  const lists = `${HISTORY_FOLDER}/`;
  const below = all.flatMap((file) => (file.name.startsWith(start) ? [[file.name.slice(start.length), file] as const] : []));
  const byPath = new Map(below);
  const read = (path: string, take: (piece: Uint8Array) => void) => {
    const file = byPath.get(path);
    if (file !== undefined) readZipped(zip, file, take);
  };
  const leftOut = (path: string) => path.startsWith(lists) || path.includes(`/${lists}`) || /(^|\/)\.DS_Store$/.test(path);
  return {
    inZip: folder,
    files: () => below.flatMap(([path, { bytes }]) => (leftOut(path) ? [] : [{ path, kind: "file", bytes }])),
    history: () =>
      below
        .flatMap(([path]) => (path.startsWith(lists) ? [path.slice(lists.length)] : []))
        .filter((name) => !name.includes("/") && !name.startsWith("."))
        .sort(compareText)
        .map((name) => {
          const pieces: Uint8Array[] = [];
          read(`${lists}${name}`, (piece) => pieces.push(piece));
          return { name, bytes: Buffer.concat(pieces) };
        }),
    read,
  };
}
