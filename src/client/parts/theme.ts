/** Auto, Light or Dark. The head of the page has set the remembered choice already; this shows and changes it. */
import { pageStore } from "./store.ts";

export function offerTheme(page: Document): void {
  const root = page.documentElement;
  const store = pageStore(root);
  const fieldset = page.querySelector<HTMLFieldSetElement>("fieldset.theme");
  if (fieldset === null) return;
  const chosen = root.dataset.theme ?? "auto";
  for (const radio of fieldset.querySelectorAll<HTMLInputElement>("input[name=theme]")) {
    radio.checked = radio.value === chosen;
    radio.addEventListener("change", () => {
      if (radio.value === "auto") delete root.dataset.theme;
      else root.dataset.theme = radio.value;
      store.set("theme", radio.value === "auto" ? null : radio.value);
    });
  }
  // Without a script the choice could do nothing: it is hidden until here.
  fieldset.hidden = false;
}
