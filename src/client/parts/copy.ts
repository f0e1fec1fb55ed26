/** Copy buttons: the text stands in `data-copy`; the result is said beside the button. */

export function offerCopy(page: Document): void {
  for (const button of page.querySelectorAll<HTMLButtonElement>("button[data-copy]")) {
    const box = button.parentElement;
    const said = box?.querySelector<HTMLElement>("[role=status]") ?? null;
    button.addEventListener("click", () => {
      const text = button.dataset.copy ?? "";
      copyText(page, text).then((done) => {
        if (said !== null) said.textContent = done ? "Copied." : "This browser does not let a page copy.";
      });
    });
    // Without a script the button could do nothing: it is hidden until here.
    if (box !== null) box.hidden = false;
  }
}

/** Whether the text lies on the clipboard now. */
export async function copyText(page: Document, text: string): Promise<boolean> {
  try {
    await navigator.clipboard.writeText(text);
    return true;
  } catch {
    return copyBySelection(page, text);
  }
}

/** For browsers that keep the clipboard from local files. */
function copyBySelection(page: Document, text: string): boolean {
  const field = page.createElement("textarea");
  field.value = text;
  page.body.append(field);
  field.select();
  try {
    return page.execCommand("copy");
  } catch {
    return false;
  } finally {
    field.remove();
  }
}
