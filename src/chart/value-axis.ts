/** A plain axis of values: round ticks over a range, and labels at line ends that keep apart. */

/** Round numbers from below `low` to above `high`, `most` steps or fewer; 0 is always one of them when it lies between. */
export function roundTicks(low: number, high: number, most: number): readonly number[] {
  const span = Math.max(high - low, 1e-9);
  const power = 10 ** Math.floor(Math.log10(span / most));
  const step =
    [1, 2, 5, 10].map((n) => n * power).find((s) => Math.ceil(high / s - 1e-9) - Math.floor(low / s + 1e-9) <= most) ?? 20 * power;
  const from = Math.floor(low / step + 1e-9);
  const to = Math.max(Math.ceil(high / step - 1e-9), from + 1);
  return Array.from({ length: to - from + 1 }, (_, i) => Number(((from + i) * step).toPrecision(12)));
}

/** Decimals that tell neighbouring ticks apart. */
export function tickDigits(ticks: readonly number[]): number {
  const step = Math.abs((ticks[1] ?? 1) - (ticks[0] ?? 0));
  return Math.min(4, Math.max(0, Math.ceil(-Math.log10(step) - 1e-9)));
}

/** The y of labels moved so that none stands closer than `gap` to another, in the order of `ys`; the order down the page is kept. */
export function spread(ys: readonly number[], gap: number, top: number, bottom: number): readonly number[] {
  const order = ys.map((_, i) => i).sort((a, b) => (ys[a] ?? 0) - (ys[b] ?? 0) || a - b);
  const placed = [...ys];
  let free = top;
  for (const i of order) {
    placed[i] = Math.max(placed[i] ?? 0, free);
    free = (placed[i] ?? 0) + gap;
  }
  let limit = bottom;
  for (const i of [...order].reverse()) {
    placed[i] = Math.min(placed[i] ?? 0, limit);
    limit = (placed[i] ?? 0) - gap;
  }
  return placed;
}
