/** Words put together from pairs are laid out as the font library lays out the whole word. */
import { createRequire } from "node:module";
import PDFDocument from "pdfkit";
import { describe, expect, it } from "vitest";
import { layOutByPairs, type TextLayout } from "../../src/pdf/shaping.ts";

const FILES = ["Sans", "Sans-Bold", "Sans-Oblique", "Serif", "Serif-Italic"].map((name) => {
  const [family, cut] = name.split("-");
  return `DejaVu${family}Condensed${cut === undefined ? "" : `-${cut}`}.ttf`;
});

interface Laid {
  readonly glyphs: readonly { readonly id: number }[];
  readonly positions: readonly { readonly xAdvance: number; readonly advanceWidth: number }[];
  readonly advanceWidth: number;
}

function openFont(file: string): TextLayout {
  const doc = new PDFDocument({ font: null as unknown as string });
  doc.font(createRequire(import.meta.url).resolve(`dejavu-fonts-ttf/ttf/${file}`));
  return (doc as unknown as { readonly _font: TextLayout })._font;
}

/** Glyphs, and how far each moves the pen. */
function laid(font: TextLayout, text: string): unknown {
  const { glyphs, positions, advanceWidth } = font.layoutRun(text) as unknown as Laid;
  return {
    glyphs: glyphs.map(({ id }) => id),
    moves: positions.map((position) => [position.xAdvance, position.advanceWidth].map((value) => value.toFixed(6))),
    width: advanceWidth.toFixed(6),
  };
}

/** Always the same row of words: figures, letters and signs in any order. */
function words(): readonly string[] {
  const signs = [..."ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789.,:;-+/()'\"%&?!_=", ..."ÄÖåéçøß½°×’“–−→∞≤√  "];
  let state = 7;
  const next = (below: number) => {
    state = (state * 1103515245 + 12345) % 2147483648;
    return Math.floor((state / 2147483648) * below);
  };
  const made = Array.from({ length: 1500 }, () => Array.from({ length: 2 + next(9) }, () => signs[next(signs.length)]).join(""));
  const real =
    "08:22:10:03, Take TAVERN AWAY, A021C014 T2.8 f/1.4 S46-117 0.0220 office fit flow Waffle — Yo. To 1:22 r.f. L’A Ty. P.A. 4:3";
  return [...made, ...real.split(" ").map((word) => `${word} `)];
}

describe("words laid out by pairs", () => {
  it.each(FILES)("have the glyphs and widths of the whole word: %s", (file) => {
    const whole = openFont(file);
    const paired = openFont(file);
    layOutByPairs(paired);
    const wrong = words().filter((word) => JSON.stringify(laid(whole, word)) !== JSON.stringify(laid(paired, word)));
    expect(wrong).toEqual([]);
  });

  it("are still given to the library where letters join or combine", () => {
    const whole = openFont("DejaVuSansCondensed.ttf");
    const paired = openFont("DejaVuSansCondensed.ttf");
    layOutByPairs(paired);
    for (const word of ["offi", "e\u0301", "\u05e9\u05dc\u05d5\u05dd", "\u0645\u0631\u062d\u0628\u0627"])
      expect(laid(paired, word)).toEqual(laid(whole, word));
  });
});
