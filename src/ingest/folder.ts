import type { ByteSource } from "../csv/byte-source.ts";

/** The show folder as the readers see it. The build passes one over the file system, tests one over plain objects. */
export interface FolderEntry {
  readonly name: string;
  readonly kind: "file" | "folder" | "other";
}

export interface ShowFolder {
  /** Entries of a folder given relative to the show (`""` is the show itself), in name order; `null` when it is absent or no folder. */
  list(folder: string): readonly FolderEntry[] | null;
  /** Bytes of a file, or why it cannot be read in words ("is a folder", "permission denied"). */
  read(file: string): Uint8Array | { readonly problem: string };
  /** A file that is to be read a stretch at a time, or why it cannot be read. Where it is absent, files are read as a whole. */
  open?(file: string): ByteSource | { readonly problem: string };
  /** Bytes that a file has, without reading it; `null` when nobody can say. Where it is absent, files are read whatever their size. */
  size?(file: string): number | null;
}
