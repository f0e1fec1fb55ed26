/** Whether an open page fits: nothing beyond the sheet, nothing cut off, no focus under something else. */
import type { Page } from "playwright-core";

/** Pixels by which the whole page can be scrolled sideways; 0 is right. */
export function sidewaysScroll(page: Page): Promise<number> {
  return page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
}

/** Elements that cut off what they hold and cannot be scrolled, and short texts that stick out of their box; a line each. */
export function cutOff(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const found: string[] = [];
    for (const element of document.querySelectorAll<HTMLElement>("body *:not(svg *)")) {
      const { clientWidth: width, clientHeight: height, scrollWidth, scrollHeight } = element;
      // below 3 pixels it is text for screen readers alone
      if (width < 3 || height < 3 || !element.checkVisibility()) continue;
      const { overflowX, overflowY, display } = getComputedStyle(element);
      if (display === "inline") continue;
      if (element.classList.contains("sort")) {
        // its arrow stands in the space between two columns: the words count, against the head that holds them
        const words = document.createRange();
        words.selectNodeContents(element);
        const by = words.getBoundingClientRect().right - (element.parentElement ?? element).getBoundingClientRect().right;
        if (by > 2) found.push(`head "${textOf(element)}" sticks out by ${by} px`);
        continue;
      }
      const hides = (overflow: string): boolean => overflow === "hidden" || overflow === "clip";
      const wide = scrollWidth - width;
      const tall = scrollHeight - height;
      if ((wide > 1 && hides(overflowX)) || (tall > 1 && hides(overflowY)))
        found.push(
          `${element.tagName.toLowerCase()}.${element.className} is cut by ${Math.max(wide, tall)} px: "${textOf(element)}"`,
        );
      // a box of text that is wider than itself lies over its neighbour
      else if (wide > 2 && overflowX === "visible" && element.childElementCount === 0)
        found.push(`${element.tagName.toLowerCase()}.${element.className} sticks out by ${wide} px: "${textOf(element)}"`);
    }
    return found;

    function textOf(element: HTMLElement): string {
      return (element.textContent ?? "").trim().replace(/\s+/g, " ").slice(0, 60);
    }
  });
}

/** Focuses whatever can be focused, one after the other; a line for each that is then nowhere to be seen (SC 2.4.11). */
export function hiddenFocus(page: Page): Promise<readonly string[]> {
  return page.evaluate(async () => {
    const able = document.querySelectorAll<HTMLElement>("a[href], button, input, select, textarea, summary, [tabindex='0']");
    const found: string[] = [];
    for (const element of able) {
      if (!element.checkVisibility({ visibilityProperty: true }) || element.matches(":disabled")) continue;
      element.focus();
      if (document.activeElement !== element) found.push(`${nameOf(element)} takes no focus`);
      // a radio button that is drawn by its label is seen where the label is
      else if (!seen(element) && !labelsOf(element).some(seen) && !(await seenAfterAFrame(element)))
        found.push(`${nameOf(element)} is hidden while it has the focus`);
    }
    return found;

    /** Focus by script in one breath may leave a box inside a box unscrolled, which a reader's key does not. */
    async function seenAfterAFrame(element: HTMLElement): Promise<boolean> {
      element.blur();
      await new Promise(requestAnimationFrame);
      element.focus();
      await new Promise(requestAnimationFrame);
      return seen(element);
    }
    function seen(element: Element): boolean {
      // a link over several lines has several boxes
      return [...element.getClientRects()].some((box) => {
        const xs = [box.left + 2, box.left + box.width / 2, box.right - 2];
        const ys = [box.top + 2, box.top + box.height / 2, box.bottom - 2];
        return xs.some((x) =>
          ys.some((y) => {
            const top = document.elementFromPoint(x, y);
            return top !== null && (element.contains(top) || labelsOf(element).some((label) => label.contains(top)));
          }),
        );
      });
    }
    function labelsOf(element: Element): readonly Element[] {
      return element instanceof HTMLInputElement ? [...(element.labels ?? [])] : [];
    }
    function nameOf(element: HTMLElement): string {
      const text = (element.getAttribute("aria-label") ?? element.textContent ?? "").trim().replace(/\s+/g, " ").slice(0, 40);
      return `${element.tagName.toLowerCase()}#${element.id}.${element.className} "${text}"`;
    }
  });
}

/** Sets the spacing of SC 1.4.12, which a reader may ask for; needs `bypassCSP`. */
export async function spaceText(page: Page): Promise<void> {
  await page.addStyleTag({
    content:
      "* { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important } p { margin-bottom: 2em !important }",
  });
}
