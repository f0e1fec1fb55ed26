import type { FindingCollector } from "../core/findings/collect.ts";
import { CSV } from "../core/findings/csv.ts";
import { growingHash, sha256 } from "../core/hash.ts";
import { type ByteSource, memorySource } from "../csv/byte-source.ts";
import { decodeText, tooLarge, wholeFile } from "../csv/decode.ts";
import { LARGEST_FILE_BYTES, LARGEST_LOG_BYTES, overlongLine } from "../csv/limits.ts";
import { type PagedText, pagedText } from "../csv/paged-text.ts";
import { surveyText } from "../csv/survey.ts";
import type { FolderEntry, ShowFolder } from "./folder.ts";
import { tellOfLongLine } from "./log/log-text.ts";

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
  /** Text of a log, of which a page at a time is read; `null`, with an error, when the file cannot be read. */
  pages(file: string): PagedText | null;
  /** Hash of a file that was opened. */
  hash(file: string): string;
  /** All files opened, in name order. */
  files(): readonly InputFile[];
}

export function opener(folder: ShowFolder, found: FindingCollector): Opener {
  const opened = new Map<string, InputFile>();
  const list = (name: string): readonly FolderEntry[] => (folder.list(name) ?? []).filter((entry) => !entry.name.startsWith("."));
  const isTooLarge = (file: string, largest: number): boolean => {
    const size = folder.size?.(file) ?? 0;
    if (size > largest) found.addAll([tooLarge(file, size, largest)]);
    return size > largest;
  };
  const tellOfProblem = (file: string, problem: string): null => {
    found.add(CSV.unreadable, {
      place: wholeFile(file),
      message: `${file} cannot be read: ${problem}`,
      hint: "Put a readable file of that name there, or take it away.",
    });
    return null;
  };
  const bytes = (file: string): Uint8Array | null => {
    if (isTooLarge(file, LARGEST_FILE_BYTES)) return null;
    const content = folder.read(file);
    if (!(content instanceof Uint8Array)) return tellOfProblem(file, content.problem);
    opened.set(file, { file, sha256: sha256(content), bytes: content.length });
    return content;
  };
  const pages = (file: string): PagedText | null => {
    if (isTooLarge(file, LARGEST_LOG_BYTES)) return null;
    const source = sourceOf(folder, file);
    if ("problem" in source) return tellOfProblem(file, source.problem);
    const hash = growingHash();
    const text = pagedText(source, surveyText(source, hash.add));
    opened.set(file, { file, sha256: hash.hex(), bytes: source.size });
    return text;
  };
  return {
    list,
    bytes,
    pages,
    has: (file) => {
      const cut = file.lastIndexOf("/");
      return list(cut < 0 ? "" : file.slice(0, cut)).some((entry) => entry.name === file.slice(cut + 1));
    },
    text: (file) => {
      const content = bytes(file);
      if (content === null) return null;
      const long = overlongLine(content);
      if (long !== null) tellOfLongLine(long, file, found);
      const decoded = decodeText(content, file);
      found.addAll(decoded.findings);
      return decoded.text;
    },
    hash: (file) => opened.get(file)?.sha256 ?? "",
    files: () => [...opened.values()].sort((a, b) => (a.file < b.file ? -1 : a.file > b.file ? 1 : 0)),
  };
}

/** A file of the folder as a source: from where it lies, or from memory. */
export function sourceOf(folder: ShowFolder, file: string): ByteSource | { readonly problem: string } {
  if (folder.open !== undefined) return folder.open(file);
  const content = folder.read(file);
  return content instanceof Uint8Array ? memorySource(content) : content;
}
