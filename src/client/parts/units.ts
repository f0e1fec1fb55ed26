/** Metric or imperial: shows and changes the reader's choice. The head of the page has set the remembered one already. */
import { choicePieces, type DistanceSystem, unitParts } from "../../format/units.ts";
import { pageStore } from "./store.ts";

export function offerUnits(page: Document): void {
  const root = page.documentElement;
  const fieldset = page.querySelector<HTMLFieldSetElement>("fieldset.units");
  // A page without a distance has nothing to choose.
  if (fieldset === null || page.querySelector(".dm, .oi") === null) return;
  const show = root.dataset.showUnits ?? "metric";
  const store = pageStore(root);
  for (const radio of fieldset.querySelectorAll<HTMLInputElement>("input")) {
    if (radio.value === "both" && show !== "both") {
      page.querySelector(`label[for=${radio.id}]`)?.remove();
      radio.remove();
      continue;
    }
    radio.checked = radio.value === unitsOf(page);
    radio.addEventListener("change", () => {
      root.dataset.units = radio.value;
      store.set("units", radio.value === show ? null : radio.value);
    });
  }
  fieldset.hidden = false;
}

/** What the page shows now. */
export function unitsOf(page: Document): DistanceSystem {
  const units = page.documentElement.dataset.units;
  return units === "imperial" || units === "both" ? units : "metric";
}

/** Writes a text into an element, with its choices as the builder prints them. */
export function writeUnits(element: Element, text: string): void {
  element.replaceChildren();
  for (const part of unitParts(text)) {
    if (typeof part === "string") element.append(part);
    else element.append(...choicePieces(part).map(([cls, words]) => piece(element.ownerDocument, cls, words)));
  }
}

function piece(page: Document, cls: string, words: string): HTMLElement {
  const span = page.createElement("span");
  span.className = cls;
  span.textContent = words;
  return span;
}
