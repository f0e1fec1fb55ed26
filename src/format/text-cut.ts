/** Where a text may be cut: at the end of a word, else between two characters as readers count them (UAX #29, grapheme clusters). */

/** Belongs to the character before it: marks, skin tones, joiners, tags of flags, Thai and Lao am, vowels and finals of Hangul. */
const GOES_ON = /^(?:\u200c|\u200d|[\p{M}\p{Emoji_Modifier}\u0e33\u0eb3\u1160-\u11ff\ud7b0-\ud7fb\u{e0020}-\u{e007f}])$/u;
/** Belongs to the character after it: a joiner, the viramas that make conjuncts, signs written before figures. */
const LEADS_ON = /^[\u200d\u094d\u09cd\u0acd\u0b4d\u0c4d\u0d4d\u0600-\u0605\u06dd\u070f\u08e2]$/u;
const REGIONAL = /^[\u{1f1e6}-\u{1f1ff}]$/u;
const HANGUL_INITIAL = /^[\u1100-\u115f\ua960-\ua97c]$/u;
const HANGUL_NEXT = /^[\u1100-\u115f\ua960-\ua97c\uac00-\ud7a3]$/u;

/**
 * The place in UTF-16 units at which to cut so that at most `most` code points come before it: at the space after the last whole word,
 * or, where that would lose half of them, at the last boundary between characters. The length of a text that fits.
 */
export function cutPlace(text: string, most: number): number {
  const points = [...text];
  if (points.length <= most) return text.length;
  for (let at = most; at > most / 2; at--)
    if (/^[ \t\r\n]$/.test(points[at] ?? "") && isBoundary(points, at) && isBoundary(points, at + 1)) return unitsOf(points, at);
  for (let at = most; at > 0; at--) if (isBoundary(points, at)) return unitsOf(points, at);
  return unitsOf(points, most);
}

function unitsOf(points: readonly string[], count: number): number {
  return points.slice(0, count).reduce((sum, point) => sum + point.length, 0);
}

function isBoundary(points: readonly string[], at: number): boolean {
  const before = points[at - 1] ?? "";
  const after = points[at] ?? "";
  if (GOES_ON.test(after) || LEADS_ON.test(before)) return false;
  if (before === "\r" && after === "\n") return false;
  if (HANGUL_INITIAL.test(before) && HANGUL_NEXT.test(after)) return false;
  if (!REGIONAL.test(before) || !REGIONAL.test(after)) return true;
  let flags = 0;
  while (REGIONAL.test(points[at - 1 - flags] ?? "")) flags++;
  return flags % 2 === 0;
}
