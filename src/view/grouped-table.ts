/** A table whose rows stand under headings, with links to them. */
import { type Column, OF_GROUP, type RowGroup, type TableModel, type TableOptions, table } from "./table.ts";

/** All rows of the groups as one table. Of a table that is cut, the last groups are. One group alone needs no links. */
export function groupedTable(
  id: string,
  caption: string,
  columns: readonly Column[],
  groups: readonly RowGroup[],
  linksLabel: string,
  options: TableOptions = {},
): TableModel {
  const whole = table(
    id,
    caption,
    columns,
    groups.flatMap((group) => group.rows),
    options,
  );
  let left = whole.rows.length;
  const shown = groups.flatMap((group) => {
    const rows = group.rows.slice(0, left);
    left -= rows.length;
    return rows.length === 0 ? [] : [{ ...group, rows }];
  });
  return {
    ...whole,
    groups: shown,
    hasGroups: true,
    span: String(columns.filter((c) => !c.cls.includes(OF_GROUP)).length),
    linksLabel,
    hasLinks: shown.length > 1,
  };
}
