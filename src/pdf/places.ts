/** Named places of the document: what links lead to, and whose page numbers are written when they are known. */
import type { Doc } from "./document.ts";
import type { Flow } from "./flow.ts";

export interface Places {
  /** Names a place on the current page, `top` points down. */
  readonly mark: (target: string, top: number) => void;
  /** Calls `write` with the page number of a place at the end, on the page that is current now. */
  readonly whenKnown: (target: string, write: (page: string) => void) => void;
  /** Writes all page numbers and comes back to the last page. A place that was never marked is left unwritten. */
  readonly finish: () => void;
}

export function newPlaces(doc: Doc, flow: Flow): Places {
  const pages = new Map<string, number>();
  const waiting: { readonly target: string; readonly page: number; readonly write: (page: string) => void }[] = [];
  return {
    mark(target, top) {
      pages.set(target, flow.page());
      doc.addNamedDestination(target, "XYZ", 0, Math.max(0, top), null);
    },
    whenKnown(target, write) {
      waiting.push({ target, page: flow.page(), write });
    },
    finish() {
      for (const { target, page, write } of waiting) {
        const known = pages.get(target);
        if (known === undefined) continue;
        doc.switchToPage(page);
        write(String(known + 1));
      }
      doc.switchToPage(flow.page());
    },
  };
}
