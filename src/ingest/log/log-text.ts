import type { FindingCollector } from "../../core/findings/collect.ts";
import { CSV } from "../../core/findings/csv.ts";
import { isZip, notText, notUtf8, wasUtf16 } from "../../csv/decode.ts";
import { LONGEST_READ_LINE_BYTES } from "../../csv/limits.ts";
import type { PagedText } from "../../csv/paged-text.ts";

/** Says what there is to say about the bytes of a log; false, with an error, when they are no text that can be read. */
export function isReadable(text: PagedText, file: string, found: FindingCollector): boolean {
  const { encoding, longLine, endlessLine, nul, notUtf8: bad } = text.survey;
  if (longLine !== null) tellOfLongLine(longLine, file, found);
  if (nul !== null) {
    found.addAll([notText(file, nul, isZip(text.survey.pages.length === 0 ? new Uint8Array(0) : text.bytes(0)))]);
    return false;
  }
  if (endlessLine !== null) {
    found.add(CSV.tooLarge, {
      place: { file, line: endlessLine, column: null },
      message: `line ${endlessLine} has more than ${LONGEST_READ_LINE_BYTES / 1e6} MB, and no line of a log is read beyond that`,
      hint: "The line ends were probably lost when the file was copied: copy it again.",
    });
    return false;
  }
  if (encoding === "utf-16le" || encoding === "utf-16be") found.addAll([wasUtf16(file)]);
  if (bad !== null) found.addAll([notUtf8(file, bad)]);
  return true;
}

/** Says so when a line of a text file is longer than any that people or recorders write. */
export function tellOfLongLine(
  long: { readonly line: number; readonly bytes: number },
  file: string,
  found: FindingCollector,
): void {
  found.add(CSV.longLine, {
    place: { file, line: long.line, column: null },
    message: `line ${long.line} has ${long.bytes} bytes`,
    hint: "Look whether the line ends were lost when the file was copied, and copy it again.",
  });
}
