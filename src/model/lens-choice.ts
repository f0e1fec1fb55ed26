/** Which lens served a take: the log's before the note's, and what to say where they differ. */
import type { Finding, Place } from "../core/finding.ts";
import { CHECK } from "../core/findings/check.ts";
import { findingOf } from "../core/findings/kind.ts";
import { didYouMean } from "../core/nearest-name.ts";
import type { Kit, Lens, NoteRow } from "../ingest/records.ts";
import { sameName } from "./address.ts";
import type { LogShare } from "./distribute.ts";

export interface LensChoice {
  readonly lensId: string | null;
  readonly lensSource: "logged" | "noted" | null;
  readonly lens: Lens | null;
  readonly findings: readonly Finding[];
}

export function chooseLens(note: NoteRow | null, share: LogShare | null, kit: Kit, address: string): LensChoice {
  const findings: Finding[] = [];
  const inKit = (id: string): Lens | null => kit.lenses.find((lens) => sameName(lens.id) === sameName(id)) ?? null;
  const logged = share === null ? null : loggedLens(share, kit);
  const loggedKit = logged === null ? null : inKit(logged.id);
  const noted = note?.lens ?? null;
  const notedKit = noted === null ? null : inKit(noted.value);

  // one lens that the kit lacks is said once, at the note that names it
  const saidByNote = noted !== null && logged !== null && sameName(noted.value) === sameName(logged.id);
  if (logged !== null && loggedKit === null && share !== null && !saidByNote) {
    findings.push(notInKit(logged.id, share.log.keyPlace("lens"), kit, address));
  }
  if (noted !== null && notedKit === null) findings.push(notInKit(noted.value, noted.place, kit, address));
  if (noted !== null && logged !== null && share !== null && sameName(noted.value) !== sameName(loggedKit?.id ?? logged.id)) {
    findings.push(
      findingOf(CHECK.lensDiffers, {
        place: noted.place,
        field: "lens",
        message: `The notes say lens ${noted.value}, the log says ${loggedKit?.id ?? logged.id}. The log's is shown.`,
        hint: `Correct the note, or the "# lens" line of ${share.log.file}.`,
        take: address,
      }),
    );
  }

  if (logged !== null && (loggedKit !== null || notedKit === null)) {
    return { lensId: loggedKit?.id ?? logged.id, lensSource: "logged", lens: loggedKit, findings };
  }
  if (noted !== null) return { lensId: notedKit?.id ?? noted.value, lensSource: "noted", lens: notedKit, findings };
  return { lensId: null, lensSource: null, lens: null, findings };
}

function loggedLens(share: LogShare, kit: Kit): { readonly id: string } | null {
  const { log } = share;
  const row = share.rowOfFrame.find((r) => r >= 0) ?? 0;
  const column = log.rowKeys.lens?.(row).trim();
  const id = column === undefined || column === "" ? log.keys.lens : column;
  if (id !== null && id !== "") return { id };
  const serial = log.keys.lensSerial;
  if (serial === null) return null;
  const known = kit.lenses.find((lens) => lens.serial !== null && sameName(lens.serial) === sameName(serial));
  return { id: known?.id ?? `serial ${serial}` };
}

function notInKit(id: string, place: Place, kit: Kit, address: string): Finding {
  return findingOf(CHECK.lensNotInKit, {
    place,
    field: "lens",
    message: `Lens "${id}" is not in kit/lenses.csv, so nothing of the kit is known about it.`,
    hint: `Add a row for it to kit/lenses.csv, or correct the id.${didYouMean(
      id,
      kit.lenses.map((lens) => lens.id),
    )}`,
    take: address,
  });
}
