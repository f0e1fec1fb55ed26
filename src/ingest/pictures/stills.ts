import type { FindingCollector } from "../../core/findings/collect.ts";
import { NOTE } from "../../core/findings/note.ts";
import { didYouMean } from "../../core/nearest-name.ts";
import { wholeFile } from "../../csv/decode.ts";
import type { Opener } from "../open-file.ts";
import type { NoteRow, Still } from "../records.ts";
import { type Reading, read, refuse } from "../written/reading.ts";
import { stillDataOfExif } from "./exif.ts";
import { readExrHeader } from "./exr-header.ts";
import { pictureHeader } from "./picture-header.ts";
import { NO_STILL_DATA, type StillData, stillDataOfExr } from "./still-lens.ts";

const PICTURES = /\.(png|jpe?g|exr)$/i;

/** The pictures in a day's stills/ folder with what their headers say. A file whose header cannot be read is a check, and stays. */
export function readStills(open: Opener, base: string, found: FindingCollector): readonly Still[] {
  return open
    .list(`${base}/stills`)
    .filter((entry) => PICTURES.test(entry.name))
    .flatMap(({ name }) => {
      const file = `${base}/stills/${name}`;
      const bytes = open.bytes(file);
      if (bytes === null) return [];
      return [{ file, name, sha256: open.hash(file), bytes: bytes.length, data: stillData(bytes, file, found) }];
    });
}

function stillData(bytes: Uint8Array, file: string, found: FindingCollector): StillData {
  if (/\.exr$/i.test(file)) {
    const header = readExrHeader(bytes);
    if (header.ok) return stillDataOfExr(header.parts);
    tellOfUnreadable(file, header.problem, found);
    return NO_STILL_DATA;
  }
  const header = pictureHeader(bytes);
  if (header === null) {
    tellOfUnreadable(file, "it is neither PNG nor JPEG, or it ends too early", found);
    return NO_STILL_DATA;
  }
  const { widthPx, heightPx, exif } = header;
  return { ...(exif === null ? NO_STILL_DATA : stillDataOfExif(exif)), widthPx, heightPx };
}

function tellOfUnreadable(file: string, problem: string, found: FindingCollector): void {
  found.add(NOTE.stillUnreadable, {
    place: wholeFile(file),
    field: "still",
    message: `the still ${file} cannot be read: ${problem}`,
    hint: "Copy it again, or save it anew as PNG, JPEG or OpenEXR, from where it was made; or take it out of the folder.",
  });
}

/** The notes' stills that are not in the folder, and those that are there in a format that is not read. */
export function tellOfStills(
  open: Opener,
  base: string,
  notes: readonly NoteRow[],
  stills: readonly Still[],
  found: FindingCollector,
): void {
  const names = new Set(stills.map((still) => still.name));
  const others = new Set(open.list(`${base}/stills`).map((entry) => entry.name));
  for (const { still } of notes) {
    if (still === null || names.has(still.value)) continue;
    const isThere = others.has(still.value);
    found.add(NOTE.noStill, {
      place: still.place,
      field: "still",
      message: isThere
        ? `the still ${still.value} is there, in a format that the report cannot show`
        : `there is no still ${still.value} in the day's stills/ folder`,
      hint: isThere
        ? "Save the picture beside it as .png, .jpg or .exr, and name that file here."
        : didYouMean(still.value, names).trim() || "Copy the picture there (.png, .jpg or .exr), or mend the name.",
    });
  }
}

/** The name of a file in stills/. Refused: anything that leads elsewhere, so that nothing outside the folder is ever opened. */
export function readStillName(text: string): Reading<string> {
  const name = text.trim();
  if (!/[/\\]/.test(name) && name !== "." && name !== "..") return read(name);
  const last = name.split(/[/\\]+/).at(-1) ?? "";
  const meant = /^\.*$/.test(last) ? "Write the name of a file in stills/." : `Write the name alone: ${last}.`;
  return refuse(`a still is named with a path: "${name}"`, `${meant} Stills are in the day's stills/ folder.`);
}
