/** At most so many findings of one code in one file are listed; one more says how many there are besides. */
import type { Finding } from "../finding.ts";
import { FINDINGS_PER_CODE_AND_FILE, moreFinding } from "./collect.ts";

/**
 * The findings in the order given, those of a code and file beyond `limit` left out, and after them one for each that says how many.
 * Accepted findings are counted apart, so that one is never hidden behind those that nobody accepted. A finding that says already how many were left
 * out while a file was read goes into the new one. `limit` 0 leaves all as they are.
 */
export function limitFindings(findings: readonly Finding[], limit = FINDINGS_PER_CODE_AND_FILE): Finding[] {
  if (limit === 0) return [...findings];
  const kept: Finding[] = [];
  const groups = new Map<string, { readonly first: Finding; listed: number; more: number }>();
  for (const found of findings) {
    const key = `${found.code}\n${found.file ?? ""}\n${found.accepted ?? ""}`;
    const group = groups.get(key) ?? { first: found, listed: 0, more: 0 };
    groups.set(key, group);
    if (found.more !== undefined) group.more += found.more;
    else if (group.listed < limit) {
      group.listed++;
      kept.push(found);
    } else group.more++;
  }
  const summaries = [...groups.values()].filter(({ more }) => more > 0);
  return [...kept, ...summaries.map(({ first, more }) => moreFinding(first, more))];
}
