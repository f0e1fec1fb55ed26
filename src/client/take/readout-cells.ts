/** Writes readouts into the page's lists of facts. */
import type { ReadoutEntry } from "../../format/readout.ts";
import { writeUnits } from "../parts/units.ts";

/** Fills the cells of a list that the builder made, in its order. */
export function fillReadout(list: Element, entries: readonly ReadoutEntry[]): void {
  const cells = list.querySelectorAll("dd");
  entries.forEach((entry, i) => {
    const cell = cells[i];
    if (cell !== undefined) fill(cell, entry);
  });
}

/** A list of facts in the manner of the builder's. */
export function readoutList(page: Document, entries: readonly ReadoutEntry[]): HTMLElement {
  const list = page.createElement("dl");
  list.className = "strip further";
  for (const entry of entries) {
    const box = page.createElement("div");
    const term = page.createElement("dt");
    term.textContent = entry.term;
    const cell = page.createElement("dd");
    cell.append(page.createElement("span"));
    box.append(term, cell);
    list.append(box);
    fill(cell, entry);
  }
  return list;
}

function fill(cell: Element, { value, source, cls }: ReadoutEntry): void {
  const figure = cell.querySelector("span:not(.src)");
  if (figure !== null) {
    writeUnits(figure, value);
    figure.className = cls;
  }
  const said = cell.querySelector(".src");
  if (said !== null) said.textContent = source;
  else if (source !== "") {
    const word = cell.ownerDocument.createElement("span");
    word.className = "src";
    word.textContent = source;
    cell.append(" ", word);
  }
}
