import { type Document, isAlias, isMap, isScalar, isSeq, LineCounter, type Node, parseDocument, visit, type YAMLError } from "yaml";
import type { Place } from "../../core/finding.ts";
import type { FindingCollector } from "../../core/findings/collect.ts";
import { SHOW } from "../../core/findings/show.ts";
import { lineIndex } from "../../core/text-position.ts";

/** A value of a YAML file. Scalars are the text written, whatever YAML would make of it: 08:30, 007, 24 and yes stay as they are. */
export type YamlValue = string | null | readonly YamlValue[] | { readonly [key: string]: YamlValue };

export interface YamlFile {
  /** Top-level keys in file order; a key without a value is left out. */
  readonly values: ReadonlyMap<string, YamlValue>;
  /** Place of a value such as `meals.0.out`; the nearest parent that exists, and the file as a whole where nothing does. */
  place(path: string): Place;
  /** Place of a top-level key itself. */
  keyPlace(key: string): Place;
}

/** No real file nests deeper; what does is an alias that holds itself. */
const DEEPEST = 12;
/** Brackets or dashes within each other, from which on the text is not even parsed: the parser would run out of stack. */
const DEEPEST_TEXT = 100;
/** No real file has more values; what has is an alias of aliases of aliases. */
const MOST_VALUES = 10_000;

/**
 * Reads a YAML 1.2 file whose top level is a map. Syntax errors are findings with their place; what stands around them is read.
 * `null`, with an error, when the top level is no map.
 */
export function readYaml(text: string, file: string, found: FindingCollector): YamlFile | null {
  const deep = tooDeepAt(text);
  if (deep !== null) {
    found.add(SHOW.tooMuch, {
      place: { file, ...lineIndex(text).at(deep) },
      message: `the file nests more than ${DEEPEST_TEXT} levels deep`,
      hint: "Write it as the show folder's description has it: two or three levels are enough.",
    });
    return null;
  }
  const counter = new LineCounter();
  const document = parseDocument(text, {
    version: "1.2",
    schema: "core",
    lineCounter: counter,
    prettyErrors: false,
    logLevel: "silent",
  });
  const lines = lineIndex(text);
  for (const problem of document.errors) {
    found.add(SHOW.syntax, {
      place: { file, ...lines.at(openQuoteBefore(document, problem) ?? problem.pos[0]) },
      message: problem.message.split("\n")[0] ?? "the file breaks the rules of YAML",
      hint: hintFor(problem.code),
    });
  }
  const places = new Map<string, Place>();
  const keyPlaces = new Map<string, Place>();
  const placeOf = (node: Node | null | undefined): Place | null => {
    const range = node?.range;
    return range ? { file, ...lines.at(range[0]), length: Math.max(1, range[1] - range[0]) } : null;
  };
  const walk: Walk = { document, placeOf, places, values: 0, tooMuch: null };
  const root = document.contents;
  if (root === null && document.errors.length === 0) return fileOf(file, new Map(), places, keyPlaces);
  if (!isMap(root)) {
    if (document.errors.length === 0) {
      found.add(SHOW.syntax, {
        place: { file, line: 1, column: 1 },
        message: "the file is not a map of keys and values",
        hint: "Write one `key: value` a line.",
      });
    }
    return null;
  }
  const values = new Map<string, YamlValue>();
  for (const pair of root.items) {
    const key = scalarText(pair.key) ?? "";
    const keyPlace = placeOf(pair.key as Node);
    if (key === "" || values.has(key)) continue;
    if (keyPlace !== null) keyPlaces.set(key, keyPlace);
    const value = yamlValue(walk, pair.value as Node | null, key, 0);
    if (value !== null) values.set(key, value);
    else places.delete(key);
  }
  if (walk.tooMuch !== null) {
    found.add(SHOW.tooMuch, {
      place: walk.tooMuch,
      message: "the file nests too deep or has too many values here, and what is beyond is left out",
      hint: "Look at the aliases (*name): one that holds itself, or others many times over, has no end.",
    });
  }
  return fileOf(file, values, places, keyPlaces);
}

interface Walk {
  readonly document: Document;
  readonly places: Map<string, Place>;
  placeOf(node: Node | null | undefined): Place | null;
  /** Values taken so far. */
  values: number;
  /** Where the first value was left out. */
  tooMuch: Place | null;
}

function yamlValue(walk: Walk, node: Node | null, path: string, depth: number): YamlValue {
  const target = isAlias(node) ? node.resolve(walk.document) : node;
  const place = walk.placeOf(node);
  if (place !== null) walk.places.set(path, place);
  if (target === null || target === undefined) return null;
  if (depth > DEEPEST || ++walk.values > MOST_VALUES) {
    walk.tooMuch ??= place ?? { file: "", line: null, column: null };
    return null;
  }
  if (isScalar(target)) return scalarText(target);
  if (isSeq(target)) return target.items.map((item, i) => yamlValue(walk, item as Node, `${path}.${i}`, depth + 1));
  if (isMap(target)) {
    const entries = target.items.map((pair): [string, YamlValue] => {
      const key = scalarText(pair.key) ?? "";
      return [key, yamlValue(walk, pair.value as Node | null, `${path}.${key}`, depth + 1)];
    });
    return Object.fromEntries(entries);
  }
  return null;
}

/** Offset at which the text nests deeper than any file of a show: by brackets, by dashes in a row, or by indents. */
function tooDeepAt(text: string): number | null {
  const dashes = new RegExp(`(?:[-?:] ){${DEEPEST_TEXT}}`).exec(text);
  let depth = 0;
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (code === 91 || code === 123) depth++;
    else if ((code === 93 || code === 125) && depth > 0) depth--;
    if (depth > DEEPEST_TEXT) return i;
  }
  return dashes?.index ?? deepIndentAt(text);
}

/** Where lines are indented further and further, more than `DEEPEST_TEXT` times. */
function deepIndentAt(text: string): number | null {
  const indents: number[] = [];
  for (const match of text.matchAll(/^( *)(?=[^ #\n])/gm)) {
    const indent = (match[1] as string).length;
    while ((indents.at(-1) ?? -1) >= indent) indents.pop();
    indents.push(indent);
    if (indents.length > DEEPEST_TEXT) return match.index;
  }
  return null;
}

/** Text of a scalar as written; `null` for an empty one and for `null` and `~`. */
function scalarText(node: unknown): string | null {
  if (!isScalar(node) || node.value === null) return null;
  if (typeof node.value === "string") return node.value;
  return node.source ?? String(node.value);
}

function fileOf(
  file: string,
  values: ReadonlyMap<string, YamlValue>,
  places: ReadonlyMap<string, Place>,
  keyPlaces: ReadonlyMap<string, Place>,
): YamlFile {
  return {
    values,
    keyPlace: (key) => keyPlaces.get(key) ?? { file, line: null, column: null },
    place(path) {
      // A single value that counts as a list of one has no index in the file.
      const whole = places.get(path) === undefined ? path.replace(/\.0(?=\.|$)/g, "") : path;
      for (let at = whole; at !== ""; at = at.includes(".") ? at.slice(0, at.lastIndexOf(".")) : "") {
        const place = places.get(at) ?? keyPlaces.get(at);
        if (place !== undefined) return place;
      }
      return { file, line: null, column: null };
    },
  };
}

/** A quote that never closes is reported at the end of the file, and was opened somewhere else. */
function openQuoteBefore(document: Document, problem: YAMLError): number | null {
  if (problem.code !== "MISSING_CHAR") return null;
  let opened: number | null = null;
  visit(document, {
    Scalar(_, node) {
      const quoted = node.type === "QUOTE_DOUBLE" || node.type === "QUOTE_SINGLE";
      if (quoted && node.range && node.range[0] < problem.pos[0] && node.range[1] >= problem.pos[0] - 1) opened = node.range[0];
    },
  });
  return opened;
}

function hintFor(code: string): string {
  if (code === "DUPLICATE_KEY") return "Keep one of the two; the first is used.";
  if (code === "MISSING_CHAR") return "Close the quote on its own line.";
  if (code === "TAB_AS_INDENT") return "Indent with spaces, not with tabs.";
  return "Look at the quotes, colons and indents of this line. A text with a colon or a # in it goes in quotes.";
}
