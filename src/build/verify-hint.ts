/** What to name instead, when something is verified that is no pack. */
import { readdirSync, statSync } from "node:fs";
import { dirname, join } from "node:path";
import { compareText } from "../core/finding.ts";
import { HISTORY_FOLDER } from "../export/mhl/manifest.ts";
import type { PackSource } from "./pack-source.ts";

/** Why there is no pack at a path, and what to name; `null` for a folder with a hash list, `zip` for a file that may hold one. */
export function noPack(path: string): string | "zip" | null {
  const kind = kindOf(path);
  if (kind === null) return `there is no folder "${path}".`;
  const isFolder = kind === "folder";
  if (isFolder && isFolderAt(join(path, HISTORY_FOLDER))) return null;
  const above = packAbove(path);
  if (above !== null) return `"${path}" is a part of the pack "${above}". Name the pack.`;
  if (!isFolder && /\.zip$/i.test(path)) return "zip";
  if (!isFolder) return `"${path}" is a file. Name the folder of a pack.`;
  return `"${path}" has no hash list (no folder ${HISTORY_FOLDER} in it).${packsIn(path)}`;
}

/** Why a zip with no pack, or with several, is not compared. */
export function noPackInZip(path: string, packs: readonly PackSource[]): string {
  if (packs.length === 0) return `there is no hash list in "${path}" (no folder ${HISTORY_FOLDER}): no pack is in it.`;
  const [first = ""] = packs.map(({ inZip }) => inZip ?? "");
  return `${packs.length} packs are in "${path}". Unpack it, and name one of them, such as ${first}.`;
}

/** The pack that a file or folder lies in. */
function packAbove(path: string): string | null {
  for (let folder = dirname(path); folder !== dirname(folder); folder = dirname(folder)) {
    if (isFolderAt(join(folder, HISTORY_FOLDER))) return folder;
  }
  return null;
}

/** A report or a show was named where a pack was meant: where its packs are. */
function packsIn(path: string): string {
  for (const report of [path, `${path}-report`]) {
    const [first] = namesIn(join(report, "packs"));
    if (first !== undefined)
      return ` Name one of ${report === path ? "its" : "the"} packs, such as ${join(report, "packs", first)}.`;
  }
  const inIt = namesIn(path).find((name) => isFolderAt(join(path, name, HISTORY_FOLDER)));
  if (inIt !== undefined) return ` Name one of its packs, such as ${join(path, inIt)}.`;
  if (namesIn(path).includes("show.yaml")) return " It is a show folder: the packs are in its report, in packs/<date>.";
  return "";
}

function isFolderAt(path: string): boolean {
  return kindOf(path) === "folder";
}

/** `null`: there is nothing, or nothing that may be looked at. */
function kindOf(path: string): "folder" | "file" | null {
  try {
    return statSync(path).isDirectory() ? "folder" : "file";
  } catch {
    return null;
  }
}

function namesIn(folder: string): readonly string[] {
  try {
    return readdirSync(folder).sort(compareText);
  } catch {
    return [];
  }
}
