/** Hashes of a day's input files: read once, never parsed, so that an unchanged day costs no more than that. */
import { compareText } from "../core/finding.ts";
import { growingHash, sha256 } from "../core/hash.ts";
import { eachStretch } from "../csv/byte-source.ts";
import type { ShowFolder } from "../ingest/folder.ts";
import { sourceOf } from "../ingest/open-file.ts";
import type { InputFile } from "./plan.ts";

/**
 * Every file below a folder of the show with its hash, in name order. Names that begin with a dot are left out: file
 * managers and backup programs leave them there. A file that cannot be read has the hash of the reason.
 */
export function inputHashes(show: ShowFolder, folder: string): readonly InputFile[] {
  const found = (show.list(folder) ?? [])
    .filter((entry) => !entry.name.startsWith("."))
    .flatMap((entry): readonly InputFile[] => {
      const file = `${folder}/${entry.name}`;
      return entry.kind === "folder" ? inputHashes(show, file) : [{ file, sha256: hashOf(show, file) }];
    });
  return [...found].sort((a, b) => compareText(a.file, b.file));
}

function hashOf(show: ShowFolder, file: string): string {
  const source = sourceOf(show, file);
  if ("problem" in source) return sha256(`problem: ${source.problem}`);
  const hash = growingHash();
  eachStretch(source, hash.add);
  return hash.hex();
}
