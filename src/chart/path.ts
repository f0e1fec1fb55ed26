/**
 * Path data on a grid of a tenth of a pixel. Points are rounded first and their differences written, so that nothing
 * drifts along a line, and every figure has one decimal at most.
 */

/** A number of tenths as short text: 127 is "12.7", -5 is "-.5". */
function tenths(value: number): string {
  const whole = Math.trunc(Math.abs(value) / 10);
  const tenth = Math.abs(value) % 10;
  const sign = value < 0 ? "-" : "";
  if (tenth === 0) return value === 0 ? "0" : `${sign}${whole}`;
  return `${sign}${whole === 0 ? "" : whole}.${tenth}`;
}

function grid(value: number): number {
  // + 0 turns -0 into 0.
  return Math.round(value * 10) + 0;
}

/** A coordinate as text: rounded to a tenth. */
export function coordinate(value: number): string {
  return tenths(grid(value));
}

function pair(a: string, b: string): string {
  if (b.startsWith("-")) return a + b;
  return b.startsWith(".") && a.includes(".") ? a + b : `${a} ${b}`;
}

/**
 * One continuous line through points (`xs` and `ys` alike long, at least one point), closed on request. A single point
 * gives an empty move, which draws nothing.
 */
export function polyline(xs: ArrayLike<number>, ys: ArrayLike<number>, closed = false): string {
  let x = grid(xs[0] ?? 0);
  let y = grid(ys[0] ?? 0);
  let d = `M${pair(tenths(x), tenths(y))}`;
  let command = "";
  let last = "";
  const write = (letter: string, figures: string) => {
    if (letter !== command) {
      d += letter + figures;
    } else {
      d += figures.startsWith("-") || (figures.startsWith(".") && last.includes(".")) ? figures : ` ${figures}`;
    }
    command = letter;
    last = figures.slice(Math.max(figures.lastIndexOf(" "), figures.lastIndexOf("-")) + 1);
  };
  for (let i = 1; i < xs.length; i++) {
    const dx = grid(xs[i] ?? 0) - x;
    const dy = grid(ys[i] ?? 0) - y;
    if (dx === 0 && dy === 0) continue;
    x += dx;
    y += dy;
    if (dy === 0) write("h", tenths(dx));
    else if (dx === 0) write("v", tenths(dy));
    else write("l", pair(tenths(dx), tenths(dy)));
  }
  return closed ? `${d}z` : d;
}

/** One straight line. */
export function segment(x1: number, y1: number, x2: number, y2: number): string {
  return polyline([x1, x2], [y1, y2]);
}

/** A filled box; a width or height that rounds to nothing still shows as a tenth. */
export function bar(x: number, y: number, width: number, height: number): string {
  const left = grid(x);
  const top = grid(y);
  const w = Math.max(1, grid(x + width) - left);
  const h = Math.max(1, grid(y + height) - top);
  return `M${pair(tenths(left), tenths(top))}h${tenths(w)}v${tenths(h)}h${tenths(-w)}z`;
}
