/** The column reference as objects, one a column or key. */
import type { ColumnSpec, KeySpec } from "../csv/column-spec.ts";
import {
  CALIBRATION_COLUMNS,
  CALIBRATION_KEYS,
  CAMERA_COLUMNS,
  ENCODER_COLUMNS,
  LENS_COLUMNS,
  LOG_FILE_COLUMNS,
  LOG_KEYS,
  NOTE_COLUMNS,
} from "../csv/columns.ts";
import type { JsonLine } from "./json-lines.ts";

const FILES: readonly { readonly file: string; readonly columns: readonly ColumnSpec[]; readonly keys: readonly KeySpec[] }[] = [
  { file: "kit/cameras.csv", columns: CAMERA_COLUMNS, keys: [] },
  { file: "kit/lenses.csv", columns: LENS_COLUMNS, keys: [] },
  { file: "kit/calibration/<lens>.csv", columns: CALIBRATION_COLUMNS, keys: CALIBRATION_KEYS },
  { file: "kit/encoders/<lens>.csv", columns: ENCODER_COLUMNS, keys: [] },
  { file: "days/<date>/notes.csv", columns: NOTE_COLUMNS, keys: [] },
  { file: "days/<date>/logs/*.csv", columns: LOG_FILE_COLUMNS, keys: LOG_KEYS },
];

/** In the order of the files: keys first, then columns. `unit` is `null` for text and plain numbers. */
export function columnObjects(): readonly JsonLine[] {
  return FILES.flatMap(({ file, columns, keys }) => [
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
