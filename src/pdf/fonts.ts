/**
 * The typefaces of the PDF: one open-licence family, embedded as subsets. Standard PDF fonts are never used, because a
 * viewer may replace them and PDF/A forbids it.
 */
import { createRequire } from "node:module";
import type { Doc } from "./document.ts";

const FACES = {
  sans: "DejaVuSansCondensed",
  bold: "DejaVuSansCondensed-Bold",
  slant: "DejaVuSansCondensed-Oblique",
  serif: "DejaVuSerifCondensed",
  serifItalic: "DejaVuSerifCondensed-Italic",
} as const;

export type Face = keyof typeof FACES;

/** What the font library of the PDF writer knows about a face; its own typings leave it out. */
interface OpenFont {
  readonly font: { hasGlyphForCodePoint(codePoint: number): boolean };
}

/** Makes all faces known to the document. A face that is never used is not embedded. */
export function registerFaces(doc: Doc): void {
  const require = createRequire(import.meta.url);
  for (const [face, file] of Object.entries(FACES)) {
    doc.registerFont(face, require.resolve(`dejavu-fonts-ttf/ttf/${file}.ttf`));
  }
}

/** Says for a face whether it can show a code point. */
export function glyphTest(doc: Doc): (face: Face, codePoint: number) => boolean {
  const fonts = new Map<Face, OpenFont>();
  return (face, codePoint) => {
    let open = fonts.get(face);
    if (open === undefined) {
      doc.font(face);
      open = (doc as unknown as { readonly _font: OpenFont })._font;
      fonts.set(face, open);
    }
    return open.font.hasGlyphForCodePoint(codePoint);
  };
}
