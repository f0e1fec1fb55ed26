/** inputs.csv: every file that the report was made from, with its hash. */
import type { DayDigest, InputDigest } from "../summary/digest-types.ts";
import { type CsvCell, csvText } from "./csv-text.ts";

const INPUT_COLUMNS = ["file", "bytes", "sha256", "date"] as const;

/** Show and kit first, then the days in the order given; `date` is empty for show and kit. */
export function inputsCsv(showFiles: readonly InputDigest[], digests: readonly DayDigest[]): string {
  const rowOf =
    (date: string | null) =>
    (input: InputDigest): CsvCell[] => [input.file, input.bytes, input.sha256, date];
  return csvText(INPUT_COLUMNS, [...showFiles.map(rowOf(null)), ...digests.flatMap(({ date, inputs }) => inputs.map(rowOf(date)))]);
}
