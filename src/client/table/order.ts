/** The order of texts as a reader of tables expects it: numbers by their value, letters without regard to case. */

type Piece = number | string;

/** What a cell is sorted by; `null` for a cell that has nothing. */
export type SortKey = readonly Piece[] | null;

const PIECES = /\d+(?:\.\d+)?|\u221e|[\u2212+-]|[^\d\u221e\u2212+-]+/g;

/**
 * The pieces of a text: numbers and what lies between them. A sign belongs to the number after it unless a number stands
 * before it (`24-3`); infinity is a number; thousands may stand apart by a thin or no-break space.
 *
 * @example sortKey("T2.8 to T4") // ["t", 2.8, " to t", 4]
 */
export function sortKey(text: string): SortKey {
  const plain = text
    .replace(/(?<=\d)[\u2009\u202f\u00a0](?=\d{3}(?!\d))/g, "")
    .replace(/\s+/g, " ")
    .trim()
    .toLowerCase();
  if (plain === "") return null;
  const pieces: Piece[] = [];
  let sign = "";
  for (const [piece] of plain.matchAll(PIECES)) {
    const number = piece === "\u221e" ? Number.POSITIVE_INFINITY : Number.parseFloat(piece);
    if (/^[\u2212+-]$/.test(piece) && typeof pieces[pieces.length - 1] !== "number") sign += piece;
    else if (Number.isNaN(number)) {
      pieces.push(sign + piece);
      sign = "";
    } else {
      pieces.push(/[\u2212-]$/.test(sign) ? -number : number);
      sign = "";
    }
  }
  return sign === "" ? pieces : [...pieces, sign];
}

/** Below, equal or above 0 as with `Array.sort`, for two keys that have something. */
function compareKeys(a: readonly Piece[], b: readonly Piece[]): number {
  for (let i = 0; i < Math.min(a.length, b.length); i++) {
    const order = comparePieces(a[i] as Piece, b[i] as Piece);
    if (order !== 0) return order;
  }
  return a.length - b.length;
}

/** A number stands before a word. */
function comparePieces(a: Piece, b: Piece): number {
  if (typeof a === "number" && typeof b === "number") return a === b ? 0 : a < b ? -1 : 1;
  if (typeof a === "number" || typeof b === "number") return typeof a === "number" ? -1 : 1;
  return a === b ? 0 : a < b ? -1 : 1;
}

export type Direction = "ascending" | "descending";

/** Items in order of their keys: stable in both directions, those without a key last in both. */
export function sorted<T>(items: readonly T[], keyOf: (item: T) => SortKey, direction: Direction): readonly T[] {
  const sign = direction === "ascending" ? 1 : -1;
  return items
    .map((item, place) => ({ item, place, key: keyOf(item) }))
    .sort((a, b) => {
      if (a.key === null || b.key === null) return Number(a.key === null) - Number(b.key === null) || a.place - b.place;
      return sign * compareKeys(a.key, b.key) || a.place - b.place;
    })
    .map(({ item }) => item);
}
