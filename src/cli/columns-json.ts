/** The column reference as objects, one a column or key. */
import { COLUMN_SECTIONS } from "../csv/columns-markdown.ts";
import type { JsonLine } from "./json-lines.ts";

/** In the order of the files: keys first, then columns. `unit` is `null` for text and plain numbers. */
export function columnObjects(): readonly JsonLine[] {
  return COLUMN_SECTIONS.flatMap(({ title: file, columns, keys = [] }) => [
    ...keys.map((k) => ({ type: "key", file, name: k.name, values: k.values, required: k.required ?? false, about: k.about })),
    ...columns.map((c) => ({
      type: "column",
      file,
      name: c.name,
      unit: c.unit ?? null,
      holds: c.holds,
      required: c.required ?? false,
      about: c.about,
    })),
  ]);
}
