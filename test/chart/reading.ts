/** Reads drawings back: what tests ask of path data and of texts. */
import type { DrawItem, Drawing, Mark } from "../../src/chart/drawing.ts";
import { boxOf, overlaps, type TextItem } from "../../src/chart/labels.ts";

export interface SubPath {
  readonly points: readonly (readonly [number, number])[];
  readonly closed: boolean;
}

const FIGURES: Readonly<Record<string, number>> = { M: 2, l: 2, h: 1, v: 1, z: 0 };

/** Absolute points of path data. Throws at any command but `M l h v z` and at figures that do not fit them. */
export function readPath(d: string): readonly SubPath[] {
  const parts: { points: [number, number][]; closed: boolean }[] = [];
  let x = 0;
  let y = 0;
  for (const [, command = "", rest = ""] of d.matchAll(/([A-Za-z])([^A-Za-z]*)/g)) {
    const figures = (rest.match(/-?(\d+\.?\d*|\.\d+)/g) ?? []).map(Number);
    const size = FIGURES[command];
    if (size === undefined || (size === 0 ? figures.length > 0 : figures.length === 0 || figures.length % size !== 0)) {
      throw new Error(`unreadable ${command}${rest}`);
    }
    if (command === "z") {
      const last = parts.at(-1);
      if (last) last.closed = true;
      continue;
    }
    for (let i = 0; i < figures.length; i += size) {
      const a = figures[i] ?? 0;
      const b = figures[i + 1] ?? 0;
      if (command === "M") {
        [x, y] = [a, b];
        parts.push({ points: [], closed: false });
      } else if (command === "l") [x, y] = [tenth(x + a), tenth(y + b)];
      else if (command === "h") x = tenth(x + a);
      else y = tenth(y + a);
      parts.at(-1)?.points.push([x, y]);
    }
  }
  return parts;
}

/** Path data is on a grid of a tenth; adding tenths in binary is not. */
function tenth(value: number): number {
  return Math.round(value * 10) / 10;
}

export function pathsOf(drawing: Drawing, k: Mark): readonly SubPath[] {
  return drawing.items.flatMap((item) => (item.type === "path" && item.k === k ? readPath(item.d) : []));
}

export function textsOf(drawing: Drawing): readonly TextItem[] {
  return drawing.items.filter((item: DrawItem): item is TextItem => item.type === "text");
}

export function wordsOf(drawing: Drawing): readonly string[] {
  return textsOf(drawing).map((item) => item.text.replaceAll(/[\u00a0\u202f]/g, " "));
}

/** Texts that reach outside the drawing. */
export function clipped(drawing: Drawing): readonly string[] {
  return textsOf(drawing)
    .filter((item) => {
      const box = boxOf(item);
      return box.left < 0 || box.top < 0 || box.right > drawing.width || box.bottom > drawing.height;
    })
    .map((item) => item.text);
}

/** Pairs of texts that can lie on each other. */
export function overlapping(drawing: Drawing): readonly string[] {
  const texts = textsOf(drawing);
  return texts.flatMap((a, i) =>
    texts
      .slice(i + 1)
      .filter((b) => overlaps(boxOf(a), boxOf(b)))
      .map((b) => `${a.text} / ${b.text}`),
  );
}
