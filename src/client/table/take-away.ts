/** What a reader takes away from a table: the rows shown on the clipboard, and as a file where the pack has none. */

import { csvRows, tsvRows } from "../../core/sheet-text.ts";
import { thousands } from "../../format/number.ts";
import { copyText } from "../parts/copy.ts";
import { shownSheet } from "./cells.ts";

/** Puts the buttons under the table. `said` says what was done. */
export function offerTakeAway(table: HTMLTableElement, line: HTMLElement, said: HTMLElement): void {
  const page = table.ownerDocument;
  const copy = button(page, "Copy rows as TSV", async () => {
    const { head, rows } = shownSheet(table);
    const text = tsvRows([head, ...rows]);
    // emptied first, so that a second copy is said again
    said.textContent = "";
    line.querySelector("textarea")?.remove();
    if (await copyText(page, text)) {
      said.textContent = `Copied ${plural(rows.length)}.`;
      return;
    }
    const field = selectedText(page, text);
    line.append(field);
    field.focus();
    field.select();
    said.textContent = "This browser does not let a page copy. The rows are selected below: press Ctrl C or Cmd C.";
  });
  line.prepend(copy, " ");
  if (line.querySelector("a") === null)
    copy.after(
      " ",
      button(page, "Download rows as CSV", () => download(table)),
    );
  line.append(" ", said);
}

function button(page: Document, name: string, press: () => void): HTMLButtonElement {
  const made = page.createElement("button");
  made.type = "button";
  made.className = "btn";
  made.textContent = name;
  made.addEventListener("click", press);
  return made;
}

function selectedText(page: Document, text: string): HTMLTextAreaElement {
  const field = page.createElement("textarea");
  field.readOnly = true;
  field.rows = 4;
  field.setAttribute("aria-label", "Rows to copy");
  field.value = text;
  return field;
}

/** A file of the rows shown. The mark in front tells a spreadsheet that it is UTF-8. */
function download(table: HTMLTableElement): void {
  const page = table.ownerDocument;
  const { head, rows } = shownSheet(table);
  const address = URL.createObjectURL(new Blob(["\ufeff", csvRows([head, ...rows])], { type: "text/csv;charset=utf-8" }));
  const link = page.createElement("a");
  link.href = address;
  link.download = `${fileName(page)}-${table.id}.csv`;
  link.click();
  // the browser has the file once the press is done
  setTimeout(() => URL.revokeObjectURL(address), 1000);
}

/** The page's last names: `2026-10-06-index`. */
function fileName(page: Document): string {
  const parts = page.location.pathname
    .replace(/\.html$/, "")
    .split("/")
    .slice(-2);
  return parts.join("-").replace(/[^A-Za-z0-9-]+/g, "-");
}

function plural(count: number): string {
  return count === 1 ? "1 row" : `${thousands(count)} rows`;
}
