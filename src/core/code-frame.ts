/** The lines of a file around a finding, with a caret below the place. */
import type { Finding } from "./finding.ts";

/** The lines of a file. */
export interface SourceLines {
  readonly count: number;
  /** Text of a line, from 1, without its end. */
  text(line: number): string;
}

/** Lines are cut to this many characters around the place, so that a long row fits a terminal and a page. */
const WIDTH = 96;

/**
 * The line before the finding, its line, and the carets below what is wrong. Empty when the finding has no line or the
 * file has no such line. Columns count characters, so the caret stands right below letters outside ASCII too.
 */
export function codeFrame(finding: Finding, source: SourceLines | null): readonly string[] {
  const { line, column } = finding;
  if (source === null || line === null || line > source.count) return [];
  const numberWidth = String(line).length;
  const row = (number: number | null, text: string) => `  ${String(number ?? "").padStart(numberWidth)} | ${text}`.trimEnd();
  const start = windowStart(source.text(line), column ?? 1, finding.length ?? 1);
  const cut = (number: number) => clip(source.text(number), start);
  const before = line > 1 ? [row(line - 1, cut(line - 1))] : [];
  const carets = column === null ? [] : [row(null, caretLine(source.text(line), column, finding.length, start))];
  return [...before, row(line, cut(line)), ...carets];
}

function windowStart(text: string, column: number, length: number): number {
  const size = [...text].length;
  if (size <= WIDTH || column + length < WIDTH - 8) return 0;
  return Math.max(0, Math.min(column - 20, size - WIDTH));
}

function clip(text: string, start: number): string {
  const chars = [...text.replace(/\p{Cc}/gu, " ")];
  const cut = chars.slice(start, start + WIDTH);
  if (start > 0 && cut.length > 0) cut[0] = "…";
  if (chars.length > start + WIDTH) cut[cut.length - 1] = "…";
  return cut.join("");
}

function caretLine(text: string, column: number, length: number | null, start: number): string {
  const left = Math.max(0, column - 1 - start);
  const room = Math.max(1, Math.min([...text].length - (column - 1), WIDTH - left));
  return " ".repeat(left) + "^".repeat(Math.max(1, Math.min(length ?? 1, room)));
}

/** Whether a line of a frame is the one with the carets. */
export function isCaretLine(line: string): boolean {
  return /^ *\| *\^+$/.test(line);
}
