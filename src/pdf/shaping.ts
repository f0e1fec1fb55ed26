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

/** The part of the PDF writer's font that lays out text; its own typings leave it out. */
export interface TextLayout {
  /** One word with the space after it. */
  layoutRun(text: string, features?: unknown): Run;
  layout(text: string, features?: unknown, onlyWidth?: boolean): Run;
}

/** Latin letters, figures, punctuation, arrows and signs of mathematics: none of them combines with its neighbours. */
const SIMPLE = /^[\x20-\x7e\xa0-\xac\xae-\u017f\u2010-\u2027\u202f-\u205e\u2190-\u22ff]+$/;

/** Makes the font lay simple words out by pairs, and each word once, to the same result. */
export function layOutByPairs(font: TextLayout): void {
  const whole = font.layoutRun.bind(font);
  const byPairs = pairLayout(whole);
  font.layoutRun = (text, features) => (features === undefined && SIMPLE.test(text) ? byPairs(text) : whole(text, features));
  const words = new Map<string, Run>();
  const wordOf = (word: string): Run => {
    const known = words.get(word);
    if (known !== undefined) return known;
    const run = font.layoutRun(word);
    const laid = { glyphs: run.glyphs, positions: run.positions, advanceWidth: run.advanceWidth };
    words.set(word, laid);
    return laid;
  };
  font.layout = (text, features) => {
    if (features !== undefined) return font.layoutRun(text, features);
    const first = wordEnd(text, 0);
    if (first === text.length) return text === "" ? NOTHING : wordOf(text);
    const line = { glyphs: [] as unknown[], positions: [] as Position[], advanceWidth: 0 };
    for (let from = 0, to = first; from < text.length; from = to, to = wordEnd(text, from)) {
      const word = wordOf(text.slice(from, to));
      line.glyphs.push(...word.glyphs);
      line.positions.push(...word.positions);
      line.advanceWidth += word.advanceWidth;
    }
    return line;
  };
}

const NOTHING: Run = { glyphs: [], positions: [], advanceWidth: 0 };

/** Where the word that begins at `from` ends, with the space or tabulator after it. */
function wordEnd(text: string, from: number): number {
  for (let i = from; i < text.length; i++) if (text[i] === " " || text[i] === "\t") return i + 1;
  return text.length;
}

interface Letter {
  readonly glyph: unknown;
  readonly position: Position;
}

function pairLayout(whole: (text: string) => Run): (text: string) => Run {
  const letters = new Map<string, Letter | null>();

  /** The first letter of a pair, or a letter that ends the word; `null` where the pair becomes one sign. */
  function firstOf(pair: string): Letter | null {
    const known = letters.get(pair);
    if (known !== undefined) return known;
    const { glyphs, positions } = whole(pair);
    const [glyph] = glyphs;
    const [position] = positions;
    const made = glyphs.length !== pair.length || position === undefined ? null : { glyph, position };
    letters.set(pair, made);
    return made;
  }

  return (text) => {
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
