/** How much of a show folder is read. Far beyond what people and recorders write; what is larger is told of and left out. */

/** A log, which is read a page at a time: only its columns are in memory. */
export const LARGEST_LOG_BYTES = 16_000_000_000;
/** Cells of numbers of a log, which take eight bytes each: a day at 120 frames a second in forty columns. */
export const MOST_LOG_NUMBERS = 400_000_000;
/** Another file: a picture, say. It is in memory as a whole while it is read. */
export const LARGEST_FILE_BYTES = 1_000_000_000;
/** A file that is in memory as text: tables and settings, and logs whose quotes need the careful reader. */
export const LARGEST_TEXT_BYTES = 256_000_000;
/** A line. It is read, and told of: text files have no such lines, so that line ends are probably lost. */
export const LONGEST_LINE_BYTES = 1_000_000;
/** A longer line of a log is not read, nor what comes after it. */
export const LONGEST_READ_LINE_BYTES = 16_000_000;

const LF = 10;
const CR = 13;

/** The first line with more bytes than `longest`, with its number and length; `null` when there is none. LF, CRLF and CR end a line. */
export function overlongLine(
  bytes: Uint8Array,
  longest = LONGEST_LINE_BYTES,
): { readonly line: number; readonly bytes: number } | null {
  for (let start = 0; start < bytes.length; ) {
    const lf = bytes.indexOf(LF, start);
    const end = lf < 0 ? bytes.length : lf;
    if (end - start > longest) {
      const found = overlongBetweenReturns(bytes.subarray(start, end), longest);
      if (found !== null) return { line: lineOfByte(bytes, start + found.start), bytes: found.bytes };
    }
    start = end + 1;
  }
  return null;
}

/** Looks at the lines that lone CRs make of a stretch without LF. */
function overlongBetweenReturns(stretch: Uint8Array, longest: number): { readonly start: number; readonly bytes: number } | null {
  for (let start = 0; start < stretch.length; ) {
    const cr = stretch.indexOf(CR, start);
    const end = cr < 0 ? stretch.length : cr;
    if (end - start > longest) return { start, bytes: end - start };
    start = end + 1;
  }
  return null;
}

/** Number of the physical line that holds the byte at `end`. */
export function lineOfByte(bytes: Uint8Array, end: number): number {
  let line = 1;
  for (let i = 0; i < end; i++) {
    if (bytes[i] === LF || (bytes[i] === CR && bytes[i + 1] !== LF)) line++;
  }
  return line;
}
