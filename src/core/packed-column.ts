/**
 * A column of whole numbers as a short text: what differs from the number before (or from a straight line through the two
 * before), with runs. Held values and slow changes, which a lens log is made of, take next to nothing.
 */

export interface PackedColumn {
  /** Values are the packed whole numbers divided by this. */
  readonly by: number;
  /** What each number is told from: 1, the number before; 2, the straight line through the two before. */
  readonly order: 1 | 2;
  readonly text: string;
}

const DIGITS = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";
/** A digit holds five bits; from here on another digit follows. */
const MORE = 32;

/** Tokens: a count follows the first two, any other is the difference, sign last, plus `FIRST_DIFFERENCE`. */
const AS_FORETOLD = 0;
const NOTHING = 1;
const FIRST_DIFFERENCE = 2;

/**
 * Packs values to the nearest 1 / `by`; NaN stays NaN. Of the two orders the shorter text is taken.
 *
 * @example Array.from(unpackColumn(packColumn([2.4, 2.4, 2.5], 10), 3)) // [2.4, 2.4, 2.5]
 */
export function packColumn(values: ArrayLike<number>, by: number): PackedColumn {
  const whole = Array.from(values, (value) => Math.round(value * by));
  const first = packed(whole, 1);
  const second = packed(whole, 2);
  return second.length < first.length ? { by, order: 2, text: second } : { by, order: 1, text: first };
}

/** The first `count` values; NaN where the text ends early or is not one of ours. */
export function unpackColumn({ by, order, text }: PackedColumn, count: number): Float64Array {
  const values = new Float64Array(count).fill(Number.NaN);
  let at = 0;
  const next = (): number => {
    let value = 0;
    for (let factor = 1; at < text.length; factor *= MORE) {
      const digit = DIGITS.indexOf(text.charAt(at++));
      value += (digit % MORE) * factor;
      if (digit < MORE) return value;
    }
    return Number.NaN;
  };
  let before = 0;
  let last = 0;
  for (let i = 0; i < count && at < text.length; ) {
    const token = next();
    const run = token === AS_FORETOLD || token === NOTHING ? next() : 1;
    if (!(run > 0)) break;
    for (const end = Math.min(count, i + run); i < end; i++) {
      if (token === NOTHING) continue;
      const value = foretold(last, before, order) + difference(token);
      values[i] = value / by;
      before = last;
      last = value;
    }
  }
  return values;
}

function packed(whole: readonly number[], order: 1 | 2): string {
  let text = "";
  let before = 0;
  let last = 0;
  for (let i = 0; i < whole.length; ) {
    const start = i;
    if (Number.isNaN(whole[i])) {
      while (i < whole.length && Number.isNaN(whole[i])) i++;
      text += written(NOTHING) + written(i - start);
      continue;
    }
    while (i < whole.length && whole[i] === foretold(last, before, order)) {
      before = last;
      last = whole[i] ?? 0;
      i++;
    }
    if (i > start) {
      text += written(AS_FORETOLD) + written(i - start);
      continue;
    }
    const value = whole[i] ?? 0;
    const off = value - foretold(last, before, order);
    text += written(FIRST_DIFFERENCE + 2 * Math.abs(off) + (off < 0 ? 1 : 0));
    before = last;
    last = value;
    i++;
  }
  return text;
}

function foretold(last: number, before: number, order: 1 | 2): number {
  return order === 1 ? last : 2 * last - before;
}

function difference(token: number): number {
  if (token === AS_FORETOLD) return 0;
  const magnitude = Math.floor((token - FIRST_DIFFERENCE) / 2);
  return (token - FIRST_DIFFERENCE) % 2 === 0 ? magnitude : -magnitude;
}

function written(value: number): string {
  let text = "";
  let rest = value;
  for (; rest >= MORE; rest = Math.floor(rest / MORE)) text += DIGITS.charAt(MORE + (rest % MORE));
  return text + DIGITS.charAt(rest);
}
