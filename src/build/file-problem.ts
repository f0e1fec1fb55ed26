import { sep } from "node:path";

/** What the operating system says about a file, in words that follow the file's name ("is a folder"). */
const WORDS: Readonly<Record<string, string>> = {
  ENOENT: "is not there",
  EISDIR: "is a folder",
  ENOTDIR: "lies under something that is no folder",
  EACCES: "may not be read or written: permission denied",
  EPERM: "may not be changed: permission denied",
  EROFS: "is on a disk that cannot be written",
  ENOSPC: "does not fit: the disk is full",
  EDQUOT: "does not fit: the quota is used up",
  EMFILE: "cannot be opened: too many files are open",
  ENAMETOOLONG: "has a name or path that is too long for this disk",
  ELOOP: "is a symbolic link that leads in a circle",
  EBUSY: "is in use by another program",
  EIO: "cannot be read: the disk reports a fault",
  EEXIST: "is there already",
  ENOTEMPTY: "is a folder that is not empty",
  EXDEV: "lies on another disk",
  EINVAL: "has a name that this disk does not take",
};

/** Words for an error of the file system; `null` when it is none (then it is a fault of the program). */
export function fileProblem(error: unknown): string | null {
  if (!(error instanceof Error) || !("code" in error) || typeof error.code !== "string") return null;
  if (!("syscall" in error)) return null;
  return WORDS[error.code] ?? `cannot be used (${error.code})`;
}

/** Path that an error of the file system names; `null` when it names none. */
function problemPath(error: unknown): string | null {
  if (!(error instanceof Error)) return null;
  if ("dest" in error && typeof error.dest === "string") return error.dest;
  return "path" in error && typeof error.path === "string" ? error.path : null;
}

/**
 * A sentence about an error that the output folder gave; `null` for any other error, such as a missing file of the program.
 * @param outPath absolute path of the output folder
 */
export function outProblem(outPath: string, error: unknown): string | null {
  const inner = innerError(error);
  if (inner !== null) return outProblem(outPath, inner);
  const words = fileProblem(error);
  const path = problemPath(error);
  if (words === null || path === null) return words === null ? null : `the output folder ${outPath} ${words}`;
  const above = outPath === path || outPath.startsWith(`${path}${sep}`);
  return above || path.startsWith(`${outPath}${sep}`) ? `${path} ${words}` : null;
}

/** The error that an error of a library was made from; `null` for one that has its own words or nothing inside. */
function innerError(error: unknown): unknown {
  if (!(error instanceof Error) || fileProblem(error) !== null) return null;
  const inner = "originalError" in error ? error.originalError : error.cause;
  return inner === undefined || inner === error ? null : inner;
}
