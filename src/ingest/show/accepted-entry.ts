/** The list `accepted` of show.yaml and day.yaml. */
import * as z from "zod";
import type { Place } from "../../core/finding.ts";
import { type Reading, read, refuse } from "../written/reading.ts";
import type { YamlFile, YamlValue } from "./yaml-text.ts";

/** A finding's code in capitals, as the catalogue has it. Whether there is such a finding is seen when the files have been read. */
export function readFindingCode(value: string): Reading<string> {
  const code = value.trim().toUpperCase();
  return /^[A-Z]{2,5}\d{3}$/.test(code)
    ? read(code)
    : refuse(`not a finding code: "${value}"`, "Write the code as it stands before the finding, such as CHECK702.");
}

/**
 * What narrows an entry to a take or a file. Whatever it is, it is never pruned from its entry: without it the entry would accept the code
 * everywhere.
 */
export const narrowing = z
  .unknown()
  .transform((value) => narrowingText((value ?? null) as YamlValue))
  .optional();

function narrowingText(value: YamlValue): string | null {
  return value === null || typeof value === "string" ? value : JSON.stringify(value);
}

type Entry<K extends string> = { readonly code: string; readonly reason: string } & {
  readonly [key in K]?: string | null | undefined;
};

/**
 * Where an entry stands: refused entries before it are not in the list, so that its number there says nothing.
 * @param key what narrows the entry: `take` in day.yaml, `file` in show.yaml
 */
export function acceptedPlace<K extends "take" | "file">(yaml: YamlFile, key: K, entry: Entry<K>): Place {
  const written = yaml.values.get("accepted");
  const at = Array.isArray(written)
    ? written.findIndex(
        (one) =>
          one?.reason === entry.reason &&
          narrowingText(one[key] ?? null) === (entry[key] ?? null) &&
          String(one.code).trim().toUpperCase() === entry.code,
      )
    : 0;
  return yaml.place(`accepted.${Math.max(0, at)}`);
}
