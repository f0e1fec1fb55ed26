/** Drawing and measuring text. Positions are points from the top left of the page; text stands on its baseline. */
import { type Doc, drawFragment } from "./document.ts";
import { type Face, openFaces } from "./fonts.ts";
import { PRINT } from "./palette.ts";
import { cleanText, MISSING_SIGN, type TextRun, textRuns } from "./runs.ts";
import { wrapText } from "./wrap.ts";

export interface TextStyle {
  readonly face: Face;
  /** Points. */
  readonly size: number;
  readonly color: string;
}

/** Runs from left to right; widths at one point of size. */
interface Line {
  readonly runs: readonly (TextRun & { readonly width: number })[];
  readonly width: number;
}

export type Anchor = "start" | "middle" | "end";

export interface Ink {
  readonly doc: Doc;
  /** Width in points. */
  width(text: string, style: TextStyle): number;
  /** Lines no wider than `width`; a word that is too long is cut between its letters. At least one line. */
  lines(text: string, style: TextStyle, width: number): readonly string[];
  /** The text, or as much of its beginning as one line of `width` holds, ended by a sign that it goes on. */
  fitted(text: string, style: TextStyle, width: number): string;
  /** Draws one line; returns its width. */
  text(text: string, x: number, baseline: number, style: TextStyle, anchor?: Anchor): number;
  line(x1: number, y1: number, x2: number, y2: number, color?: string, width?: number): void;
  box(x: number, y: number, width: number, height: number, paint: { readonly fill?: string; readonly stroke?: string }): void;
  /** Whether any character had to be shown as the missing sign. */
  readonly missing: () => boolean;
}

const GOES_ON = "\u2026";

/** Distance from one baseline to the next. */
export function lineHeight(style: TextStyle): number {
  return style.size * 1.3;
}

export function newInk(doc: Doc): Ink {
  const faces = openFaces(doc);
  const cache = new Map<Face, Map<string, Line>>();
  let missing = false;

  /** A line laid out in a face, for whatever size: lines come again and again while a page is measured. */
  function lineOf(text: string, face: Face): Line {
    let lines = cache.get(face);
    if (lines === undefined) {
      lines = new Map();
      cache.set(face, lines);
    }
    const known = lines.get(text);
    if (known !== undefined) return known;
    const clean = cleanText(text);
    const runs = textRuns(clean, face, faces.has).map((run) => ({ ...run, width: faces.width(run.face, run.text) }));
    if (!missing && !clean.includes(MISSING_SIGN)) missing = runs.some((run) => run.text.includes(MISSING_SIGN));
    const line = { runs, width: runs.reduce((sum, { width }) => sum + width, 0) };
    lines.set(text, line);
    return line;
  }

  const measure = (text: string, style: TextStyle): number => lineOf(text, style.face).width * style.size;

  return {
    doc,
    width: measure,
    lines: (text, style, width) => wrapText(text, width, (part) => measure(part, style)),
    fitted(text, style, width) {
      if (measure(text, style) <= width) return text;
      const letters = [...cleanText(text)];
      const shown = (count: number) => `${letters.slice(0, count).join("").trimEnd()}${GOES_ON}`;
      let fits = 0;
      let tooMany = letters.length;
      while (tooMany - fits > 1) {
        const middle = (fits + tooMany) >> 1;
        if (measure(shown(middle), style) <= width) fits = middle;
        else tooMany = middle;
      }
      return shown(fits);
    },
    text(text, x, baseline, style, anchor = "start") {
      const { runs } = lineOf(text, style.face);
      const width = measure(text, style);
      let at = anchor === "start" ? x : anchor === "end" ? x - width : x - width / 2;
      doc.fillColor(style.color);
      doc.fontSize(style.size);
      for (const run of runs) {
        const runWidth = run.width * style.size;
        faces.use(run.face);
        drawFragment(doc, run.text, at, baseline, runWidth);
        at += runWidth;
      }
      return width;
    },
    line(x1, y1, x2, y2, color = PRINT.rule, width = 0.5) {
      doc.lineWidth(width).moveTo(x1, y1).lineTo(x2, y2).stroke(color);
    },
    box(x, y, width, height, paint) {
      doc.rect(x, y, width, height);
      if (paint.fill !== undefined && paint.stroke !== undefined) doc.lineWidth(0.6).fillAndStroke(paint.fill, paint.stroke);
      else if (paint.fill !== undefined) doc.fill(paint.fill);
      else doc.lineWidth(0.6).stroke(paint.stroke ?? PRINT.ink);
    },
    missing: () => missing,
  };
}
