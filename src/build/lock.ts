/** One build at a time on an output folder: a file that says which process is at work. */
import { linkSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { hostname } from "node:os";
import { join } from "node:path";
import { RECORDS } from "./manifest.ts";

export interface HeldLock {
  release(): void;
}

/** Another build is at work; `by` says which, in words that follow "in use by". */
export interface BusyLock {
  readonly by: string;
  /** The lock's file. */
  readonly file: string;
}

interface Owner {
  readonly pid: number;
  readonly host: string;
  /** When the process began, as the system counts it: a number may be given to another process later. `null` where nobody says. */
  readonly began: string | null;
}

/**
 * Takes the lock of an output folder. A lock whose process has ended is taken over: a killed build leaves one behind.
 * Throws what the file system says when the folder cannot be written.
 */
export function lockOutput(outPath: string): HeldLock | BusyLock {
  const folder = join(outPath, RECORDS);
  const file = join(folder, "lock");
  const mine: Owner = { pid: process.pid, host: hostname(), began: beganAt(process.pid) };
  const text = `${JSON.stringify(mine)}\n`;
  const own = join(folder, `lock-${mine.pid}`);
  mkdirSync(folder, { recursive: true });
  try {
    writeFileSync(own, text);
    removeLeftovers(folder);
    for (let attempt = 0; attempt < 5; attempt++) {
      if (placed(own, file)) return { release: () => release(file, text) };
      const there = read(file);
      if (there === null) continue;
      const owner = ownerOf(there);
      if (owner !== null && isAtWork(owner)) return { by: `process ${owner.pid} on ${owner.host}`, file };
      takeAway(file, there, `${own}-stale`);
    }
    return { by: "another process", file };
  } finally {
    rmSync(own, { force: true });
  }
}

/** A process that was killed while it took the lock left its own file. */
function removeLeftovers(folder: string): void {
  for (const name of readdirSync(folder)) {
    const pid = /^lock-(\d+)(?:-stale)?$/.exec(name)?.[1];
    if (pid !== undefined && !isRunning(Number(pid))) rmSync(join(folder, name), { force: true });
  }
}

/** Puts the lock in place only where none is: a link is made or refused in one step. */
function placed(own: string, file: string): boolean {
  try {
    linkSync(own, file);
    return true;
  } catch (error) {
    if (codeOf(error) === "EEXIST") return false;
    // disks without links: creating a file that must not be there is as good
    try {
      writeFileSync(file, readFileSync(own), { flag: "wx" });
      return true;
    } catch (second) {
      if (codeOf(second) === "EEXIST") return false;
      throw second;
    }
  }
}

/** Takes a stale lock away, unless another process was faster and a live one stands in its place by now. */
function takeAway(file: string, stale: string, aside: string): void {
  try {
    renameSync(file, aside);
  } catch {
    return;
  }
  if (read(aside) !== stale) placed(aside, file);
  rmSync(aside, { force: true });
}

function release(file: string, text: string): void {
  if (read(file) === text) rmSync(file, { force: true });
}

function read(file: string): string | null {
  try {
    return readFileSync(file, "utf8");
  } catch {
    return null;
  }
}

function ownerOf(text: string): Owner | null {
  try {
    const value: unknown = JSON.parse(text);
    if (typeof value !== "object" || value === null || !("pid" in value) || !("host" in value)) return null;
    const { pid, host } = value;
    const began = "began" in value && typeof value.began === "string" ? value.began : null;
    return Number.isSafeInteger(pid) && typeof host === "string" ? { pid: pid as number, host, began } : null;
  } catch {
    return null;
  }
}

/** Whether the owner still runs. Of another computer nobody here can know: its lock holds. */
function isAtWork(owner: Owner): boolean {
  if (owner.host !== hostname()) return true;
  return isRunning(owner.pid) && (owner.began === null || owner.began === beganAt(owner.pid));
}

function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return codeOf(error) === "EPERM";
  }
}

/** Start of a process in the system's own count; only Linux says it in a file. */
function beganAt(pid: number): string | null {
  const stat = read(`/proc/${pid}/stat`);
  // the name of the program is in brackets and may hold anything; the start is the 22nd field, the 20th after them
  return stat?.slice(stat.lastIndexOf(")") + 2).split(" ")[19] ?? null;
}

function codeOf(error: unknown): string | null {
  return error instanceof Error && "code" in error && typeof error.code === "string" ? error.code : null;
}
