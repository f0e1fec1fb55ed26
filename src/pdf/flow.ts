/** Where the next thing goes: a cursor that moves down the sheet and on to the next one. */
import type { Doc } from "./document.ts";
import type { Sheet } from "./page.ts";

export interface Flow {
  readonly sheet: Sheet;
  /** Top of the free space, in points from the top of the page. */
  y: number;
  /** 0-based number of the current page. */
  readonly page: () => number;
  /** Height that is left on this page. */
  readonly left: () => number;
  /** Goes to a new page. */
  readonly newPage: () => void;
  /** Goes to a new page unless `height` fits here; says whether it did. */
  readonly need: (height: number) => boolean;
}

export function newFlow(doc: Doc, sheet: Sheet): Flow {
  let page = -1;
  const flow: Flow = {
    sheet,
    y: sheet.top,
    page: () => page,
    left: () => sheet.bottom - flow.y,
    newPage() {
      doc.addPage();
      page++;
      flow.y = sheet.top;
    },
    need(height) {
      if (flow.y + height <= sheet.bottom + 0.01 || flow.y === sheet.top) return false;
      flow.newPage();
      return true;
    },
  };
  return flow;
}
