/** Cells of text as spreadsheets read them: comma-separated for files, tab-separated for the clipboard. */

/** Text that a spreadsheet would run gets a leading apostrophe; numbers are left. */
export function guardedText(value: string): string {
  return /^[=+\-@]/.test(value) && !/^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(value) ? `'${value}` : value;
}

/** One cell of CSV: guarded, in quotes where it needs them. */
export function csvField(text: string): string {
  const safe = guardedText(text);
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/** Rows as CSV, each ended by LF. */
export function csvRows(rows: readonly (readonly string[])[]): string {
  return rows.map((cells) => `${cells.map(csvField).join(",")}\n`).join("");
}

/** Rows as they are pasted into a sheet: a tab between cells, LF between rows; spaces of other kinds in a cell become one space. */
export function tsvRows(rows: readonly (readonly string[])[]): string {
  return rows.map((cells) => cells.map((text) => guardedText(text.replace(/[\t\r\n]+/g, " "))).join("\t")).join("\n");
}
