/** Files beside the show-wide pages: what search reads, and the tables that are longer than a page. */
import { clipsCsv } from "../export/editorial/clips-csv.ts";
import { inputsCsv } from "../export/inputs-csv.ts";
import type { ShowInput } from "../ingest/records.ts";
import type { DayDigest } from "../summary/digest-types.ts";
import { CLIPS_TABLE_PATH, INPUTS_TABLE_PATH } from "../view/links.ts";
import { SEARCH_ROWS_PATH, searchRows, searchRowsScript } from "../view/show/search-rows.ts";

export interface ShowText {
  /** Below the output folder. */
  readonly path: string;
  readonly text: string;
}

export function showTexts(digests: readonly DayDigest[], show: ShowInput): readonly ShowText[] {
  return [
    { path: SEARCH_ROWS_PATH, text: searchRowsScript(searchRows(digests, show.kit)) },
    { path: CLIPS_TABLE_PATH, text: clipsCsv(digests) },
    { path: INPUTS_TABLE_PATH, text: inputsCsv(show.files, digests) },
  ];
}
