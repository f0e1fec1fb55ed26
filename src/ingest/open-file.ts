import type { FindingCollector } from "../core/findings/collect.ts";
import { CSV } from "../core/findings/csv.ts";
import { sha256 } from "../core/hash.ts";
import { decodeText, tooLarge, wholeFile } from "../csv/decode.ts";
import { LARGEST_FILE_BYTES, overlongLine } from "../csv/limits.ts";
import type { FolderEntry, ShowFolder } from "./folder.ts";

/** An input file as the manifests list it. */
export interface InputFile {
  readonly file: string;
  readonly sha256: string;
  readonly bytes: number;
}

/** Opens the files of a show and remembers each with its hash. */
export interface Opener {
  /** Entries of a folder in name order without hidden ones; empty when it is absent. */
  list(folder: string): readonly FolderEntry[];
  /** Whether the folder has an entry of this name, of whatever kind. */
  has(file: string): boolean;
  /** Bytes of a file that should be there; `null`, with an error, when it cannot be read. */
  bytes(file: string): Uint8Array | null;
  /** Text of a file that should be there (see `decodeText`); `null`, with an error, when there is none. */
  text(file: string): string | null;
  /** Hash of a file that was opened. */
  hash(file: string): string;
  /** All files opened, in name order. */
  files(): readonly InputFile[];
}

export function opener(folder: ShowFolder, found: FindingCollector): Opener {
  const opened = new Map<string, InputFile>();
  const list = (name: string): readonly FolderEntry[] => (folder.list(name) ?? []).filter((entry) => !entry.name.startsWith("."));
  const bytes = (file: string): Uint8Array | null => {
    const size = folder.size?.(file) ?? 0;
    if (size > LARGEST_FILE_BYTES) {
      found.addAll([tooLarge(file, size, LARGEST_FILE_BYTES)]);
      return null;
    }
    const content = folder.read(file);
    if (content instanceof Uint8Array) {
      opened.set(file, { file, sha256: sha256(content), bytes: content.length });
      return content;
    }
    found.add(CSV.unreadable, {
      place: wholeFile(file),
      message: `${file} cannot be read: ${content.problem}`,
      hint: "Put a readable file of that name there, or take it away.",
    });
    return null;
  };
  return {
    list,
    bytes,
    has: (file) => {
      const cut = file.lastIndexOf("/");
      return list(cut < 0 ? "" : file.slice(0, cut)).some((entry) => entry.name === file.slice(cut + 1));
    },
    text: (file) => {
      const content = bytes(file);
      if (content === null) return null;
      tellOfLongLine(content, file, found);
      const decoded = decodeText(content, file);
      found.addAll(decoded.findings);
      return decoded.text;
    },
    hash: (file) => opened.get(file)?.sha256 ?? "",
    files: () => [...opened.values()].sort((a, b) => (a.file < b.file ? -1 : a.file > b.file ? 1 : 0)),
  };
}

/** Says so when a line of a text file is longer than any that people or recorders write. */
export function tellOfLongLine(content: Uint8Array, file: string, found: FindingCollector): void {
  const long = overlongLine(content);
  if (long === null) return;
  found.add(CSV.longLine, {
    place: { file, line: long.line, column: null },
    message: `line ${long.line} has ${long.bytes} bytes`,
    hint: "Look whether the line ends were lost when the file was copied, and copy it again.",
  });
}
