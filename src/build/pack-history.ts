/** The hash list of a pack, carried on from what the output folder holds. */
import type { Finding } from "../core/finding.ts";
import { findingOf } from "../core/findings/kind.ts";
import { OUT } from "../core/findings/out.ts";
import { fileHashes } from "../export/mhl/hashes.ts";
import { type NamedBytes, nextHistory, readHistory } from "../export/mhl/history.ts";
import { HISTORY_FOLDER, type HistorySettings, type ListedFile } from "../export/mhl/manifest.ts";
import type { OutFolder } from "./effects.ts";
import { readOpenLists, writeOpenLists } from "./manifest.ts";

/**
 * Writes the history that belongs to the pack of a day as it lies in the temporary folder `into`, complete. The issued
 * generations of the pack in the output folder are kept byte for byte; what was not issued is made anew. The new list is recorded
 * as open before it is in place, beside the one that it replaces: a build may be killed between. Gives back what is wrong with
 * the issued ones.
 */
export function writePackHistory(out: OutFolder, into: string, date: string, settings: HistorySettings): readonly Finding[] {
  const pack = `packs/${date}`;
  const fresh = `${into}/${pack}`;
  const before = historyOf(out, pack);
  const listed = out.files(fresh).map((file): ListedFile => {
    const bytes = out.read(file) ?? new Uint8Array();
    return { path: file.slice(fresh.length + 1), bytes: bytes.length, hashes: fileHashes(bytes) };
  });
  const open = readOpenLists(out, date);
  const { files, problems, open: made } = nextHistory(before, listed, settings, open);
  const there = chainedLists(before).filter((c4) => open.has(c4));
  writeOpenLists(out, date, [...new Set([...there, ...(made === null ? [] : [made])])]);
  for (const { name, bytes } of files) out.write(`${fresh}/${HISTORY_FOLDER}/${name}`, bytes);
  return problems.map((problem) =>
    findingOf(OUT.historyDamaged, {
      message: `the hash list of ${pack} does not hold: ${problem}`,
      hint: `Put back the folder ${pack}/${HISTORY_FOLDER} as it was, or delete it: then the next build begins a new history.`,
    }),
  );
}

/** Leaves the lists in the record that are in place: to call when the pack is. */
export function settleOpenLists(out: OutFolder, date: string): void {
  const open = readOpenLists(out, date);
  const there = new Set(chainedLists(historyOf(out, `packs/${date}`)));
  if ([...open].some((c4) => !there.has(c4)))
    writeOpenLists(
      out,
      date,
      [...open].filter((c4) => there.has(c4)),
    );
}

export interface Issue {
  /** Number of the pack's newest list; `null` when the pack has none. */
  readonly generation: number | null;
  /** Whether it was issued before. */
  readonly again: boolean;
}

/** From now on no build replaces the lists of a day's pack: it is handed over. */
export function issuePack(out: OutFolder, date: string): Issue {
  const newest = readHistory(historyOf(out, `packs/${date}`)).generations.at(-1);
  const again = newest === undefined || !readOpenLists(out, date).has(newest.c4);
  writeOpenLists(out, date, []);
  return { generation: newest?.generation ?? null, again };
}

function chainedLists(files: readonly NamedBytes[]): readonly string[] {
  return files.length === 0 ? [] : readHistory(files).generations.map(({ c4 }) => c4);
}

function historyOf(out: OutFolder, pack: string): readonly NamedBytes[] {
  const folder = `${pack}/${HISTORY_FOLDER}`;
  return out.files(folder).map((file) => ({ name: file.slice(folder.length + 1), bytes: out.read(file) ?? new Uint8Array() }));
}

/** How many lists the history of a day's pack has in the output folder. */
export function generationOf(out: OutFolder, date: string): number {
  return out.files(`packs/${date}/${HISTORY_FOLDER}`).filter((file) => file.endsWith(".mhl")).length;
}

/** Whether a file belongs to the history of a pack: it is put in place after everything that it vouches for. */
export function isHistory(file: string): boolean {
  return /^packs\/[^/]+\/ascmhl\//.test(file);
}
