import type { Place } from "../core/finding.ts";
import type { FindingCollector } from "../core/findings/collect.ts";
import { CSV } from "../core/findings/csv.ts";
import { codePointCount } from "../core/text-position.ts";

/** A `# key: value` line before the header row. */
export interface KeyLine {
  readonly key: string;
  /** Trimmed; may be empty. */
  readonly value: string;
  /** Where the value begins. */
  readonly place: Place;
}

/**
 * Key lines, comments and blank lines at the beginning of a text with LF line ends. `end` is the offset of the header row.
 * A # line that has no `key:` is a comment. A key that comes twice is a finding; the first counts.
 */
export function keyLines(text: string, file: string, found: FindingCollector): { keys: KeyLine[]; end: number } {
  const keys = new Map<string, KeyLine>();
  let at = 0;
  let line = 1;
  while (at < text.length) {
    const lineEnd = text.indexOf("\n", at);
    const content = text.slice(at, lineEnd < 0 ? text.length : lineEnd);
    if (content.trim() !== "" && !content.startsWith("#")) break;
    const key = keyLineOf(content, file, line);
    if (key !== null) {
      const first = keys.get(key.key);
      if (first === undefined) keys.set(key.key, key);
      else {
        found.add(CSV.keyTwice, {
          place: key.place,
          field: key.key,
          message: `the key ${key.key} comes twice: "${first.value}" in line ${first.place.line}, then "${key.value}"`,
          hint: "Keep one of the two lines. The first one is used.",
        });
      }
    }
    at = lineEnd < 0 ? text.length : lineEnd + 1;
    line++;
  }
  return { keys: [...keys.values()], end: at };
}

function keyLineOf(content: string, file: string, line: number): KeyLine | null {
  const match = /^#\s*([A-Za-z][A-Za-z0-9_-]*)\s*:\s*(.*?)\s*$/d.exec(content);
  if (match === null) return null;
  const written = match[2] as string;
  // A spreadsheet pads the key lines with empty cells when it saves the file: take the delimiters at the end away.
  const value = written.replace(/[,;\t|]+$/, "").trim() || written.charAt(0);
  const start = match.indices?.[2]?.[0] ?? 0;
  const place = { file, line, column: codePointCount(content, 0, start) + 1, length: codePointCount(value, 0, value.length) };
  return { key: match[1] as string, value, place };
}
