/** Distortion from the middle of the picture to its corner, a small plot a lens on one scale. */
import { fixed, signed } from "../../format/number.ts";
import { signedPercent } from "../../format/percent.ts";
import type { RadialCurve, RadialCurves } from "../../summary/lens-curves.ts";
import type { DrawItem, Drawing, Mark } from "../drawing.ts";
import { text } from "../labels.ts";
import { polyline, segment } from "../path.ts";
import { toneWidth } from "../text-width.ts";
import { roundTicks, spread, tickDigits } from "../value-axis.ts";

const CELL = { width: 205, gap: 0, left: 34, right: 46, head: 24, plot: 96, foot: 22 } as const;
const MARKS: readonly Mark[] = ["k-focal", "k-line-dash", "k-line-dot"];

/** As many columns as the width holds. All plots have one scale of percent; `null` without a lens. */
export function distortionMultiples(lenses: readonly RadialCurves[], width: number): Drawing | null {
  if (lenses.length === 0) return null;
  const columns = Math.max(1, Math.floor(width / CELL.width));
  const values = lenses.flatMap((l) => l.curves.flatMap((c) => c.points.map((p) => p.percent)));
  const ticks = roundTicks(Math.min(0, ...values), Math.max(0, ...values), 4);
  const rowHeight = CELL.head + CELL.plot + CELL.foot;
  const items = lenses.flatMap((lens, i) =>
    lensPlot(lens, { left: (i % columns) * CELL.width, top: Math.floor(i / columns) * rowHeight }, ticks),
  );
  const corner = lenses.flatMap((l) => l.curves.map((c) => ({ lens: l.lens, percent: cornerOf(c) })));
  const least = corner.reduce((a, b) => (Math.abs(b.percent) < Math.abs(a.percent) ? b : a));
  const most = corner.reduce((a, b) => (Math.abs(b.percent) > Math.abs(a.percent) ? b : a));
  return {
    width: Math.min(columns, lenses.length) * CELL.width,
    height: Math.ceil(lenses.length / columns) * rowHeight,
    title: `Distortion at the corner from ${signedPercent(least.percent)} (${least.lens}) to ${signedPercent(most.percent)} (${most.lens})`,
    description:
      "A plot a lens, percent of the ideal radius from the middle to the corner, all on one scale; negative is barrel. T mid-top, S mid-side, C corner.",
    items,
  };
}

function cornerOf(curve: RadialCurve): number {
  return curve.points.at(-1)?.percent ?? 0;
}

function lensPlot(
  lens: RadialCurves,
  at: { readonly left: number; readonly top: number },
  ticks: readonly number[],
): readonly DrawItem[] {
  const left = at.left + CELL.left;
  const right = at.left + CELL.width - CELL.right;
  const top = at.top + CELL.head;
  const bottom = top + CELL.plot;
  const [low = 0, high = 1] = [ticks[0], ticks.at(-1)];
  const x = (share: number): number => left + share * (right - left);
  const y = (percent: number): number => top + ((high - percent) / (high - low)) * CELL.plot;
  const digits = tickDigits(ticks);
  const half = Math.hypot(lens.area.widthMm, lens.area.heightMm);
  const places = [
    ["T", lens.area.heightMm / half],
    ["S", lens.area.widthMm / half],
    ["C", 1],
  ] as const;
  const corners = [...new Set(lens.curves.map((c) => signed(cornerOf(c), 1)))].join(" / ");
  const zoom = new Set(lens.curves.map((c) => c.focalMm)).size > 1;
  const head = text(at.left, at.top + 14, lens.lens, "start", "t-b");
  const items: DrawItem[] = [
    head,
    text(at.left + Math.ceil(toneWidth(lens.lens, "t-b")) + 6, at.top + 14, `${corners} %`, "start", "t-fine"),
    { type: "rect", k: "k-frame", x: left, y: top, width: right - left, height: CELL.plot },
    {
      type: "path",
      k: "k-grid",
      d:
        ticks.map((t) => segment(left, y(t), right, y(t))).join("") +
        places.map(([, share]) => segment(x(share), top, x(share), bottom)).join(""),
    },
    { type: "path", k: "k-infinity", d: segment(left, y(0), right, y(0)) },
    ...ticks.map((t) => text(left - 6, y(t) + 4, fixed(t, digits), "end", "t-fine")),
    ...places.map(([name, share]) => text(x(share), bottom + 14, name, "middle", "t-fine")),
  ];
  lens.curves.forEach((curve, i) => {
    const d = polyline(
      curve.points.map((p) => x(p.share)),
      curve.points.map((p) => y(p.percent)),
    );
    items.push({ type: "path", k: MARKS[i % 3] ?? "k-focal", d });
  });
  const ends = spread(
    lens.curves.map((c) => y(cornerOf(c)) + 4),
    13,
    top + 6,
    bottom + 2,
  );
  lens.curves.forEach((curve, i) => {
    const words = zoom ? fixed(curve.focalMm, 0) : curve.focusDioptres <= 1e-9 ? "\u221e" : "near";
    items.push(text(right + 5, ends[i] ?? 0, words, "start", "t-fine"));
  });
  return items;
}
