/** One found take as an option of the list: a link, so that it opens as links do. Texts go in as text, never as markup. */
import type { SearchTable } from "../../core/packed-rows.ts";
import type { SearchTerm } from "../../core/search-query.ts";
import { AT, type SearchLens, type SearchTake } from "../../core/search-rows.ts";
import { markedRemark } from "./marked.ts";

/** Address of a take's page from the page that is open; at the frame when a whole timecode was searched for. */
export function takeHref(root: string, table: SearchTable, take: SearchTake, terms: readonly SearchTerm[]): string {
  const date = table.days[take[AT.day]]?.[0] ?? "";
  const path = table.path.replace("{date}", date).replace("{address}", take[AT.address]);
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
  const lens = table.lenses[take[AT.lens]];
  const name = part(page, "find-name", [
    text(page, "b", slate),
    " take ",
    text(page, "span", number, take[AT.circled] === 1 ? "ring on" : "ring"),
    take[AT.circled] === 1 ? text(page, "span", ", circled,", "vh") : "",
    text(page, "span", " camera", "vh"),
    ` ${camera}`,
  ]);
  option.append(
    name,
    part(page, "find-when", [[timecode, clip].filter(said).join(" \u00b7 ")]),
    part(page, "find-with", [withWords(take, lens).join(" \u00b7 ")]),
    part(page, "find-day", [table.days[day]?.[1] ?? ""]),
  );
  const standing = take[AT.standing];
  const remark = markedRemark(take[AT.remarks], marks).map(({ text: piece, marked }) =>
    marked ? text(page, "mark", piece) : piece,
  );
  if (standing !== "" || remark.length > 0) {
    option.append(
      part(page, "find-note", [standing === "" ? "" : text(page, "i", `${standing}${remark.length > 0 ? ": " : ""}`), ...remark]),
    );
  }
  return option;
}

/** Lens, focal length and stop; of a prime that is named by its focal length the name says it. */
export function withWords(take: SearchTake, lens: SearchLens | undefined): readonly string[] {
  if (lens === undefined) return ["lens not recorded", take[AT.focal], take[AT.stop]].filter(said);
  const [, name] = lens;
  const isNamed = name.replace(/\smm$/, "").split(/\s/).at(-1) === String(take[AT.focalMinMm]);
  return [name, isNamed ? "" : take[AT.focal], take[AT.stop]].filter(said);
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
