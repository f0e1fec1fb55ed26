/** One found take as an option of the list: a link, so that it opens as links do. Texts go in as text, never as markup. */
import type { SearchTable } from "../../core/packed-rows.ts";
import type { SearchTerm } from "../../core/search-query.ts";
import type { SearchTake } from "../../core/search-rows.ts";
import { markedRemark } from "./marked.ts";

/** Address of a take's page from the page that is open; at the frame when a whole timecode was searched for. */
export function takeHref(root: string, table: SearchTable, take: SearchTake, terms: readonly SearchTerm[]): string {
  const date = table.days[take[0]]?.[0] ?? "";
  const path = table.path.replace("{date}", date).replace("{address}", take[1]);
  const time = terms.find((term) => term.kind === "time" && term.span.exact);
  return `${root}${path}${time?.kind === "time" ? `#tc=${time.span.from}` : ""}`;
}

export function resultOption(
  page: Document,
  table: SearchTable,
  take: SearchTake,
  href: string,
  marks: ReadonlySet<string>,
): HTMLElement {
  const option = page.createElement("a");
  option.href = href;
  option.tabIndex = -1;
  option.setAttribute("role", "option");
  option.setAttribute("aria-selected", "false");
  const [day, , slate, number, camera, , , clip, timecode] = take;
  const lens = table.lenses[take[10]];
  const name = part(page, "find-name", [
    text(page, "b", slate),
    " take ",
    text(page, "span", number, take[17] === 1 ? "ring on" : "ring"),
    take[17] === 1 ? text(page, "span", ", circled,", "vh") : "",
    text(page, "span", " camera", "vh"),
    ` ${camera}`,
  ]);
  const figures = [lens?.[1] ?? "lens not recorded", lens?.[1].endsWith(String(take[11])) ? "" : take[15], take[16]];
  option.append(
    name,
    part(page, "find-when", [[timecode, clip].filter(said).join(" \u00b7 ")]),
    part(page, "find-with", [figures.filter(said).join(" \u00b7 ")]),
    part(page, "find-day", [table.days[day]?.[1] ?? ""]),
  );
  const standing = take[18];
  const remark = markedRemark(take[21], marks).map(({ text: piece, marked }) => (marked ? text(page, "mark", piece) : piece));
  if (standing !== "" || remark.length > 0) {
    option.append(
      part(page, "find-note", [standing === "" ? "" : text(page, "i", `${standing}${remark.length > 0 ? ": " : ""}`), ...remark]),
    );
  }
  return option;
}

function said(value: string): boolean {
  return value !== "";
}

function text(page: Document, tag: string, content: string, cls = ""): HTMLElement {
  const element = page.createElement(tag);
  element.textContent = content;
  if (cls !== "") element.className = cls;
  return element;
}

/** Parts stand in a grid; the space after each keeps them apart for whoever hears them in a row. */
function part(page: Document, cls: string, contents: readonly (string | HTMLElement)[]): HTMLElement {
  const element = text(page, "span", "", cls);
  element.append(...contents, " ");
  return element;
}
