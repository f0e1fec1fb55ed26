/** The search box over the page: opens by button or Ctrl/Cmd+K, lists takes as they are typed for, leads to one. */

import { queryAddress } from "./address.ts";
import { type Finder, type Found, finderOf } from "./finder.ts";
import { loadRows } from "./load.ts";
import { resultOption, takeHref } from "./result.ts";
import { describeFound, helpFor, plural } from "./said.ts";

/** Takes shown at once; the count says how many there are. */
const MOST_SHOWN = 24;

interface Parts {
  readonly dialog: HTMLDialogElement;
  readonly box: HTMLInputElement;
  readonly list: HTMLElement;
  readonly count: HTMLElement;
  readonly advice: HTMLElement;
  readonly help: HTMLElement;
}

export function offerSearch(page: Document): void {
  const parts = partsOf(page);
  const view = page.defaultView;
  if (parts === null || view === null) return;
  const { dialog, box, list, count, advice, help } = parts;
  const root = dialog.dataset.root ?? "";
  const address = queryAddress(view);
  let finder: Promise<Finder> | null = null;
  let ready: Finder | null = null;
  let active = -1;
  let scrolled = false;
  let advising = 0;

  const options = () => [...list.children] as HTMLAnchorElement[];

  function open(): void {
    if (!dialog.open) dialog.showModal();
    box.focus();
    box.select();
    void prepared();
    answer();
  }

  /** Rows are loaded when the box is opened first, or about to be; a page that is only read never loads them. */
  function prepared(): Promise<Finder> {
    finder ??= loadRows(page, dialog.dataset.rows ?? "").then(finderOf);
    finder.then(
      (made) => {
        if (ready === made) return;
        ready = made;
        help.textContent = helpFor(made.table);
        answer();
        view?.setTimeout(made.warm);
      },
      () => {
        finder = null;
        count.textContent =
          "search-rows.js is missing from the report, so search has nothing to read. Every take is on the page All takes.";
      },
    );
    return finder;
  }

  function answer(): void {
    const query = box.value.trim();
    if (ready === null) {
      count.textContent = query === "" ? "" : "Reading the list of takes.";
      return;
    }
    const found = ready.find(query);
    const shown = found.places.slice(0, MOST_SHOWN);
    const { table } = ready;
    list.replaceChildren(
      ...shown.map((place, i) => {
        const take = table.row(place);
        const option = resultOption(page, table, take, takeHref(root, table, take, found.terms), found.marks);
        option.id = `find-${i}`;
        return option;
      }),
    );
    list.hidden = shown.length === 0;
    // Asking for a scroll place makes the browser lay the page out at once: only when the list has been moved.
    if (scrolled) list.scrollTop = 0;
    scrolled = false;
    box.setAttribute("aria-expanded", String(shown.length > 0));
    count.textContent = describeFound(found, table, shown.length);
    // What was searched is said at once; what to try instead takes as long again, and waits until nobody types.
    view?.clearTimeout(advising);
    advice.hidden = true;
    if (shown.length === 0) advising = view?.setTimeout(() => offerAdvice(found)) ?? 0;
    choose(shown.length > 0 ? 0 : -1);
    address.write(query);
  }

  function offerAdvice(found: Found): void {
    // Without a word to look for nothing is amiss.
    if (found.terms.length === 0) return;
    const all = page.createElement("a");
    all.className = "btn";
    all.href = `${root}takes.html`;
    all.textContent = "All takes, A to Z";
    advice.replaceChildren(
      ...found.advice.map(({ label, query, takes }) => {
        const button = page.createElement("button");
        button.type = "button";
        button.className = "btn";
        button.textContent = takes === 0 ? `${label}: ${query}` : `${label}: ${plural(takes, "clip")}`;
        button.addEventListener("click", () => {
          box.value = query;
          box.focus();
          answer();
        });
        return button;
      }),
      all,
    );
    advice.hidden = false;
  }

  function choose(next: number): void {
    const all = options();
    all[active]?.setAttribute("aria-selected", "false");
    active = next;
    const option = all[active];
    if (option === undefined) {
      box.removeAttribute("aria-activedescendant");
      return;
    }
    option.setAttribute("aria-selected", "true");
    box.setAttribute("aria-activedescendant", option.id);
  }

  function step(by: number): void {
    const total = options().length;
    if (total > 0) show((active + by + total) % total);
  }

  function show(place: number): void {
    choose(place);
    options()[place]?.scrollIntoView({ block: "nearest" });
  }

  function go(inTab: boolean): void {
    const option = options()[active];
    if (option === undefined || view === null) return;
    address.now(box.value.trim());
    if (inTab) view.open(option.href, "_blank", "noopener");
    else view.location.href = option.href;
  }

  box.addEventListener("input", answer);
  box.addEventListener("keydown", (event) => {
    if (event.isComposing) return;
    if (event.key === "ArrowDown") step(1);
    else if (event.key === "ArrowUp") step(-1);
    else if (event.key === "PageDown") show(Math.min(options().length - 1, active + 8));
    else if (event.key === "PageUp") show(options().length === 0 ? -1 : Math.max(0, active - 8));
    else if (event.key === "Enter") go(event.ctrlKey || event.metaKey);
    else return;
    event.preventDefault();
  });
  dialog.addEventListener("keydown", (event) => {
    if (event.key !== "Escape" || event.isComposing) return;
    // The first press empties the box, the next leaves.
    event.preventDefault();
    if (box.value === "") dialog.close();
    else {
      box.value = "";
      box.focus();
      answer();
    }
  });
  list.addEventListener("scroll", () => {
    scrolled = true;
  });
  list.addEventListener("click", () => address.now(box.value.trim()));
  list.addEventListener("pointermove", (event) => {
    const option = (event.target as Element).closest("[role=option]");
    const place = option === null ? -1 : options().indexOf(option as HTMLAnchorElement);
    if (place >= 0 && place !== active) choose(place);
  });
  dialog.addEventListener("click", (event) => {
    if (event.target === dialog) dialog.close();
  });
  dialog.querySelector(".find-close")?.addEventListener("click", () => dialog.close());
  // Closed, nothing is searched for: an address that is copied then is the page's own.
  dialog.addEventListener("close", () => address.now(""));
  page.addEventListener("keydown", (event) => {
    if (event.key.toLowerCase() !== "k" || !(event.ctrlKey || event.metaKey) || event.shiftKey || event.altKey) return;
    event.preventDefault();
    open();
  });
  offerButton(page, view, open, () => void prepared());
  const asked = address.read();
  if (asked !== "") {
    box.value = asked;
    open();
  }
}

/** Without a script a link to the list of all takes stands where the button does now. */
function offerButton(page: Document, view: Window, open: () => void, prepare: () => void): void {
  const button = page.querySelector<HTMLButtonElement>("button.find-open");
  const link = page.querySelector<HTMLElement>("a.find-link");
  if (button === null) return;
  if (/mac|iphone|ipad/i.test(view.navigator.platform)) {
    for (const key of page.querySelectorAll(".find kbd, .find-open kbd")) {
      key.textContent = (key.textContent ?? "").replace("Ctrl", "\u2318");
    }
  }
  button.addEventListener("click", open);
  // Whoever reaches for the button is about to press it.
  button.addEventListener("pointerenter", prepare);
  button.addEventListener("focus", prepare);
  button.hidden = false;
  if (link !== null) link.hidden = true;
}

function partsOf(page: Document): Parts | null {
  const dialog = page.querySelector<HTMLDialogElement>("dialog.find");
  const box = dialog?.querySelector<HTMLInputElement>("#find-box");
  const [list, count, advice, help] = ["#find-list", "#find-count", "#find-advice", "#find-help"].map(
    (id) => dialog?.querySelector<HTMLElement>(id) ?? null,
  );
  if (!dialog || !box || !list || !count || !advice || !help) return null;
  return { dialog, box, list, count, advice, help };
}
