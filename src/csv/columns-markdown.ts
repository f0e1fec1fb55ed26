import type { ColumnSpec, KeySpec } from "./column-spec.ts";
import {
  CALIBRATION_COLUMNS,
  CALIBRATION_KEYS,
  CAMERA_COLUMNS,
  ENCODER_COLUMNS,
  LENS_COLUMNS,
  LOG_FILE_COLUMNS,
  LOG_KEYS,
  NOTE_COLUMNS,
} from "./columns.ts";

/** A file of the show folder: `title` is its path, `keys` its lines before the header. */
interface Section {
  readonly title: string;
  readonly intro: string;
  readonly keys?: readonly KeySpec[];
  readonly columns: readonly ColumnSpec[];
}

export const COLUMN_SECTIONS: readonly Section[] = [
  { title: "kit/cameras.csv", intro: "One row per camera and sensor mode.", columns: CAMERA_COLUMNS },
  { title: "kit/lenses.csv", intro: "One row per lens.", columns: LENS_COLUMNS },
  {
    title: "kit/calibration/<lens>.csv",
    intro: "One row per calibration point. The file name is the lens id.",
    keys: CALIBRATION_KEYS,
    columns: CALIBRATION_COLUMNS,
  },
  {
    title: "kit/encoders/<lens>.csv",
    intro:
      "Optional: one row per mark of the lens, for logs that have encoder readings and no distances. The file name is the lens id. Between marks the focus is linear in 1/distance, beyond them it is the last mark's.",
    columns: ENCODER_COLUMNS,
  },
  { title: "days/<date>/notes.csv", intro: "One row per take per camera.", columns: NOTE_COLUMNS },
  {
    title: "days/<date>/logs/*.csv",
    intro:
      "One row per frame or sample, with one of `timecode`, `frame`, `time_s` and at most one focus column. Columns with other names are kept word for word.",
    keys: LOG_KEYS,
    columns: LOG_FILE_COLUMNS,
  },
];

/** The column reference as Markdown: for each table its keys and its columns with unit and meaning. `*` marks what is required. */
export function columnsMarkdown(): string {
  const parts = COLUMN_SECTIONS.flatMap((section) => [
    `## ${section.title}`,
    section.intro,
    ...(section.keys === undefined
      ? []
      : [
          "Key lines before the header, `# key: value`:",
          table(
            ["key", "value", "what it says"],
            section.keys.map((key) => [nameCell(key), key.values, key.about]),
          ),
        ]),
    table(
      ["column", "unit", "what it says"],
      section.columns.map((column) => [nameCell(column), column.unit ?? "", column.about + limits(column)]),
    ),
  ]);
  return `# Columns\n\nNames are fixed; \`*\` marks what is required. Cells are UTF-8 text, a blank cell is "not recorded".\n\n${parts.join("\n\n")}\n`;
}

function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]): string => `| ${cells.map((cell) => cell.replaceAll("|", "\\|")).join(" | ")} |`;
  return [line(head), line(head.map(() => "---")), ...rows.map(line)].join("\n");
}

function nameCell(spec: { readonly name: string; readonly required?: boolean }): string {
  return `\`${spec.name}\`${spec.required === true ? " *" : ""}`;
}

function limits(spec: ColumnSpec): string {
  const words = [
    ...(spec.above === undefined ? [] : [`above ${spec.above}`]),
    ...(spec.from === undefined ? [] : [`from ${spec.from}`]),
    ...(spec.upTo === undefined ? [] : [`up to ${spec.upTo}`]),
  ];
  return words.length === 0 ? "" : ` (${words.join(", ")})`;
}
