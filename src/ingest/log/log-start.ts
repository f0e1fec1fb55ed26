import type { FindingCollector } from "../../core/findings/collect.ts";
import { codePointCount } from "../../core/text-position.ts";
import { delimiterOf, splitLine } from "../../csv/delimiter.ts";
import { type KeyLine, keyLines } from "../../csv/key-lines.ts";
import { LONGEST_READ_LINE_BYTES } from "../../csv/limits.ts";
import type { PagedText } from "../../csv/paged-text.ts";
import type { RowsStart } from "../../csv/scan.ts";
import type { HeaderCell } from "./log-layout.ts";

const LF = 10;

/** Key lines and header of a log, and where its rows begin. */
export interface LogStart {
  readonly keys: readonly KeyLine[];
  readonly header: readonly HeaderCell[];
  readonly delimiter: string;
  readonly rows: RowsStart;
}

/**
 * Reads key lines and header without the rest; `null` when the careful reader has to look: there is no header, or quotes stand in
 * its names. `known` are the names by which the delimiter is told.
 */
export function logStart(text: PagedText, file: string, known: ReadonlySet<string>, found: FindingCollector): LogStart | null {
  const place = headerPlace(text);
  if (place === null) return null;
  const { before, headerText, rows } = place;
  const line = rows.line - 1;
  const delimiter = delimiterOf(headerText, known);
  const cells = splitLine(headerText, delimiter);
  if (cells.some((cell) => cell.text.includes('"'))) return null;
  const { keys } = keyLines(before, file, found);
  const header = cells.map((cell) => ({
    text: cell.text,
    place: {
      file,
      line,
      column: codePointCount(headerText, 0, cell.start) + 1,
      length: codePointCount(headerText, cell.start, cell.end),
    },
  }));
  return { keys, header, delimiter, rows };
}

/** The first line that is neither blank nor a comment, and all there is before it. */
function headerPlace(text: PagedText): { readonly before: string; readonly headerText: string; readonly rows: RowsStart } | null {
  const before: string[] = [];
  let size = 0;
  let line = 1;
  for (let page = 0; page < text.survey.pages.length && size < LONGEST_READ_LINE_BYTES; page++) {
    const bytes = text.bytes(page);
    for (let at = 0; at < bytes.length; line++) {
      const lf = bytes.indexOf(LF, at);
      const end = lf < 0 ? bytes.length : lf;
      const content = decode(bytes.subarray(at, end)).replace(/\r$/, "");
      if (content.trim() !== "" && !content.startsWith("#")) {
        return {
          before: before.map((written) => `${written}\n`).join(""),
          headerText: content,
          rows: { page, offset: Math.min(end + 1, bytes.length), line: line + 1 },
        };
      }
      before.push(content);
      size += end - at;
      at = end + 1;
    }
  }
  return null;
}

function decode(bytes: Uint8Array): string {
  return new TextDecoder("utf-8", { ignoreBOM: true }).decode(bytes);
}
