/** Where a take's figures come from: files, rows, hashes. */

import { NOT_RECORDED } from "../../format/absent.ts";
import { thousands } from "../../format/number.ts";
import { listWords } from "../../format/words.ts";
import type { TakeSummary } from "../../summary/types.ts";
import { takeName } from "../names.ts";
import { cell, column, FIXED, num, type Row, row, type TableModel, table } from "../table.ts";

export interface SourceView {
  readonly table: TableModel;
  readonly sentence: string;
}

export function sourceView(t: TakeSummary, hashes: ReadonlyMap<string, string>): SourceView {
  const { take } = t;
  const rows: Row[] = take.logLines.map((log) =>
    row(cell(log.file, { mono: true }), [
      cell(`${thousands(log.first)} to ${thousands(log.last)}`, { nb: true }),
      num(thousands(log.used)),
      cell(shortHash(log.sha256), { mono: true, nb: true }),
    ]),
  );
  const note = take.note?.place;
  if (note !== undefined && note !== null) {
    rows.push(
      row(cell(note.file, { mono: true }), [
        cell(note.line === null ? "whole file" : thousands(note.line)),
        num("1"),
        hashCell(hashes.get(note.file)),
      ]),
    );
  }
  if (take.calibration !== null) {
    const points = take.calibration.points.length;
    rows.push(
      row(cell(take.calibration.file, { mono: true }), [
        cell("calibration points"),
        num(thousands(points)),
        cell(shortHash(take.calibration.sha256), { mono: true, nb: true }),
      ]),
    );
  }
  return {
    table: table(
      "source-table",
      `Source files of ${takeName(take)}`,
      [column("File"), column("Lines"), column("Used", { unit: "rows", num: true }), column("SHA-256", { unit: "first and last" })],
      rows,
      { cls: FIXED },
    ),
    sentence: matchSentence(t),
  };
}

function hashCell(hash: string | undefined) {
  return hash === undefined ? cell(NOT_RECORDED, { absent: true }) : cell(shortHash(hash), { mono: true, nb: true });
}

/** "9f3c52e1 … 07ab": enough to recognise a file; the whole hash stands on the day page. */
function shortHash(hash: string): string {
  return `${hash.slice(0, 8)} … ${hash.slice(-4)}`;
}

function matchSentence(t: TakeSummary): string {
  if (t.take.logLines.length === 0) return "No log serves this take.";
  const ways = [...new Set(t.take.logLines.map((log) => log.matchedBy))];
  const logged = `${thousands(t.framesLogged)} of ${thousands(t.framesExpected)} frames logged`;
  return `Log matched to the take by ${listWords(ways)}. ${logged}, ${thousands(t.framesMissing)} missing.`;
}
