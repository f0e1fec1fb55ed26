/** One CSV table as a resource of a data package (Frictionless tabular data package). */

export interface TableField {
  readonly name: string;
  readonly type: "string" | "integer" | "number" | "boolean";
  readonly unit?: string;
  readonly description?: string;
}

/** The resource of `<name>.csv` as the pack writes tables: UTF-8, comma, LF, a header row, an empty cell for what is not recorded. */
export function tableResource(name: string, description: string, fields: readonly TableField[]): Record<string, unknown> {
  return {
    name,
    path: `${name}.csv`,
    profile: "tabular-data-resource",
    format: "csv",
    mediatype: "text/csv",
    encoding: "utf-8",
    description,
    dialect: { delimiter: ",", lineTerminator: "\n", header: true },
    schema: { fields, missingValues: [""] },
  };
}
