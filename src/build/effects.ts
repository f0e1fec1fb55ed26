/** The outside world as the build sees it. Tests pass their own; the command passes the file system, the clock and the terminal. */
import type { ShowFolder } from "../ingest/folder.ts";
import type { BusyLock, HeldLock } from "./lock.ts";

/** The output folder. All names are relative to it, with `/`. */
export interface OutFolder {
  /** Absolute path, for the renderer that writes pages by itself and for messages. */
  readonly path: string;
  /** Absolute path of a file or folder in it. */
  absolute(name: string): string;
  /** Size in bytes; `null` when there is no such file. */
  size(file: string): number | null;
  /** Bytes; `null` when there is no such file. */
  read(file: string): Uint8Array | null;
  /** Writes the whole file; its folder is made. */
  write(file: string, content: Uint8Array | string): void;
  /** Files below a folder at any depth, in name order, relative to the output folder; empty when the folder is absent. */
  files(folder: string): readonly string[];
  /** Names directly in the output folder; `null` when it is absent. */
  topNames(): readonly string[] | null;
  /** Puts a file in the place of another in one step. */
  move(from: string, to: string): void;
  /** Removes a file and the folders that are empty then. An absent file is no fault. */
  removeFile(file: string): void;
  /** Removes a folder of our own with all it holds. */
  removeFolder(folder: string): void;
}

/** What the build says while it runs. */
export interface BuildLog {
  /** The stage a day is in, for a progress line: `date`, how many days are done of how many, the stage in a word. */
  progress(date: string, done: number, of: number, stage: string): void;
  /** A day is finished, or was left as it is. */
  day(report: DayReport): void;
  /** Anything else, for `--verbose`. */
  detail(text: string): void;
  /** What people wait for and how long: printed unless the command is quiet. */
  say?(text: string): void;
}

export interface DayReport {
  readonly date: string;
  readonly day: number | null;
  readonly state: "built" | "unchanged" | "removed" | "failed";
  /** Why it was built, such as "notes.csv changed". */
  readonly reason: string;
  readonly takes: number;
  readonly milliseconds: number;
  /** Milliseconds of each stage, in order; empty for a day that was left as it is. */
  readonly stages: readonly { readonly stage: string; readonly milliseconds: number }[];
}

export interface BuildEffects {
  readonly show: ShowFolder;
  /** Links in the show folder that lead out of it and were not followed. */
  linksLeftOut(): readonly string[];
  readonly out: OutFolder;
  /** Keeps other builds away from the output folder until it is released; absent where nobody else can be there. */
  lock?(): HeldLock | BusyLock;
  readonly log: BuildLog;
  /** Milliseconds from any start. Serves durations only: no output depends on it. */
  now(): number;
}
