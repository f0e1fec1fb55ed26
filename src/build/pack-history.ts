/** The hash list of a pack, carried on from what the output folder holds. */
import type { Finding } from "../core/finding.ts";
import { findingOf } from "../core/findings/kind.ts";
import { OUT } from "../core/findings/out.ts";
import { fileHashes } from "../export/mhl/hashes.ts";
import { type NamedBytes, nextHistory } from "../export/mhl/history.ts";
import { HISTORY_FOLDER, type HistorySettings, type ListedFile } from "../export/mhl/manifest.ts";
import type { OutFolder } from "./effects.ts";

/**
 * Writes the history that belongs to the pack of a day as it lies in the temporary folder `into`, complete. The generations of
 * the pack in the output folder are kept byte for byte. Gives back what is wrong with them.
 */
export function writePackHistory(out: OutFolder, into: string, date: string, settings: HistorySettings): readonly Finding[] {
  const pack = `packs/${date}`;
  const fresh = `${into}/${pack}`;
  const before = historyOf(out, pack);
  const listed = out.files(fresh).map((file): ListedFile => {
    const bytes = out.read(file) ?? new Uint8Array();
    return { path: file.slice(fresh.length + 1), bytes: bytes.length, hashes: fileHashes(bytes) };
  });
  const { files, problems } = nextHistory(before, listed, settings);
  for (const { name, bytes } of files) out.write(`${fresh}/${HISTORY_FOLDER}/${name}`, bytes);
  return problems.map((problem) =>
    findingOf(OUT.historyDamaged, {
      message: `the hash list of ${pack} does not hold: ${problem}`,
      hint: `Put back the folder ${pack}/${HISTORY_FOLDER} as it was, or delete it: then the next build begins a new history.`,
    }),
  );
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
