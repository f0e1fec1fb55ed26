/** The sheet: margins with room for the punch on the left, and the running head and foot that are written last. */
import type { Doc } from "./document.ts";
import type { Ink } from "./ink.ts";
import { PRINT } from "./palette.ts";
import { artifact } from "./tags.ts";

const MM = 72 / 25.4;

/** The area for content, in points from the top left. */
export interface Sheet {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly width: number;
}

const LEFT_MM = 18;
const RIGHT_MM = 13;
const TOP_MM = 18;
const BOTTOM_MM = 16;

export function sheetOf(paper: "A4" | "Letter"): Sheet {
  const [pageWidth, pageHeight] = paper === "A4" ? [595.28, 841.89] : [612, 792];
  const left = LEFT_MM * MM;
  const right = pageWidth - RIGHT_MM * MM;
  return { left, right, top: TOP_MM * MM, bottom: pageHeight - BOTTOM_MM * MM, width: right - left };
}

export interface Furniture {
  /** Title of the show, left in the head. */
  readonly show: string;
  /** The day in words, in the middle of the head. */
  readonly day: string;
  /** Program, version and build, left in the foot. */
  readonly program: string;
  readonly claim: string;
}

const SMALL = { face: "sans", size: 8, color: PRINT.ink2 } as const;

/** Writes head and foot on every page, as artifacts: the first page says the show and the day itself, large. */
export function finishPages(doc: Doc, ink: Ink, sheet: Sheet, furniture: Furniture): void {
  const pages = doc.bufferedPageRange().count;
  for (let page = 0; page < pages; page++) {
    doc.switchToPage(page);
    artifact(doc, () => drawFurniture(ink, sheet, furniture, page + 1, pages), "Pagination");
  }
}

function drawFurniture(ink: Ink, sheet: Sheet, furniture: Furniture, page: number, pages: number): void {
  const head = sheet.top - 18;
  const count = `page ${page} of ${pages}`;
  const countWidth = ink.text(count, sheet.right, head, SMALL, "end");
  if (page > 1) {
    // what does not fit stands in full on the first page
    const day = ink.fitted(furniture.day, SMALL, sheet.width / 2);
    const dayWidth = ink.text(day, sheet.right - countWidth - 18, head, SMALL, "end");
    const style = { face: "serifItalic", size: 9.5, color: PRINT.ink } as const;
    const room = sheet.width - countWidth - dayWidth - 36;
    const title = ink.fitted(furniture.show, style, room);
    ink.text(title, sheet.left, head, style);
  }
  ink.line(sheet.left, head + 6, sheet.right, head + 6, PRINT.ink, page > 1 ? 0.75 : 2);
  const foot = sheet.bottom + 20;
  ink.line(sheet.left, foot - 11, sheet.right, foot - 11, PRINT.rule);
  ink.text(furniture.program, sheet.left, foot, SMALL);
  ink.text(furniture.claim, sheet.right, foot, SMALL, "end");
}
