/** The eight main figures of a take in a row, each over the word that says where it comes from. */
import type { TakeSummary } from "../../summary/types.ts";
import type { Element } from "../document.ts";
import { lineHeight, type TextStyle } from "../ink.ts";
import { type Report, TYPE } from "../report.ts";
import { element } from "../tags.ts";
import { mainFigures } from "../take-words.ts";

/** Shares of the width: timecodes, length, clip, lens, focal length, stop, focus. */
const WEIGHTS = [59, 60, 58, 67, 80, 60, 58, 86] as const;
/** More lines than this hold nothing that a reader could use in so narrow a column. */
const MOST_LINES = 12;

export interface Strip {
  readonly cells: readonly {
    readonly x: number;
    readonly lines: readonly { readonly text: string; readonly style: TextStyle }[];
  }[];
  /** Points, with the space below. */
  readonly height: number;
}

export function layStrip(report: Report, t: TakeSummary): Strip {
  const { ink, flow, summary } = report;
  const unit = flow.sheet.width / WEIGHTS.reduce((sum, weight) => sum + weight, 0);
  let x = flow.sheet.left;
  const cells = mainFigures(t, summary.show.distances).map((figure, i) => {
    const width = (WEIGHTS[i] ?? 0) * unit;
    const style = figure.source === null ? TYPE.source : TYPE.strong;
    const lines = [
      { text: figure.term, style: TYPE.label },
      ...ink.lines(figure.text, style, width - 6).map((text) => ({ text, style })),
      ...(figure.source === null ? [] : ink.lines(figure.source, TYPE.source, width - 6)).map((text) => ({
        text,
        style: TYPE.source,
      })),
    ].slice(0, MOST_LINES);
    const cell = { x, lines };
    x += width;
    return cell;
  });
  const longest = Math.max(...cells.map((cell) => cell.lines.length));
  return { cells, height: longest * lineHeight(TYPE.table) + 4 };
}

export function drawStrip(report: Report, parent: Element, strip: Strip): void {
  const { doc, ink, flow } = report;
  const top = flow.y;
  for (const { x, lines } of strip.cells) {
    element(doc, parent, "P", {}, () => {
      lines.forEach((line, i) => {
        ink.text(`${line.text} `, x, top + 8 + i * lineHeight(TYPE.table), line.style);
      });
    });
  }
  flow.y = top + strip.height;
}
