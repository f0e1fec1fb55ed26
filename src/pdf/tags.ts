/**
 * The structure tree: what a screen reader follows. An element is attached when it is made, because an element that never
 * gets a parent keeps the document from ending. Content is drawn in reading order; furniture is an artifact.
 */
import type { Doc, Element } from "./document.ts";

export interface ElementOptions {
  readonly alt?: string;
  readonly title?: string;
  readonly actual?: string;
  readonly lang?: string;
  readonly scope?: "Row" | "Column";
  /** Left, top, right, bottom in points from the top left. */
  readonly bbox?: readonly [number, number, number, number];
  readonly placement?: "Block" | "Inline";
}

/** The element that holds the whole document. */
export function rootElement(doc: Doc): Element {
  const root = doc.struct("Document");
  doc.addStructure(root);
  return root;
}

/** A new element under `parent`; `draw` paints its content on the current page. More may be added until the document ends. */
export function element(doc: Doc, parent: Element, type: string, options: ElementOptions = {}, draw?: () => void): Element {
  const made = doc.struct(type, options as PDFKit.Mixins.StructureElementOptions);
  parent.add(made);
  if (draw !== undefined) made.add(draw);
  return made;
}

/** Lets a table cell span columns and rows, so that every row of a table has the same number of columns. */
export function spanCells(cell: Element, span: { readonly ColSpan?: number; readonly RowSpan?: number }): void {
  const data = (cell as unknown as { readonly dictionary: { readonly data: Record<string, unknown> } }).dictionary.data;
  data["A"] = { ...(data["A"] as Record<string, unknown> | undefined), O: "Table", ...span };
}

/** Rules, repeated heads and page furniture: seen, not read out. Never call it while content of an element is being drawn. */
export function artifact(doc: Doc, draw: () => void, type: "Pagination" | "Layout" = "Layout"): void {
  doc.markContent("Artifact", { type });
  draw();
  doc.endMarkedContent();
}

/** A link to a named place of the document, under `parent`; `label` is what it says to people who do not see it. Returns its element. */
export function link(
  doc: Doc,
  parent: Element,
  area: { readonly x: number; readonly y: number; readonly width: number; readonly height: number },
  target: string,
  label: string,
  draw: () => void,
): Element {
  const made = element(doc, parent, "Link", {}, draw);
  // The writer turns plain strings into names; a String object stays text.
  const options = { structParent: made, Contents: new String(label) } as unknown as PDFKit.Mixins.AnnotationOption;
  doc.goTo(area.x, area.y, area.width, area.height, target, options);
  return made;
}
