/**
 * "Did you mean": the known names that are nearest to what was written. A change of case or of `_`, `-`, space and `.`
 * costs little; one digit for another costs twice a letter, because 35 and 50 are different lenses.
 */
const FULL = 10;
/** One digit for another: hardly ever a slip of the finger. */
const DIGIT = 20;
const LITTLE = 1;
const FARTHEST = Number.POSITIVE_INFINITY;

/** Known names within 30 % of the written word's length, nearest first; at most three, ties in the order given. */
export function nearestNames(written: string, known: Iterable<string>): string[] {
  const limit = Math.max(FULL, 0.3 * FULL * written.length);
  return [...known]
    .map((name, order) => ({ name, order, cost: editCost(written, name) }))
    .filter((candidate) => candidate.cost <= limit && candidate.cost < FULL * Math.max(1, candidate.name.length))
    .sort((a, b) => a.cost - b.cost || a.order - b.order)
    .slice(0, 3)
    .map((candidate) => candidate.name);
}

/** A clause for a hint, such as ` Did you mean "focus_m"?`, or the empty text. */
export function didYouMean(written: string, known: Iterable<string>): string {
  const [best] = nearestNames(written, known);
  return best === undefined ? "" : ` Did you mean "${best}"?`;
}

/** Weighted edit distance; a plain edit costs 10, and so does a swap of two neighbouring letters. */
export function editCost(a: string, b: string): number {
  let previous = [0];
  let beforeThat: readonly number[] = [];
  let last = "";
  for (const ch of b) previous.push((previous.at(-1) as number) + skipCost(ch));
  for (const ca of a) {
    const row = [(previous[0] as number) + skipCost(ca)];
    let j = 1;
    let left = "";
    for (const cb of b) {
      const swap =
        ca === cb
          ? 0
          : ca.toLowerCase() === cb.toLowerCase() || (isFiller(ca) && isFiller(cb))
            ? LITTLE
            : isDigit(ca) && isDigit(cb)
              ? DIGIT
              : FULL;
      const turned =
        ca !== cb && ca === left && last === cb && !isDigit(ca) && !isDigit(cb) ? (beforeThat[j - 2] as number) + FULL : FARTHEST;
      left = cb;
      row.push(
        Math.min(
          turned,
          (previous[j] as number) + skipCost(ca),
          (row[j - 1] as number) + skipCost(cb),
          (previous[j - 1] as number) + swap,
        ),
      );
      j++;
    }
    beforeThat = previous;
    previous = row;
    last = ca;
  }
  return previous.at(-1) as number;
}

function isFiller(ch: string): boolean {
  return ch === "_" || ch === "-" || ch === " " || ch === ".";
}

function isDigit(ch: string): boolean {
  return ch >= "0" && ch <= "9";
}

function skipCost(ch: string): number {
  return isFiller(ch) ? LITTLE : FULL;
}
