/** Physical lines of a text: LF, CRLF and a lone CR end a line. All positions are 1-based; columns count code points. */
export interface LineIndex {
  /** Number of physical lines (at least 1). */
  readonly count: number;
  /** Line and column of a UTF-16 offset into the text. */
  at(offset: number): { line: number; column: number };
  /** Text of a line without its ending; empty beyond the end. */
  text(line: number): string;
}

export function lineIndex(text: string): LineIndex {
  const starts = [0];
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (code === 10 || (code === 13 && text.charCodeAt(i + 1) !== 10)) starts.push(i + 1);
  }
  const lineOf = (offset: number): number => {
    let low = 0;
    let high = starts.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if ((starts[middle] as number) <= offset) low = middle;
      else high = middle - 1;
    }
    return low;
  };
  return {
    count: starts.length,
    at(offset) {
      const line = lineOf(Math.max(0, Math.min(offset, text.length)));
      return { line: line + 1, column: codePointCount(text, starts[line] as number, offset) + 1 };
    },
    text(line) {
      const start = starts[line - 1];
      if (start === undefined) return "";
      const end = starts[line] ?? text.length;
      return text.slice(start, end).replace(/[\r\n]+$/, "");
    },
  };
}

/** Number of code points between two UTF-16 offsets. */
export function codePointCount(text: string, from: number, to: number): number {
  let count = 0;
  for (let i = from; i < to; i++) {
    const code = text.charCodeAt(i);
    if (code >= 0xd800 && code <= 0xdbff && i + 1 < to) i++;
    count++;
  }
  return count;
}
