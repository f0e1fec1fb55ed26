/**
 * Laying words out letter by letter. In the typefaces of the report a Latin letter or a figure depends on nothing but the
 * next one (kerning), so a word is put together from pairs that the font library laid out once. Where a pair becomes one
 * sign (a ligature), and for all other letters, the library lays the word out itself.
 */

/** How glyphs move the pen, in thousandths of the size. Shared by all words that hold the pair: never changed. */
interface Position {
  readonly xAdvance: number;
}

interface Run {
  readonly glyphs: readonly unknown[];
  readonly positions: readonly Position[];
  readonly advanceWidth: number;
}

/** The part of the PDF writer's font that lays out words; its own typings leave it out. */
export interface WordLayout {
  layoutRun(text: string, features?: unknown): Run;
}

/** Latin letters, figures, punctuation, arrows and signs of mathematics: none of them combines with its neighbours. */
const SIMPLE = /^[\x20-\x7e\xa0-\xac\xae-\u017f\u2010-\u2027\u202f-\u205e\u2190-\u22ff]+$/;

/** Makes the font lay simple words out by pairs, to the same result. */
export function layOutByPairs(font: WordLayout): void {
  const whole = font.layoutRun.bind(font);
  const firsts = new Map<string, { readonly glyph: unknown; readonly position: Position } | null>();

  /** The first letter of a pair, or a letter that ends the word; `null` where the pair becomes one sign. */
  function firstOf(pair: string): { readonly glyph: unknown; readonly position: Position } | null {
    const known = firsts.get(pair);
    if (known !== undefined) return known;
    const { glyphs, positions } = whole(pair);
    const [glyph] = glyphs;
    const [position] = positions;
    const made = glyphs.length !== pair.length || position === undefined ? null : { glyph, position };
    firsts.set(pair, made);
    return made;
  }

  font.layoutRun = (text, features) => {
    if (features !== undefined || !SIMPLE.test(text)) return whole(text, features);
    const glyphs: unknown[] = [];
    const positions: Position[] = [];
    let advanceWidth = 0;
    for (let i = 0; i < text.length; i++) {
      const first = firstOf(text.slice(i, i + 2));
      if (first === null) return whole(text);
      glyphs.push(first.glyph);
      positions.push(first.position);
      advanceWidth += first.position.xAdvance;
    }
    return { glyphs, positions, advanceWidth };
  };
}
