/** Keeps groups of rows whole when some are put away: heads of empty groups go, the labels of the shared scale stay. */

/** What every first row of a group writes beside its ribbon; the same on all rows, for all have one scale. */
const LABELS = '.c-rib svg > g[text-anchor="end"]';

/** After rows were sorted or filtered. Calls with the same rows shown change nothing. */
export function groupKeeper(table: HTMLTableElement): () => void {
  const labels = table.querySelector(LABELS)?.cloneNode(true) ?? null;
  const note = table.ownerDocument.createElement("p");
  note.className = "small nothing";
  note.textContent = "No row of this table passes the filters.";
  const box = table.parentElement;
  const line = table.ownerDocument.querySelector<HTMLElement>(`.take-away[data-table="${table.id}"]`);
  const links = table.ownerDocument.querySelector<HTMLElement>(`.groups[data-table="${table.id}"]`);
  return () => {
    for (const old of table.querySelectorAll(LABELS)) old.remove();
    for (const body of table.tBodies) {
      const rows = [...body.rows].filter((row) => row.cells.length > 1);
      body.hidden = rows.every((row) => row.hidden);
      const first = rows.find((row) => !row.hidden && row.querySelector(".c-rib .k-row") !== null);
      if (labels !== null) first?.querySelector(".c-rib svg")?.append(labels.cloneNode(true));
    }
    const empty = [...table.tBodies].every((body) => body.hidden);
    if (box !== null) box.hidden = empty;
    if (line !== null) line.hidden = empty;
    if (empty) box?.after(note);
    else note.remove();
    if (links !== null) showLinks(links);
  };
}

/** A link leads to a heading that is shown, or is not there. */
function showLinks(links: HTMLElement): void {
  const items = [...links.querySelectorAll<HTMLElement>("li")];
  for (const item of items) {
    const target = links.ownerDocument.getElementById(item.querySelector("a")?.hash.slice(1) ?? "");
    item.hidden = target?.closest("tbody")?.hidden !== false;
  }
  links.hidden = items.every((item) => item.hidden);
}

/** After the findings of the page were filtered: a section without one that is shown is put away with its heading. */
export function keepSections(page: Document): void {
  const filtered = page.querySelector(".filters.active") !== null;
  for (const section of page.querySelectorAll<HTMLElement>(".listed")) {
    const items = [...section.querySelectorAll<HTMLElement>(".findings > li")];
    section.hidden = filtered && items.every((item) => item.hidden);
  }
}
