/**
 * The typefaces of the PDF: one open-licence family, embedded as subsets. Standard PDF fonts are never used, because a
 * viewer may replace them and PDF/A forbids it.
 */
import { createRequire } from "node:module";
import type { Doc } from "./document.ts";
import { layOutByPairs, type TextLayout } from "./shaping.ts";

const FACES = {
  sans: "DejaVuSansCondensed",
  bold: "DejaVuSansCondensed-Bold",
  slant: "DejaVuSansCondensed-Oblique",
  serif: "DejaVuSerifCondensed",
  serifItalic: "DejaVuSerifCondensed-Italic",
} as const;

export type Face = keyof typeof FACES;

/** What the font library of the PDF writer knows about a face; its own typings leave it out. */
interface OpenFont extends TextLayout {
  readonly font: { hasGlyphForCodePoint(codePoint: number): boolean };
}

/** Makes all faces known to the document. A face that is never used is not embedded. */
export function registerFaces(doc: Doc): void {
  const require = createRequire(import.meta.url);
  for (const [face, file] of Object.entries(FACES)) {
    doc.registerFont(face, require.resolve(`dejavu-fonts-ttf/ttf/${file}.ttf`));
  }
}

export interface Faces {
  /** Makes a face the one that text is set in. */
  readonly use: (face: Face) => void;
  /** Width of a text at one point of size. */
  readonly width: (face: Face, text: string) => number;
  /** Whether a face can show a code point. */
  readonly has: (face: Face, codePoint: number) => boolean;
}

/** The faces of a document, each opened when it is first asked for. */
export function openFaces(doc: Doc): Faces {
  const fonts = new Map<Face, OpenFont>();
  const open = (face: Face): OpenFont => {
    doc.font(face);
    const known = fonts.get(face);
    if (known !== undefined) return known;
    const opened = (doc as unknown as { readonly _font: OpenFont })._font;
    layOutByPairs(opened);
    fonts.set(face, opened);
    return opened;
  };
  return {
    use: open,
    width: (face, text) => open(face).layout(text).advanceWidth / 1000,
    has: (face, codePoint) => open(face).font.hasGlyphForCodePoint(codePoint),
  };
}
