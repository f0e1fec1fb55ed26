/** Brings what was made in a temporary folder to its place: compare, move what changed, delete what is stale. */
import { sha256 } from "../core/hash.ts";
import type { OutFolder } from "./effects.ts";
import { type Output, readPending, writePending } from "./manifest.ts";
import { isHistory } from "./pack-history.ts";

export interface Published {
  readonly outputs: readonly Output[];
  readonly moved: number;
  readonly removed: number;
}

/**
 * Publishes the files below `temporary` (a folder of `out`) under their own names. Only files that an earlier build of the
 * same unit wrote are deleted. A list of what is about to be placed is kept until the caller has written its record
 * (`removePending`), so that a build killed between the two leaves no file without an owner.
 */
export function publish(out: OutFolder, temporary: string, unit: string, before: readonly Output[]): Published {
  const outputs = out.files(temporary).map((name): Output => {
    const content = out.read(name) ?? new Uint8Array();
    return { file: name.slice(temporary.length + 1), bytes: content.length, sha256: sha256(content) };
  });
  const ours = new Set([...before.map((o) => o.file), ...readPending(out, unit)]);
  const fresh = new Set(outputs.map((o) => o.file));
  writePending(out, unit, [...new Set([...ours, ...fresh])]);

  let moved = 0;
  // a history comes last: while it is not there, what it will vouch for may still be half in place
  for (const output of [...outputs].sort((a, b) => Number(isHistory(a.file)) - Number(isHistory(b.file)))) {
    if (isSame(out, output)) continue;
    out.move(`${temporary}/${output.file}`, output.file);
    moved++;
  }
  const stale = [...ours].filter((file) => !fresh.has(file));
  for (const file of stale) out.removeFile(file);
  out.removeFolder(temporary);
  return { outputs, moved, removed: stale.length };
}

function isSame(out: OutFolder, output: Output): boolean {
  if (out.size(output.file) !== output.bytes) return false;
  const there = out.read(output.file);
  return there !== null && sha256(there) === output.sha256;
}
