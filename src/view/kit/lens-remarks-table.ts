/** Remarks on a lens's condition with day and take. */
import type { LensRemark } from "../../summary/lens-remarks.ts";
import { hrefTo, takePath } from "../links.ts";
import { dayShort, takeName } from "../names.ts";
import { cell, column, row, type TableModel, table } from "../table.ts";

export function remarksTable(remarks: readonly LensRemark[], path: string): TableModel {
  return table(
    "remarks-table",
    "Remarks on the lens",
    [column("From"), column("Day"), column("Remark")],
    remarks.map(({ day, take, text }) =>
      day === null || take === null
        ? row(cell("kit/lenses.csv", { mono: true }), [cell("all days"), cell(text, { fold: true })])
        : row(cell(takeName(take), { nb: true, href: hrefTo(path, takePath(day.date, take.address)) }), [
            cell(dayShort(day), { nb: true }),
            cell(text, { fold: true }),
          ]),
    ),
  );
}
