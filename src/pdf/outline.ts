/** Bookmarks: day, slates, takes. */
import type { Doc } from "./document.ts";

export interface Bookmark {
  readonly add: (title: string, top: number) => Bookmark;
}

interface OutlineItem extends PDFKit.PDFOutline {
  options: { expanded?: boolean };
  readonly outlineData: Record<string, unknown>;
  readonly children: OutlineItem[];
}

/** Adds a bookmark for the current page at `top` points; the first level is shown open. */
export function addBookmark(doc: Doc, title: string, top: number): Bookmark {
  return bookmark(doc, doc.outline as OutlineItem, title, top, true);
}

function bookmark(doc: Doc, parent: OutlineItem, title: string, top: number, expanded: boolean): Bookmark {
  // "left" counts from the right edge in the library: the page's width is the left edge.
  const options = { expanded, top: Math.max(0, top), left: doc.page.width };
  const item = parent.addItem(title, options) as OutlineItem;
  return { add: (childTitle, childTop) => bookmark(doc, item, childTitle, childTop, false) };
}

/**
 * Writes the counts that viewers and PDF/A ask for and PDFKit leaves out: of the root the number of items that are seen,
 * of a closed item the negative number of its children.
 */
export function finishOutline(doc: Doc): void {
  const root = doc.outline as OutlineItem;
  root.options = {};
  root.outlineData["Count"] = root.children.reduce((sum, item) => sum + 1 + item.children.length, 0);
  for (const item of root.children) for (const child of item.children) closeItem(child);
}

function closeItem(item: OutlineItem): void {
  if (item.children.length > 0) item.outlineData["Count"] = -item.children.length;
  for (const child of item.children) closeItem(child);
}
