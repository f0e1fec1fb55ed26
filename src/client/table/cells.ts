/** Reads a table of the page: its rows of data, what a cell is sorted by, what a copy of it says. */
import { type SortKey, sortKey } from "./order.ts";

/** Rows of data in the order they stand; rows that head a group of others are none. */
export function dataRows(table: HTMLTableElement): HTMLTableRowElement[] {
  return [...table.tBodies].flatMap((body) => [...body.rows]).filter((row) => row.cells.length > 1);
}

/** What the table's columns are called, with their units. */
export function headText(head: Element): string {
  const [label = "", ...unit] = visibleText(head, "\n")
    .split("\n")
    .filter((line) => line !== "");
  return unit.length === 0 ? label : `${label} (${unit.join(" ")})`;
}

/** The value that the builder wrote, else the text without what only explains it; metres where a reader may choose. */
export function keyOfCell(cell: Element | undefined): SortKey {
  if (cell === undefined || cell.classList.contains("absent")) return null;
  const written = cell.getAttribute("data-v");
  if (written !== null) return sortKey(written);
  return sortKey(gather(cell, (element) => !element.matches(".absent, .src, .oi, .di, .ob, .paper-only, .m-only, svg"), " "));
}

/** Text as the page shows it now, to eyes or to a screen reader; a line break of the page is `lineBreak`. */
export function visibleText(cell: Element, lineBreak = " "): string {
  const view = cell.ownerDocument.defaultView;
  const shown = (element: Element) => !element.matches("svg, [hidden]") && view?.getComputedStyle(element).display !== "none";
  return gather(cell, shown, lineBreak)
    .split("\n")
    .map((line) => line.replace(/\s+/g, " ").trim())
    .join("\n")
    .trim();
}

function gather(element: Element, wanted: (element: Element) => boolean, lineBreak: string): string {
  let text = "";
  for (const node of element.childNodes) {
    // a line break of the markup is a space
    if (node.nodeType === 3) text += (node.nodeValue ?? "").replace(/\n/g, " ");
    else if (node.nodeName === "BR") text += lineBreak;
    else if (node.nodeType === 1 && wanted(node as Element)) text += gather(node as Element, wanted, lineBreak);
  }
  return text;
}

/** Rows that are shown, as cells of text under the names of their columns. */
export interface Sheet {
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** The rows shown, in their order. Rows with cells of their own for a copy give those. Columns of drawings are left out. */
export function shownSheet(table: HTMLTableElement): Sheet {
  const rows = dataRows(table).filter((row) => !row.hidden && row.closest("tbody[hidden]") === null);
  const copyHead = table.dataset.copyHead;
  if (copyHead !== undefined)
    return { head: copyHead.split("\t"), rows: rows.map((row) => (row.dataset.copyRow ?? "").split("\t")) };
  const heads = [...(table.tHead?.rows[0]?.cells ?? [])];
  const texts = rows.map((row) => [...row.cells].map((cell) => visibleText(cell)));
  const kept = heads.map((_, column) => texts.some((cells) => cells[column] !== ""));
  const keep = (cells: readonly string[]) => cells.filter((_, column) => kept[column] === true);
  return { head: keep(heads.map(headText)), rows: texts.map(keep) };
}
