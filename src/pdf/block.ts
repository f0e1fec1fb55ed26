/** Heads and paragraphs: the plain parts of a page. */
import type { Element } from "./document.ts";
import { linesHere } from "./flow.ts";
import { lineHeight, type TextStyle } from "./ink.ts";
import { PRINT } from "./palette.ts";
import { type Report, TYPE } from "./report.ts";
import { artifact, element } from "./tags.ts";

/** A section with a hairline in ink, a head, and beside it one line that says how to read it. Returns the section's element. */
export function sectionHead(
  report: Report,
  title: string,
  says = "",
  options: { readonly gap?: number; readonly keep?: number } = {},
): Element {
  const { flow } = report;
  flow.need((options.gap ?? 18) + (options.keep ?? 70));
  if (flow.y > flow.sheet.top) flow.y += options.gap ?? 18;
  const section = element(report.doc, report.root, "Sect");
  flow.y = headLine(report, section, "H2", title, says, flow.sheet.left, flow.sheet.width, flow.y);
  return section;
}

/** Draws rule, head and note in a column; returns where the content may begin. */
export function headLine(
  report: Report,
  parent: Element,
  tag: "H2" | "H3",
  title: string,
  says: string,
  x: number,
  width: number,
  top: number,
): number {
  const { doc, ink } = report;
  // At the top of a page the rule of the running head is there already.
  if (top > report.flow.sheet.top) artifact(doc, () => ink.line(x, top, x + width, top, PRINT.ink, 0.75));
  const baseline = top + 15;
  const style = tag === "H2" ? TYPE.head : { ...TYPE.head, size: 11 };
  // Names that are longer than a line are cut: what is named has its name in full in a table.
  const shown = ink.fitted(title, style, width);
  let used = 0;
  element(doc, parent, tag, {}, () => {
    used = ink.text(shown, x, baseline, style);
  });
  if (says === "") return top + 24;
  const room = width - used - 10;
  const beside = ink.width(says, TYPE.label) <= room;
  const lines = beside ? [says] : ink.lines(says, TYPE.label, width);
  const step = lineHeight(TYPE.label);
  element(doc, parent, "P", {}, () => {
    lines.forEach((line, i) => {
      if (beside) ink.text(line, x + used + 10, baseline, TYPE.label);
      else ink.text(`${line} `, x, baseline + 13 + i * step, TYPE.label);
    });
  });
  return beside ? top + 24 : top + 26 + lines.length * step;
}

export interface ParagraphOptions {
  readonly x?: number;
  readonly width?: number;
  readonly style?: TextStyle;
  readonly tag?: string;
  /** Space after it. */
  readonly after?: number;
}

/** A paragraph that wraps and goes on to the next page when it must. */
export function paragraph(report: Report, parent: Element, text: string, options: ParagraphOptions = {}): void {
  const { doc, ink, flow } = report;
  const style = options.style ?? TYPE.body;
  const x = options.x ?? flow.sheet.left;
  const step = lineHeight(style);
  let lines = ink.lines(text, style, options.width ?? flow.sheet.width);
  const made = element(doc, parent, options.tag ?? "P");
  while (lines.length > 0) {
    let count = linesHere(lines.length, Math.floor((flow.left() + 0.01) / step));
    if (count === 0) {
      flow.newPage();
      count = linesHere(lines.length, Math.floor((flow.left() + 0.01) / step));
    }
    const here = lines.slice(0, count);
    const top = flow.y;
    made.add(() => {
      here.forEach((line, i) => {
        ink.text(`${line} `, x, top + i * step + style.size, style);
      });
    });
    flow.y += here.length * step;
    lines = lines.slice(here.length);
  }
  flow.y += options.after ?? 4;
}
