/** Sorting, filters and copies for every table of a page. */
import { offerFilters } from "./filter.ts";
import { groupKeeper, keepSections } from "./shown-groups.ts";
import { offerSorting } from "./sort.ts";
import { offerTakeAway } from "./take-away.ts";

export function offerTables(page: Document): void {
  const keepers: (() => void)[] = [];
  for (const line of page.querySelectorAll<HTMLElement>(".take-away")) {
    const table = page.getElementById(line.dataset.table ?? "") as HTMLTableElement | null;
    if (table === null) continue;
    const said = page.createElement("span");
    said.className = "small";
    said.setAttribute("role", "status");
    const keep = groupKeeper(table);
    keepers.push(keep);
    offerTakeAway(table, line, said);
    offerSorting(table, {
      moved: keep,
      say(text) {
        said.textContent = text;
      },
    });
  }
  offerFilters(page, () => {
    for (const keep of keepers) keep();
    keepSections(page);
  });
}
