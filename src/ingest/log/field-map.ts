import * as z from "zod";
import type { Place } from "../../core/finding.ts";
import type { FindingCollector } from "../../core/findings/collect.ts";
import { KIT } from "../../core/findings/kit.ts";
import { didYouMean } from "../../core/nearest-name.ts";
import { namesOf } from "../../csv/column-spec.ts";
import { LOG_FILE_COLUMNS, LOG_KEYS } from "../../csv/columns.ts";
import type { KeyLine } from "../../csv/key-lines.ts";
import { readYaml, type YamlFile } from "../show/yaml-text.ts";

/** A map from another layout's headers onto the known columns (kit/columns.yaml). */
export interface FieldMap {
  readonly name: string;
  /** Headers that must all be there. */
  readonly headerHas: readonly string[];
  readonly decimal: "." | "," | null;
  /** Header as written to known column. */
  readonly columns: ReadonlyMap<string, string>;
  /** Keys that hold where the log does not say its own. */
  readonly set: readonly KeyLine[];
}

const MAP_SHAPE = z.strictObject({
  when: z.strictObject({ header_has: z.array(z.string()).min(1) }),
  decimal: z.enum([".", ","]).optional(),
  columns: z.record(z.string(), z.string()),
  set: z.record(z.string(), z.string()).optional(),
});

/** Reads kit/columns.yaml, in file order. A map that cannot be used is an error and left out. */
export function readFieldMaps(text: string, file: string, found: FindingCollector): readonly FieldMap[] {
  const yaml = readYaml(text, file, found);
  const maps: FieldMap[] = [];
  for (const [name, value] of yaml?.values ?? []) {
    const result = MAP_SHAPE.safeParse(value);
    if (!result.success) {
      const [issue] = result.error.issues;
      const path = [name, ...(issue?.path ?? []).map(String)].join(".");
      found.add(KIT.badMap, {
        place: yaml?.place(path) ?? null,
        field: path,
        message: `the map ${name} cannot be used: ${path} ${issue?.message.toLowerCase() ?? ""}`,
        hint: 'A map has `when: {header_has: ["TC"]}` and `columns: {TC: timecode}`, and may have decimal and set.',
      });
      continue;
    }
    maps.push(mapOf(name, result.data, yaml as YamlFile, found));
  }
  return maps;
}

function mapOf(name: string, map: z.output<typeof MAP_SHAPE>, yaml: YamlFile, found: FindingCollector): FieldMap {
  const columns = new Map<string, string>();
  const known = namesOf(LOG_FILE_COLUMNS);
  for (const [header, column] of Object.entries(map.columns)) {
    if (known.has(column)) columns.set(header.trim(), column);
    else tellOfTarget(yaml.place(`${name}.columns.${header}`), column, known, found);
  }
  const keys = namesOf(LOG_KEYS);
  const set: KeyLine[] = [];
  for (const [key, value] of Object.entries(map.set ?? {})) {
    const place = yaml.place(`${name}.set.${key}`);
    if (keys.has(key)) set.push({ key, value: value.trim(), place });
    else tellOfTarget(place, key, keys, found);
  }
  return { name, headerHas: map.when.header_has.map((h) => h.trim()), decimal: map.decimal ?? null, columns, set };
}

function tellOfTarget(place: Place, name: string, known: ReadonlySet<string>, found: FindingCollector): void {
  found.add(KIT.mapTarget, {
    place,
    field: name,
    message: `the map names ${name}, which is not known`,
    hint: didYouMean(name, known).trim() || "`daybook columns` lists the names.",
  });
}

/** The first map all of whose headers are there, or `null`. Headers match exactly after trimming. */
export function mapFor(maps: readonly FieldMap[], headers: readonly string[]): FieldMap | null {
  const names = new Set(headers.map((header) => header.trim()));
  return maps.find((map) => map.headerHas.every((header) => names.has(header))) ?? null;
}
