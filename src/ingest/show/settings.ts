import * as z from "zod";
import type { FindingCollector } from "../../core/findings/collect.ts";
import { SHOW } from "../../core/findings/show.ts";
import { didYouMean } from "../../core/nearest-name.ts";
import type { Reading } from "../written/reading.ts";
import type { YamlFile, YamlValue } from "./yaml-text.ts";

/** What each key of a file takes. */
export type Shape = Readonly<Record<string, z.ZodType>>;

/** The values that could be used; a key that is absent or refused is absent. */
export type Settings<S extends Shape> = { readonly [K in keyof S]?: z.output<S[K]> };

/**
 * Takes the known keys of a file, each on its own: a refused value is an error at its place and loses that key only. Unknown keys are
 * a check with the nearest name.
 */
export function takeSettings<S extends Shape>(yaml: YamlFile, shape: S, found: FindingCollector): Settings<S> {
  const taken: Record<string, unknown> = {};
  const known = Object.keys(shape);
  for (const [key, value] of yaml.values) {
    const type = Object.hasOwn(shape, key) ? shape[key] : undefined;
    if (type === undefined) {
      found.add(SHOW.unknownKey, {
        place: yaml.keyPlace(key),
        field: key,
        message: `the key ${key} is not known and not read`,
        hint: didYouMean(key, known).trim() || `Known keys are ${known.join(", ")}.`,
      });
      continue;
    }
    const result = type.safeParse(value);
    if (!result.success) for (const issue of result.error.issues) tellOfIssue(yaml, key, type, issue, found);
    const kept = result.success ? result : parseWithoutFaults(type, value, result.error.issues);
    if (kept?.success) taken[key] = kept.data;
  }
  return taken as Settings<S>;
}

/** Takes the faulty parts out of a value, one level further up each time, so that one bad entry does not cost the whole list. */
function parseWithoutFaults(
  type: z.ZodType,
  value: YamlValue,
  issues: readonly z.core.$ZodIssue[],
): z.ZodSafeParseResult<unknown> | null {
  let pruned = value;
  let faults = issues;
  for (let round = 0; round < 6; round++) {
    for (const issue of faults) {
      const paths = issue.code === "unrecognized_keys" ? issue.keys.map((name) => [...issue.path, name]) : [issue.path];
      for (const path of paths) pruned = without(pruned, path.map(String));
    }
    if (pruned === null) return null;
    const result = type.safeParse(pruned);
    if (result.success) return result;
    faults = result.error.issues.map((issue) =>
      issue.code === "unrecognized_keys" ? issue : { ...issue, path: issue.path.slice(0, -1) },
    );
  }
  return null;
}

/** A copy of the value in which the part at the path is gone: an entry of a list is blank, a key of a map is absent. */
function without(value: YamlValue, path: readonly string[]): YamlValue {
  const [first, ...rest] = path;
  if (first === undefined || value === null || typeof value === "string") return null;
  if (Array.isArray(value)) return value.map((entry: YamlValue, i) => (String(i) === first ? without(entry, rest) : entry));
  const map = value as { readonly [key: string]: YamlValue };
  const entries = Object.entries(map).map(([key, part]): [string, YamlValue] => [key, key === first ? without(part, rest) : part]);
  return Object.fromEntries(entries.filter(([, part]) => part !== null));
}

function tellOfIssue(yaml: YamlFile, key: string, type: z.ZodType, issue: z.core.$ZodIssue, found: FindingCollector): void {
  const path = [key, ...issue.path.map(String)].join(".");
  if (issue.code === "unrecognized_keys") {
    for (const name of issue.keys) {
      found.add(SHOW.unknownKey, {
        place: yaml.place(`${path}.${name}`),
        field: path,
        message: `${path} has a key ${name} that is not known and not read`,
        hint:
          didYouMean(name, type instanceof z.ZodObject ? Object.keys(type.shape) : []).trim() ||
          "Delete it, or look for a slip in the name.",
      });
    }
    return;
  }
  const hint = issue.code === "custom" && typeof issue.params?.hint === "string" ? issue.params.hint : null;
  found.add(SHOW.badValue, {
    place: yaml.place(path),
    field: path,
    message: `${path}: ${issue.code === "invalid_type" ? shapeProblem(issue) : issue.message}`,
    hint: hint ?? "Write the value as the show folder's description has it, or delete the key.",
  });
}

function shapeProblem(issue: z.core.$ZodIssueInvalidType): string {
  if (issue.expected === "array") return "expects a list, such as [a, b]";
  if (issue.expected === "object" || issue.expected === "record") return "expects a map of keys and values, such as {key: value}";
  return issue.message;
}

/** A text that a reader of written forms understands. */
export function written<T>(reader: (text: string) => Reading<T>): z.ZodType<T> {
  return z.string({ error: (issue) => shapeName(issue.input) }).transform((text, context): T => {
    const reading = reader(text);
    if (reading.ok) return reading.value;
    context.addIssue({ code: "custom", message: reading.problem, params: { hint: reading.hint } });
    return z.NEVER;
  });
}

/** A list; one value alone counts as a list of one. Blank entries are left out. */
export function listOf<T>(item: z.ZodType<T>): z.ZodType<readonly T[]> {
  return z.preprocess(
    (value) => (Array.isArray(value) ? value : [value]).filter((entry) => entry !== null),
    z.array(item),
  ) as unknown as z.ZodType<readonly T[]>;
}

/** One schema for a single value, another for a list or a map; the problems named are those of the one that applies. */
export function textOr<A, B>(single: z.ZodType<A>, other: z.ZodType<B>): z.ZodType<A | B> {
  return z.unknown().transform((value, context): A | B => {
    const result = typeof value === "string" ? single.safeParse(value) : other.safeParse(value);
    if (result.success) return result.data;
    for (const issue of result.error.issues) {
      const params = issue.code === "custom" ? issue.params : undefined;
      context.addIssue({
        code: "custom",
        message: issue.message,
        path: [...issue.path],
        ...(params === undefined ? {} : { params }),
      });
    }
    return z.NEVER;
  });
}

function shapeName(value: unknown): string {
  if (value === undefined || value === null) return "is missing";
  return `expects one value, not ${Array.isArray(value) ? "a list" : "a map"}`;
}
