import type { Place } from "../../core/finding.ts";
import type { FindingCollector } from "../../core/findings/collect.ts";
import { CSV } from "../../core/findings/csv.ts";
import { KIT } from "../../core/findings/kit.ts";
import { ENCODER_COLUMNS } from "../../csv/columns.ts";
import { readTable, type TableRow } from "../../csv/table.ts";
import { hasRequiredCells, rowCells } from "../row-cells.ts";
import { readMetres } from "../written/metres.ts";
import type { EncoderMark, EncoderTable } from "./encoder-table.ts";

/** Reads the marks of one lens, put in the order of their readings. `null`, with an error, when fewer than two can be used. */
export function readEncoderFile(
  text: string,
  source: { readonly file: string; readonly lens: string; readonly sha256: string },
  found: FindingCollector,
): EncoderTable | null {
  const { file, lens, sha256 } = source;
  const table = readTable(text, file, ENCODER_COLUMNS, found);
  if (table === null) return null;
  const marks = new Map<number, EncoderMark>();
  for (const row of table.rows) {
    const mark = markOf(row, found);
    if (mark === null) continue;
    const first = marks.get(mark.encoder);
    if (first === undefined) marks.set(mark.encoder, mark);
    else {
      found.add(KIT.encoderTwice, {
        place: row.cellPlace("encoder"),
        field: "encoder",
        message: `the reading ${row.text("encoder")} comes twice, first in line ${first.place.line}`,
        hint: "Delete one of the rows. The first is used.",
      });
    }
  }
  const sorted = [...marks.values()].sort((a, b) => a.encoder - b.encoder);
  if (sorted.length < 2) {
    const place: Place = table.document.header?.place(0) ?? { file, line: null, column: null };
    found.add(KIT.encoderMarks, {
      place,
      message: `the table has ${sorted.length === 0 ? "no mark" : "one mark"} that can be used`,
      hint: "Write a row for each mark of the lens, the closest one and infinity at least.",
    });
    return null;
  }
  tellOfTurn(sorted, found);
  return { lens, file, sha256, marks: sorted };
}

function markOf(row: TableRow, found: FindingCollector): EncoderMark | null {
  if (!hasRequiredCells(row, ENCODER_COLUMNS, CSV.blankCell, found)) return null;
  const cells = rowCells(row, ENCODER_COLUMNS, found);
  const encoder = cells.number("encoder");
  const metres = cells.cell("focus_m", CSV.notANumber, readMetres);
  if (encoder === null || metres === null) return null;
  return { encoder, focusDioptres: 1 / metres.value, place: row.place };
}

/** The first mark, in the order of the readings, from which the distance goes the other way. */
function tellOfTurn(marks: readonly EncoderMark[], found: FindingCollector): void {
  const steps = marks.slice(1).map((mark, i) => Math.sign(mark.focusDioptres - (marks[i] as EncoderMark).focusDioptres));
  const way = steps.find((step) => step !== 0) ?? 0;
  const turn = steps.findIndex((step) => step !== 0 && step !== way);
  if (turn < 0) return;
  const mark = marks[turn + 1] as EncoderMark;
  found.add(KIT.encoderTurns, {
    place: mark.place,
    field: "focus_m",
    message: `at the reading ${mark.encoder} the distance turns back`,
    hint: "Mend the reading or the distance of this mark or of its neighbours.",
  });
}
