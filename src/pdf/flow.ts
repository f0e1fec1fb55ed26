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

/**
 * How many of `total` lines of a text go on a page that has room for `fits`: all, or so many that neither the first nor the
 * last line stands alone. 0: none, the text begins on the next page.
 *
 * @example linesHere(5, 4) // 3
 */
export function linesHere(total: number, fits: number): number {
  if (total <= fits) return total;
  const here = total - fits === 1 ? fits - 1 : fits;
  return here < 2 ? 0 : here;
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
