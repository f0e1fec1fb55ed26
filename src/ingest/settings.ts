import * as z from "zod";
import type { FindingCollector } from "../core/findings/collect.ts";
import { SHOW } from "../core/findings/show.ts";
import { didYouMean } from "../core/nearest-name.ts";
import type { Reading } from "./written/reading.ts";
import type { YamlFile } from "./yaml-text.ts";

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
    const type = shape[key];
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
    if (result.success) taken[key] = result.data;
    else for (const issue of result.error.issues) tellOfIssue(yaml, key, issue, found);
  }
  return taken as Settings<S>;
}

function tellOfIssue(yaml: YamlFile, key: string, issue: z.core.$ZodIssue, found: FindingCollector): void {
  const path = [key, ...issue.path.map(String)].join(".");
  const hint = issue.code === "custom" && typeof issue.params?.hint === "string" ? issue.params.hint : null;
  if (issue.code === "unrecognized_keys") {
    for (const name of issue.keys) {
      found.add(SHOW.unknownKey, {
        place: yaml.place(`${path}.${name}`),
        field: path,
        message: `${path} has a key ${name} that is not known and not read`,
        hint: "Delete it, or look for a slip in the name.",
      });
    }
    return;
  }
  found.add(SHOW.badValue, {
    place: yaml.place(path),
    field: path,
    message: `${path}: ${issue.message}`,
    hint: hint ?? "Write the value as the column reference shows it.",
  });
}

/** A text that a reader of written forms understands. */
export function written<T>(reader: (text: string) => Reading<T>): z.ZodType<T> {
  return z.string({ error: (issue) => `expects one value, not ${shapeName(issue.input)}` }).transform((text, context): T => {
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
  return Array.isArray(value) ? "a list" : typeof value === "object" && value !== null ? "a map" : "nothing";
}
