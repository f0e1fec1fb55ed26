/** Which take a finding is about, when the reader of the file could not know: by the line of its note, or of its log rows. */
import type { Finding } from "../core/finding.ts";
import type { Take } from "./types.ts";

/** Findings with the address of the take whose note or log rows they stand in; others stay as they are. */
export function attributeFindings(findings: readonly Finding[], takes: readonly Take[]): Finding[] {
  const byNote = new Map<string, string>();
  const byLog = new Map<string, { readonly first: number; readonly last: number; readonly address: string }[]>();
  for (const take of takes) {
    if (take.note !== null) byNote.set(`${take.note.place.file}:${take.note.place.line}`, take.address);
    for (const lines of take.logLines) {
      byLog.set(lines.file, [...(byLog.get(lines.file) ?? []), { first: lines.first, last: lines.last, address: take.address }]);
    }
  }
  return findings.map((found) => {
    if (found.take !== null || found.file === null) return found;
    const address = byNote.get(`${found.file}:${found.line}`) ?? inLog(byLog.get(found.file), found.line);
    return address === null ? found : Object.freeze({ ...found, take: address });
  });
}

/** A log of one take is about that take wherever the line is; in a log of many takes the line decides. */
function inLog(
  served: readonly { readonly first: number; readonly last: number; readonly address: string }[] | undefined,
  line: number | null,
): string | null {
  if (served === undefined || line === null) return null;
  if (served.length === 1) return served[0]?.address ?? null;
  return served.find((lines) => line >= lines.first && line <= lines.last)?.address ?? null;
}
