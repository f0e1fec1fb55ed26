import { CHECK_FINDINGS } from "./check.ts";
import { CSV_FINDINGS } from "./csv.ts";
import type { FindingKind } from "./kind.ts";
import { KIT_FINDINGS } from "./kit.ts";
import { LOG_FINDINGS } from "./log.ts";
import { MATCH_FINDINGS } from "./match.ts";
import { NOTE_FINDINGS } from "./note.ts";
import { OUT_FINDINGS } from "./out.ts";
import { SHOW_FINDINGS } from "./show.ts";

/** Every kind of finding there is, in the order in which the data passes through the program. */
export const FINDING_KINDS: readonly FindingKind[] = [
  ...CSV_FINDINGS,
  ...LOG_FINDINGS,
  ...NOTE_FINDINGS,
  ...MATCH_FINDINGS,
  ...KIT_FINDINGS,
  ...SHOW_FINDINGS,
  ...CHECK_FINDINGS,
  ...OUT_FINDINGS,
];

/** The kind with this code (case does not matter), or `null`. */
export function findingKind(code: string): FindingKind | null {
  const wanted = code.trim().toUpperCase();
  return FINDING_KINDS.find((kind) => kind.code === wanted) ?? null;
}
