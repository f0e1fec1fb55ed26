import { type ByteSource, memorySource } from "./byte-source.ts";
import { byteOrderMark } from "./decode.ts";
import { surveyText, type TextSurvey } from "./survey.ts";

/** A text of which one page at a time is in memory. Every line of its pages ends in LF or CRLF, whatever ends it in the file. */
export interface PagedText {
  readonly size: number;
  readonly survey: TextSurvey;
  /** UTF-8 bytes of a page, without byte order mark. */
  bytes(page: number): Uint8Array;
  /** Text of a physical line without its end; empty beyond the last. Quick for the line that follows the one before. */
  line(number: number): string;
  /** The whole text with LF line ends: for what is small. */
  whole(): string;
}

/** A text over a source that was surveyed. */
export function pagedText(source: ByteSource, survey: TextSurvey): PagedText {
  let held = -1;
  let lines: readonly string[] = [];
  const bytes = (page: number): Uint8Array => pageBytes(source, survey, page);
  const text = (page: number): string => pageText(source, survey, page);
  return {
    size: source.size,
    survey,
    bytes,
    line(number) {
      const page = pageOfLine(survey, number);
      if (page < 0) return "";
      if (page !== held) {
        lines = text(page).split("\n");
        held = page;
      }
      return lines[number - (survey.pages[page]?.line ?? 1)] ?? "";
    },
    whole: () => survey.pages.map((_, page) => text(page)).join(""),
  };
}

/** A text that is in memory already. */
export function textOfBytes(content: Uint8Array, stretch?: number): PagedText {
  const source = memorySource(content, stretch);
  return pagedText(source, surveyText(source));
}

function pageBytes(source: ByteSource, survey: TextSurvey, page: number): Uint8Array {
  const { start, end } = survey.pages[page] as { start: number; end: number };
  const { encoding, loneReturns } = survey;
  if (encoding !== "utf-8" || loneReturns) return new TextEncoder().encode(pageText(source, survey, page));
  const bytes = source.read(start, end - start);
  return page === 0 ? bytes.subarray(byteOrderMark(bytes)) : bytes;
}

function pageText(source: ByteSource, survey: TextSurvey, page: number): string {
  const { start, end } = survey.pages[page] as { start: number; end: number };
  // Only the first character of the file may be a byte order mark.
  const text = new TextDecoder(survey.encoding, { ignoreBOM: page > 0 }).decode(source.read(start, end - start));
  return text.includes("\r") ? text.replace(/\r\n?/g, "\n") : text;
}

/** The page that holds a line, or -1. */
function pageOfLine({ pages }: TextSurvey, number: number): number {
  let low = -1;
  let high = pages.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((pages[middle]?.line ?? 0) <= number) low = middle;
    else high = middle - 1;
  }
  return number < 1 ? -1 : low;
}
