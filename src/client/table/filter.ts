/** The filter bar of a page: chips with counts and a box for words. It works on every row that carries facets. */
import { thousands } from "../../format/number.ts";
import { dataRows, visibleText } from "./cells.ts";
import {
  countFor,
  type FilterRow,
  fromQuery,
  isNothing,
  NOTHING,
  passes,
  type Selection,
  shownWords,
  toggled,
  toQuery,
} from "./selection.ts";

/** A clip of the page with its rows, for one table may say how it was shot and the next how its lens draws; or a finding. */
interface PageItem extends FilterRow {
  readonly elements: readonly HTMLElement[];
}

/** Browsers refuse an address that changes with every key for long. */
const WAIT_MS = 250;

/** `changed` is called after rows were shown or put away. */
export function offerFilters(page: Document, changed: () => void): void {
  const bar = page.querySelector<HTMLElement>(".filters");
  const box = bar?.querySelector("input") ?? null;
  const said = bar?.querySelector<HTMLElement>("[role=status]") ?? null;
  const view = page.defaultView;
  if (bar === null || box === null || said === null || view === null) return;
  const buttons = [...bar.querySelectorAll<HTMLButtonElement>(".chip")];
  const { one = "", many = "", wayOut = "", names: named = "" } = bar.dataset;
  const names = [...new Set([...named.split(" "), ...buttons.map((chip) => chip.dataset.name ?? "")])];
  const items = [...clipsOf(page), ...findingsOf(page)];
  if (items.length < 2) return;
  let selection = fromQuery(view.location.search, names);

  function apply(): void {
    let shown = 0;
    for (const item of items) {
      const passed = passes(item, selection);
      for (const element of item.elements) element.hidden = !passed;
      if (passed) shown++;
    }
    for (const chip of buttons) {
      const { name = "", value = "" } = chip.dataset;
      chip.setAttribute("aria-pressed", String(selection.chips.get(name)?.includes(value) === true));
      const count = chip.querySelector(".n");
      if (count !== null) count.textContent = thousands(countFor(items, selection, name, value));
    }
    if (said !== null)
      said.textContent = shownWords(shown, items.length, selection, labelsOf(selection, buttons), { one, many, wayOut });
    bar?.classList.toggle("active", !isNothing(selection));
    bar?.classList.toggle("none", shown === 0);
    changed();
  }

  let timer = 0;
  function set(next: Selection): void {
    selection = next;
    apply();
    view?.clearTimeout(timer);
    timer = view?.setTimeout(() => write(view, selection, names), WAIT_MS) ?? 0;
  }

  for (const chip of buttons)
    chip.addEventListener("click", () => set(toggled(selection, chip.dataset.name ?? "", chip.dataset.value ?? "")));
  box.value = selection.words;
  box.addEventListener("input", () => set({ ...selection, words: box.value }));
  bar.querySelector(".show-all")?.addEventListener("click", () => {
    box.value = "";
    set(NOTHING);
  });
  for (const folded of bar.querySelectorAll("details"))
    folded.open = buttons.some(
      (chip) => folded.contains(chip) && selection.chips.get(chip.dataset.name ?? "")?.includes(chip.dataset.value ?? "") === true,
    );
  bar.hidden = false;
  apply();
}

function clipsOf(page: Document): readonly PageItem[] {
  const clips = new Map<string, HTMLTableRowElement[]>();
  for (const row of [...page.querySelectorAll("table")].flatMap(dataRows)) {
    if (row.dataset.camera === undefined) continue;
    const address = row.querySelector("th a")?.getAttribute("href") ?? row.id;
    clips.set(address, [...(clips.get(address) ?? []), row]);
  }
  return [...clips.values()].map((elements) => ({
    elements,
    words: elements
      .flatMap((row) => [...row.cells].map((cell) => visibleText(cell)))
      .join(" ")
      .toLowerCase(),
    facet: (name) => elements[0]?.dataset[name],
  }));
}

function findingsOf(page: Document): readonly PageItem[] {
  return [...page.querySelectorAll<HTMLElement>(".findings > [data-severity]")].map((element) => ({
    elements: [element],
    words: visibleText(element).toLowerCase(),
    facet: (name) => element.dataset[name],
  }));
}

/** Names of what is pressed; a value that no chip of this page has, as it stands in the address. */
function labelsOf({ chips: pressed }: Selection, chips: readonly HTMLElement[]): readonly string[] {
  return [...pressed].flatMap(([name, values]) =>
    values.map((value) => {
      const chip = chips.find((other) => other.dataset.name === name && other.dataset.value === value);
      return chip?.querySelector(".label")?.textContent ?? `${name} ${value}`.trim();
    }),
  );
}

function write(view: Window, selection: Selection, names: readonly string[]): void {
  const { pathname, search, hash } = view.location;
  const query = toQuery(selection, search, names);
  if (query === search) return;
  try {
    view.history.replaceState(view.history.state, "", `${query === "" ? pathname : query}${hash}`);
  } catch {
    // A browser may refuse it to local files: the filter works, it just cannot be sent.
  }
}
