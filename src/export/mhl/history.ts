/** The history of a pack: all its generations, and the next one when the pack has changed. */
import { compareText } from "../../core/finding.ts";
import { c4Of } from "./hashes.ts";
import {
  CHAIN_NAME,
  type ChainLink,
  chainText,
  HASH_FORMATS,
  type HistorySettings,
  type ListedFile,
  manifestName,
  manifestText,
  type ReadFile,
  type ReadManifest,
  readChain,
  readManifest,
} from "./manifest.ts";

/** A file of the history's folder. */
export interface NamedBytes {
  readonly name: string;
  readonly bytes: Uint8Array;
}

export interface Generation extends ChainLink {
  /** `null` when the manifest is gone or cannot be read. */
  readonly manifest: ReadManifest | null;
}

export interface History {
  readonly generations: readonly Generation[];
  /** What is wrong with the history itself, a sentence each. */
  readonly problems: readonly string[];
}

/** Reads the files of a history's folder. Nothing of it is trusted: what does not hold is a problem. */
export function readHistory(files: readonly NamedBytes[]): History {
  const byName = new Map(files.map((file) => [file.name, file.bytes]));
  const chain = byName.get(CHAIN_NAME);
  const links = chain === undefined ? null : readChain(decode(chain));
  if (links === null) {
    const problem = chain === undefined ? `${CHAIN_NAME} is missing.` : `${CHAIN_NAME} cannot be read.`;
    const found = files.filter((file) => GENERATION_NAME.test(file.name)).map(({ name, bytes }) => linkOf(name, bytes));
    return { generations: found.map((link) => ({ ...link, manifest: manifestOf(byName.get(link.name)) })), problems: [problem] };
  }
  const problems: string[] = [];
  const generations = links.map((link): Generation => {
    const bytes = byName.get(link.name);
    const manifest = manifestOf(bytes);
    if (bytes === undefined) problems.push(`${link.name} is missing.`);
    else if (c4Of(bytes) !== link.c4) problems.push(`${link.name} is not what ${CHAIN_NAME} vouches for.`);
    else if (manifest === null) problems.push(`${link.name} cannot be read.`);
    return { ...link, manifest };
  });
  const listed = new Set(links.map((link) => link.name));
  for (const { name } of files) {
    if (GENERATION_NAME.test(name) && !listed.has(name)) problems.push(`${name} is not in ${CHAIN_NAME}.`);
  }
  return { generations, problems };
}

const GENERATION_NAME = /^(\d{4,})_.+\.mhl$/;

function linkOf(name: string, bytes: Uint8Array): ChainLink {
  return { generation: Number(GENERATION_NAME.exec(name)?.[1] ?? 0), name, c4: c4Of(bytes) };
}

function manifestOf(bytes: Uint8Array | undefined): ReadManifest | null {
  return bytes === undefined ? null : readManifest(decode(bytes));
}

function decode(bytes: Uint8Array): string {
  return new TextDecoder().decode(bytes);
}

/**
 * The files a pack has to hold, by path: the newest complete list, which is one that `tool` made, with what others added later.
 * A generation of another program that only checks again adds its hashes; what it found changed is left out.
 */
export function expectedFiles({ generations }: History, tool: string): ReadonlyMap<string, ReadFile> {
  const expected = new Map<string, ReadFile>();
  for (const { manifest } of generations) {
    if (manifest === null) continue;
    const complete = manifest.tool === tool;
    if (complete) expected.clear();
    for (const file of manifest.files) {
      if (file.failed) continue;
      const before = expected.get(file.path);
      expected.set(file.path, before === undefined ? file : { ...file, hashes: { ...file.hashes, ...before.hashes } });
    }
  }
  return expected;
}

export interface NextHistory {
  /** All files of the history's folder: the earlier ones byte for byte, and what is new. */
  readonly files: readonly NamedBytes[];
  /** Number of the newest generation. */
  readonly generation: number;
  /** c4 of the list that was made now; `null` when the newest issued one holds. */
  readonly open: string | null;
  readonly problems: readonly string[];
}

/**
 * The history after the pack was made again. A list that was issued is kept byte for byte: somebody may hold a pack with it. The
 * newest lists that were not issued (`open`, the c4 of each) say what an earlier build made and nobody has: they give way to one
 * of the pack as it is now. A pack that is as its newest issued list says needs no other. A manifest that stands in no chain was
 * left by a build that was stopped: it is made anew.
 */
export function nextHistory(
  before: readonly NamedBytes[],
  pack: readonly ListedFile[],
  settings: HistorySettings,
  open: ReadonlySet<string> = new Set(),
): NextHistory {
  const all = before.length === 0 ? EMPTY : readHistory(before);
  const issued = all.generations.slice(0, 1 + all.generations.findLastIndex((g) => !open.has(g.c4)));
  const chained = new Set([CHAIN_NAME, ...issued.map((g) => g.name)]);
  const kept = before.filter((file) => chained.has(file.name) || !GENERATION_NAME.test(file.name));
  const isWhole = issued.length === all.generations.length;
  const withoutOpen = isWhole ? kept : withChain(kept, issued);
  const history = isWhole ? all : issued.length === 0 ? EMPTY : readHistory(withoutOpen);
  const listed = [...pack].sort((a, b) => compareText(a.path, b.path));
  const last = Math.max(0, ...issued.map((g) => g.generation));
  const problems = history.problems.filter((problem) => !problem.endsWith(`is not in ${CHAIN_NAME}.`));
  if (last > 0 && isAsListed(listed, expectedFiles(history, settings.tool.name))) {
    return { files: withoutOpen, generation: last, open: null, problems };
  }
  const name = manifestName(last + 1, settings);
  const manifest = Buffer.from(manifestText(listed, settings));
  const link = { generation: last + 1, name, c4: c4Of(manifest) };
  const files = withChain([...kept, { name, bytes: manifest }], [...issued, link]);
  return { files, generation: last + 1, open: link.c4, problems };
}

const EMPTY: History = { generations: [], problems: [] };

/** The files with a chain over these links, which comes last. */
function withChain(files: readonly NamedBytes[], links: readonly ChainLink[]): readonly NamedBytes[] {
  const rest = files.filter((file) => file.name !== CHAIN_NAME);
  return links.length === 0 ? rest : [...rest, { name: CHAIN_NAME, bytes: Buffer.from(chainText(links)) }];
}

function isAsListed(files: readonly ListedFile[], expected: ReadonlyMap<string, ReadFile>): boolean {
  if (files.length !== expected.size) return false;
  return files.every(({ path, hashes }) => {
    const known = expected.get(path)?.hashes ?? {};
    const format = HASH_FORMATS.find((f) => known[f] !== undefined);
    return (format === "c4" || format === "md5") && known[format] === hashes[format];
  });
}
