/** Sorting by the heads of a table: `aria-sort` on the head is the only state; the third press brings the page's order back. */
import { dataRows, headText, keyOfCell } from "./cells.ts";
import { type Direction, sorted } from "./order.ts";

export interface Sorting {
  /** Says what was done. */
  say(text: string): void;
  /** After the rows have moved. */
  moved(): void;
}

/** Fewer rows are seen at a glance: arrows in their heads would only be in the way. */
const FEWEST_ROWS = 5;

/** Makes a button of every head whose column has texts that differ; a list of facts keeps its order. Without a script the heads stay plain. */
export function offerSorting(table: HTMLTableElement, sorting: Sorting): void {
  const rows = dataRows(table);
  const heads = [...(table.tHead?.rows[0]?.cells ?? [])];
  if (rows.length < FEWEST_ROWS || table.classList.contains("fixed")) return;
  const places = rows.map((row) => row.parentElement);
  const order = table.dataset.order ?? "the page's own order";
  heads.forEach((head, column) => {
    if (
      head.hasAttribute("data-unsorted") ||
      head.querySelector("svg") !== null ||
      rows.every((row) => keyOfCell(row.cells[column]) === null)
    )
      return;
    const name = headText(head);
    const button = head.ownerDocument.createElement("button");
    button.type = "button";
    button.className = "sort";
    button.append(...head.childNodes);
    head.append(button);
    button.addEventListener("click", () => {
      const next = nextOf(head.getAttribute("aria-sort"));
      for (const other of heads) other.removeAttribute("aria-sort");
      if (next === null) restore(table, rows, places);
      else {
        head.setAttribute("aria-sort", next);
        arrange(
          table,
          sorted(rows, (row) => keyOfCell(row.cells[column]), next),
        );
      }
      sorting.moved();
      sorting.say(next === null ? `Back in ${order}.` : `Sorted by ${name}, ${next}.`);
    });
  });
}

function nextOf(state: string | null): Direction | null {
  if (state === null) return "ascending";
  return state === "ascending" ? "descending" : null;
}

/** Rows of all groups stand in one body; the heads of the groups are put away. */
function arrange(table: HTMLTableElement, rows: readonly HTMLTableRowElement[]): void {
  table.dataset.sorted = "";
  const [first] = table.tBodies;
  if (first === undefined) return;
  if (table.tBodies.length === 1) {
    first.append(...rows);
    return;
  }
  const own = table.querySelector<HTMLTableSectionElement>("tbody.in-one");
  const body = own ?? table.ownerDocument.createElement("tbody");
  if (own === null) {
    body.className = "in-one";
    if (first.hasAttribute("role")) body.setAttribute("role", "rowgroup");
    first.before(body);
  }
  body.append(...rows);
}

function restore(table: HTMLTableElement, rows: readonly HTMLTableRowElement[], places: readonly (Element | null)[]): void {
  delete table.dataset.sorted;
  for (const [i, row] of rows.entries()) places[i]?.append(row);
  table.querySelector("tbody.in-one")?.remove();
}
