/** Breaking text into lines. Spaces and the ends of path parts are the places to break; a word that fits nowhere is cut. */

const BREAK_AFTER = /[/\\_\-:.,;&=]/;
const JOINS = /\p{M}|\u200d/u;

/**
 * Lines of `text` whose measured width is at most `width`, in reading order; line ends in the text are kept. At least one line.
 * No-break spaces do not break.
 */
export function wrapText(text: string, width: number, measure: (text: string) => number): readonly string[] {
  const lines: string[] = [];
  for (const paragraph of text.split(/\r\n|\r|\n/)) lines.push(...wrapParagraph(paragraph, width, measure));
  return lines.length === 0 ? [""] : lines;
}

function wrapParagraph(text: string, width: number, measure: (text: string) => number): readonly string[] {
  if (measure(text) <= width) return [text];
  const lines: string[] = [];
  let line = "";
  // word by word: measuring every beginning of a paragraph would cost its square
  let used = 0;
  for (const word of text.split(/[ \t]+/)) {
    if (used + measure(word) <= width) {
      line = line === "" ? word : `${line} ${word}`;
      used += measure(`${word} `);
      continue;
    }
    if (line !== "") lines.push(line);
    const pieces = measure(word) <= width ? [word] : cutWord(word, width, measure);
    lines.push(...pieces.slice(0, -1));
    line = pieces.at(-1) ?? "";
    used = measure(`${line} `);
  }
  lines.push(line);
  return lines;
}

/** Cuts after a separator that leaves the line well filled if there is one, else between letters; marks stay with their letter. */
function cutWord(word: string, width: number, measure: (text: string) => number): readonly string[] {
  const pieces: string[] = [];
  let piece: string[] = [];
  let used = 0;
  for (const letter of letters(word)) {
    // Letter by letter: measuring every beginning of a long word would cost its square. The hundredth is for kerning.
    const wide = measure(letter) * 1.01;
    if (piece.length > 0 && used + wide > width) {
      const keep = breakPoint(piece);
      pieces.push(piece.slice(0, keep).join(""));
      piece = piece.slice(keep);
      used = piece.reduce((sum, kept) => sum + measure(kept) * 1.01, 0);
    }
    piece.push(letter);
    used += wide;
  }
  pieces.push(piece.join(""));
  return pieces;
}

function breakPoint(piece: readonly string[]): number {
  for (let i = piece.length - 1; i >= piece.length * 0.4; i--) if (BREAK_AFTER.test(piece[i] as string)) return i + 1;
  return piece.length;
}

function letters(word: string): readonly string[] {
  const result: string[] = [];
  for (const character of word) {
    const last = result.at(-1);
    if (last !== undefined && (JOINS.test(character) || last.endsWith("\u200d"))) result[result.length - 1] = last + character;
    else result.push(character);
  }
  return result;
}
