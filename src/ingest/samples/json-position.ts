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
 * Offset and end of the value of a member such as `["lens", "tStop"]` or `["lens", "custom", "0"]` in a JSON text; `null` when it is
 * not there, or the text is no JSON before it. Of two members with one name the last counts, as for `JSON.parse`.
 */
export function memberAt(text: string, path: readonly string[]): { readonly start: number; readonly end: number } | null {
  let start = skipSpace(text, 0);
  for (const name of path) {
    const at =
      text[start] === "{" ? objectMember(text, start, name) : text[start] === "[" ? listMember(text, start, Number(name)) : -1;
    if (at < 0) return null;
    start = at;
  }
  const end = path.length === 0 ? text.length : valueEnd(text, start, 0);
  return end < 0 ? null : { start, end };
}

function objectMember(text: string, open: number, name: string): number {
  const key = JSON.stringify(name);
  let found = -1;
  for (let at = skipSpace(text, open + 1); text[at] === '"'; ) {
    const keyEnd = stringEnd(text, at);
    if (keyEnd < 0) return found;
    const start = skipSpace(text, skipSpace(text, keyEnd) + 1);
    if (text.slice(at, keyEnd) === key) found = start;
    const end = valueEnd(text, start, 0);
    if (end < 0) return found;
    at = skipSpace(text, end);
    if (text[at] === ",") at = skipSpace(text, at + 1);
  }
  return found;
}

function listMember(text: string, open: number, index: number): number {
  let at = skipSpace(text, open + 1);
  for (let i = 0; i < index; i++) {
    const end = valueEnd(text, at, 0);
    if (end < 0) return -1;
    at = skipSpace(text, end);
    if (text[at] !== ",") return -1;
    at = skipSpace(text, at + 1);
  }
  return text[at] === "]" || at >= text.length ? -1 : at;
}
