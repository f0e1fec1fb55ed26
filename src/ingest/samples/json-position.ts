/**
 * Where a text stops being JSON (RFC 8259), as a UTF-16 offset; `null` when it is JSON. The messages of the engine name the place
 * in a different way in each version, and sometimes not at all.
 */
export function jsonErrorAt(text: string): number | null {
  const end = valueEnd(text, skipSpace(text, 0), 0);
  if (end < 0) return -end - 1;
  const rest = skipSpace(text, end);
  return rest < text.length ? rest : null;
}

const LITERALS = ["true", "false", "null"];
const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
// biome-ignore lint/suspicious/noControlCharactersInRegex: JSON forbids control characters in strings.
const STRING = /"(?:[^"\\\u0000-\u001f]|\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4}))*/y;
const DEEPEST = 200;

/** Offset after the value at `at`, or -(offset of the error) - 1. */
function valueEnd(text: string, at: number, depth: number): number {
  const c = text[at];
  if (depth > DEEPEST) return -at - 1;
  if (c === "{" || c === "[") return groupEnd(text, at, c === "{", depth);
  if (c === '"') return stringEnd(text, at);
  const literal = LITERALS.find((word) => text.startsWith(word, at));
  if (literal !== undefined) return at + literal.length;
  NUMBER.lastIndex = at;
  return NUMBER.test(text) ? NUMBER.lastIndex : -at - 1;
}

function groupEnd(text: string, open: number, isObject: boolean, depth: number): number {
  const close = isObject ? "}" : "]";
  let at = skipSpace(text, open + 1);
  if (text[at] === close) return at + 1;
  for (;;) {
    if (isObject) {
      if (text[at] !== '"') return -at - 1;
      const keyEnd = stringEnd(text, at);
      if (keyEnd < 0) return keyEnd;
      at = skipSpace(text, keyEnd);
      if (text[at] !== ":") return -at - 1;
      at = skipSpace(text, at + 1);
    }
    const end = valueEnd(text, at, depth + 1);
    if (end < 0) return end;
    at = skipSpace(text, end);
    if (text[at] === close) return at + 1;
    if (text[at] !== ",") return -at - 1;
    at = skipSpace(text, at + 1);
  }
}

function stringEnd(text: string, at: number): number {
  STRING.lastIndex = at;
  STRING.test(text);
  const end = STRING.lastIndex;
  return text[end] === '"' ? end + 1 : -end - 1;
}

function skipSpace(text: string, at: number): number {
  let i = at;
  while (text[i] === " " || text[i] === "\t" || text[i] === "\n" || text[i] === "\r") i++;
  return i;
}

/**
 * Offset and length of the value of a member such as `["lens", "tStop"]` in a JSON object; `null` when it is not there. The members
 * are looked for by name one within the other, which is exact for samples whose nested names do not repeat outside.
 */
export function memberAt(text: string, path: readonly string[]): { readonly start: number; readonly end: number } | null {
  let start = 0;
  let end = text.length;
  for (const name of path) {
    const key = text.indexOf(`${JSON.stringify(name)}`, start);
    if (key < 0 || key >= end) return null;
    const colon = skipSpace(text, key + JSON.stringify(name).length);
    if (text[colon] !== ":") return null;
    start = skipSpace(text, colon + 1);
    end = valueEnd(text, start, 0);
    if (end < 0) return null;
  }
  return { start, end };
}
