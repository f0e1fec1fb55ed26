/** Compares a pack with its own hash list. Needs nothing but the pack: its folder, or the zip that it came in. */
import { createHash } from "node:crypto";
import { compareText } from "../core/finding.ts";
import { c4FromSha512 } from "../export/mhl/hashes.ts";
import { expectedFiles, readHistory } from "../export/mhl/history.ts";
import type { ReadFile } from "../export/mhl/manifest.ts";
import { fileProblem } from "./file-problem.ts";
import { folderSource, type PackSource, type Present, packsInZip } from "./pack-source.ts";
import { thisTool } from "./program.ts";
import { noPack, noPackInZip } from "./verify-hint.ts";
import { ZipProblem } from "./zip/read-zip.ts";

/** `unchecked`: only hashes are listed that this program does not know. */
export type FileState = "same" | "changed" | "missing" | "extra" | "unchecked";

export interface VerifiedFile {
  /** Relative to the pack, with `/`. */
  readonly path: string;
  readonly state: FileState;
  /** Size now; `null` for a missing file. */
  readonly bytes: number | null;
  readonly expectedBytes: number | null;
  readonly algorithm: string | null;
  readonly hash: string | null;
  readonly expectedHash: string | null;
  /** What more there is to say, such as that a link stands in the file's place; empty as a rule. */
  readonly detail: string;
}

export interface Verification {
  /** In order of their paths. */
  readonly files: readonly VerifiedFile[];
  readonly counts: Readonly<Record<FileState, number>>;
  /** Number and date of the newest generation, and who made it. */
  readonly generation: number;
  readonly created: string;
  readonly host: string;
  /** What is wrong with the history itself. */
  readonly problems: readonly string[];
  readonly intact: boolean;
  /** Folder of the pack in the zip that was named; `null` where a folder was. */
  readonly inZip: string | null;
}

/** Result for the pack in a folder or in a zip, or why there is nothing to compare with. */
export function verifyPack(path: string): Verification | { readonly problem: string } {
  try {
    const source = sourceOf(path);
    return "problem" in source ? source : verified(source, path);
  } catch (error) {
    const words = error instanceof ZipProblem ? `${error.message}.` : fileProblem(error);
    if (words === null) throw error;
    return { problem: `"${path}" ${words}` };
  }
}

function sourceOf(path: string): PackSource | { readonly problem: string } {
  const nothing = noPack(path);
  if (nothing === null) return folderSource(path);
  if (nothing !== "zip") return { problem: nothing };
  const packs = packsInZip(path);
  const [only] = packs;
  return only !== undefined && packs.length === 1 ? only : { problem: noPackInZip(path, packs) };
}

function verified(source: PackSource, path: string): Verification | { readonly problem: string } {
  const { generations, problems } = readHistory(source.history());
  const newest = generations.findLast((g) => g.manifest !== null);
  if (newest?.manifest === undefined || newest.manifest === null) {
    return { problem: `the hash list in "${path}" cannot be read: ${problems[0] ?? "it is empty."}` };
  }
  const expected = expectedFiles({ generations, problems }, thisTool().name);
  const present = new Map(source.files().map((entry) => [entry.path, entry]));
  const paths = [...new Set([...expected.keys(), ...present.keys()])].sort(compareText);
  const files = withLikely(paths.map((path) => compare(source, path, expected.get(path) ?? null, present.get(path) ?? null)));
  const counts = { same: 0, changed: 0, missing: 0, extra: 0, unchecked: 0 };
  for (const file of files) counts[file.state]++;
  return {
    files,
    counts,
    generation: newest.generation,
    created: newest.manifest.created,
    host: newest.manifest.host,
    problems,
    intact: problems.length === 0 && files.every((file) => file.state === "same"),
    inZip: source.inZip,
  };
}

function compare(source: PackSource, path: string, expected: ReadFile | null, there: Present | null): VerifiedFile {
  const known = expected === null ? null : bestHash(expected);
  const base = {
    path,
    bytes: there?.bytes ?? null,
    expectedBytes: expected?.bytes ?? null,
    algorithm: known?.algorithm ?? null,
    hash: null,
    expectedHash: known?.hash ?? null,
    detail: "",
  };
  if (there === null) return { ...base, state: "missing" };
  if (there.kind === "other") return { ...base, state: expected === null ? "extra" : "changed", detail: "is no plain file" };
  const algorithm = known?.algorithm ?? "c4";
  const hash = hashFile(source, path, algorithm);
  if ("problem" in hash) return { ...base, state: expected === null ? "extra" : "changed", detail: hash.problem };
  const seen = { ...base, algorithm, hash: hash.text };
  if (expected === null) return { ...seen, state: "extra" };
  if (known === null) return { ...seen, state: "unchecked", detail: "only hashes of other kinds are listed" };
  const isSame = hash.text === known.hash && (expected.bytes === null || expected.bytes === there.bytes);
  return { ...seen, state: isSame ? "same" : "changed" };
}

const ALGORITHMS = ["c4", "sha1", "md5"] as const;
type Algorithm = (typeof ALGORITHMS)[number];

function bestHash({ hashes }: ReadFile): { readonly algorithm: Algorithm; readonly hash: string } | null {
  for (const algorithm of ALGORITHMS) {
    const hash = hashes[algorithm];
    if (hash !== undefined) return { algorithm, hash };
  }
  return null;
}

/** Hash of a file of any size, read in pieces. */
function hashFile(
  source: PackSource,
  path: string,
  algorithm: Algorithm,
): { readonly text: string } | { readonly problem: string } {
  const hash = createHash(algorithm === "c4" ? "sha512" : algorithm);
  try {
    source.read(path, (piece) => hash.update(piece));
  } catch (error) {
    return { problem: error instanceof ZipProblem ? error.message : (fileProblem(error) ?? "cannot be read") };
  }
  const hex = hash.digest("hex");
  return { text: algorithm === "c4" ? c4FromSha512(hex) : hex };
}

/** What systems and file managers leave in folders that somebody looked into. */
const LEFT_BEHIND = /(^|\/)(Thumbs\.db|desktop\.ini|\._[^/]*)$/i;

/** Says of an extra file what it most likely is: a missing one under another name, or left behind by a file manager. */
function withLikely(files: readonly VerifiedFile[]): readonly VerifiedFile[] {
  const missing = new Map(files.flatMap((f) => (f.state === "missing" ? [[`${f.algorithm} ${f.expectedHash}`, f.path]] : [])));
  return files.map((file) => {
    if (file.state !== "extra" || file.detail !== "") return file;
    const was = missing.get(`${file.algorithm} ${file.hash}`);
    if (was !== undefined) return { ...file, detail: `holds what is missing as ${was}` };
    return LEFT_BEHIND.test(file.path) ? { ...file, detail: "left behind by a file manager" } : file;
  });
}
