/** What a lens does to the picture: a square grid as it draws it, and rings of equal shading, over the frame. */
import { fixed } from "../../format/number.ts";
import { percent } from "../../format/percent.ts";
import { stops } from "../../format/stop.ts";
import type { PointMm, Side } from "../../optics/distortion/map.ts";
import { distortionPercent } from "../../optics/distortion/percent.ts";
import { shadingFactor, stopsFromFactor } from "../../optics/shading.ts";
import { lookPlaces } from "../../still/look-places.ts";
import type { LookOnArea } from "../../still/middle-look.ts";
import type { DrawItem, Drawing } from "../drawing.ts";
import { labelBoard, type TextItem, text } from "../labels.ts";
import { polyline, segment } from "../path.ts";
import { visibleRuns } from "../ribbon/visible-runs.ts";
import { type LookPlane, lookPlane, mapped, outline } from "./look-plane.ts";
import { shadingRings } from "./shading-rings.ts";

/** Squares of the grid across the frame. */
const SQUARES = 10;
const LINE_STEPS = 16;
const RING_STEPS = 48;
const MARK_RADIUS = 9;
/** Where a ring's figure may stand, degrees clockwise from the right: toward the lower left first. */
const LABEL_ANGLES = [142, 150, 134, 158, 126, 38, 46, 30, 218, 322, 180, 0, 90, 270];

export interface LensLookOptions {
  readonly width: number;
  /** `recorded`: as the lens draws it. `ideal`: with distortion taken off. */
  readonly side: Side;
}

/**
 * The frame with its grid, rings and places. As recorded: the bent grid in ink, the true one in white dots. With distortion off:
 * the grid is straight, the outline shows how far the picture spreads, and the recorded frame is dotted. A picture may fill the
 * slots; rings carry their stops.
 */
export function lensLookDrawing(look: LookOnArea, options: LensLookOptions): Drawing {
  const plane = lookPlane(look, options.side, options.width);
  const edge = outline(plane) ?? [];
  const rings = ringItems(plane);
  return {
    width: plane.width,
    height: plane.height,
    title: titleOf(look, options.side),
    description: descriptionOf(look, options.side),
    items: [
      { type: "path", k: "k-plate", d: pathOf(plane, edge, true) },
      ...pictureItems(plane),
      ...(look.distortion === null ? [] : gridItems(plane)),
      ...rings.lines,
      ...(options.side === "ideal" ? [frameItem(plane)] : []),
      { type: "path", k: "k-plate-edge", d: pathOf(plane, edge, true) },
      ...rings.labels,
      ...markItems(plane),
    ],
  };
}

function pathOf(plane: LookPlane, points: readonly PointMm[], closed = false): string {
  return polyline(
    points.map((p) => plane.x(p.xMm)),
    points.map((p) => plane.y(p.yMm)),
    closed,
  );
}

function frameItem(plane: LookPlane): DrawItem {
  const { widthMm: w, heightMm: h } = plane.look;
  const xs = [-w / 2, w / 2, w / 2, -w / 2].map(plane.x);
  return { type: "path", k: "k-plate-frame", d: polyline(xs, [-h / 2, -h / 2, h / 2, h / 2].map(plane.y), true) };
}

function pictureItems(plane: LookPlane): DrawItem[] {
  const { widthMm, heightMm, idealBox } = plane.look;
  const frame = { leftMm: -widthMm / 2, topMm: -heightMm / 2, rightMm: widthMm / 2, bottomMm: heightMm / 2 };
  const box = plane.side === "ideal" ? idealBox : frame;
  if (box === null) return [];
  const x = plane.x(box.leftMm);
  const y = plane.y(box.topMm);
  const size = { width: plane.x(box.rightMm) - x, height: plane.y(box.bottomMm) - y };
  return (["shaded", "unshaded"] as const).map((slot) => ({ type: "picture", slot, x, y, ...size }));
}

/** Lines of a grid that is square in the picture as it is seen, counted from the middle of the frame. */
function gridItems(plane: LookPlane): DrawItem[] {
  const { look, side } = plane;
  const cellX = look.widthMm / SQUARES;
  const cellY = cellX * look.squeeze;
  const box = look.idealBox;
  const reachX = Math.max(look.widthMm / 2, -(box?.leftMm ?? 0), box?.rightMm ?? 0);
  const reachY = Math.max(look.heightMm / 2, -(box?.topMm ?? 0), box?.bottomMm ?? 0);
  const lines = [
    ...places(reachX, cellX).map((xMm) => (share: number) => ({ xMm, yMm: (2 * share - 1) * reachY })),
    ...places(reachY, cellY).map((yMm) => (share: number) => ({ xMm: (2 * share - 1) * reachX, yMm })),
  ];
  const drawn = lines.flatMap((line) =>
    visibleRuns((share) => {
      const ideal = line(share);
      const recorded = mapped(look, "recorded", ideal);
      return recorded === null || !plane.onFrame(recorded) ? null : side === "recorded" ? recorded : ideal;
    }, LINE_STEPS),
  );
  const d = drawn.map((run) => pathOf(plane, side === "ideal" ? [run[0], run[run.length - 1]].filter(isPoint) : run)).join("");
  const items: DrawItem[] = [
    { type: "path", k: "k-plate-under", d },
    { type: "path", k: "k-plate-grid", d },
  ];
  return side === "ideal" ? items : [...items, trueGrid(plane, cellX, cellY)];
}

function isPoint(point: PointMm | undefined): point is PointMm {
  return point !== undefined;
}

function trueGrid(plane: LookPlane, cellX: number, cellY: number): DrawItem {
  const { widthMm: w, heightMm: h } = plane.look;
  const upright = places(w / 2, cellX).map((x) => segment(plane.x(x), plane.y(-h / 2), plane.x(x), plane.y(h / 2)));
  const level = places(h / 2, cellY).map((y) => segment(plane.x(-w / 2), plane.y(y), plane.x(w / 2), plane.y(y)));
  return { type: "path", k: "k-plate-true", d: [...upright, ...level].join("") };
}

/** Multiples of a step inside a reach, both ends left out: they are the frame's edge. */
function places(reach: number, step: number): readonly number[] {
  const most = Math.ceil(reach / step - 1e-9) - 1;
  return Array.from({ length: 2 * most + 1 }, (_, i) => (i - most) * step);
}

function ringItems(plane: LookPlane): { readonly lines: DrawItem[]; readonly labels: readonly TextItem[] } {
  const { shading, widthMm, heightMm } = plane.look;
  if (shading === null) return { lines: [], labels: [] };
  const { centreXMm, centreYMm, squeeze } = shading;
  const radius = Math.hypot((widthMm / 2 + Math.abs(centreXMm)) * squeeze, heightMm / 2 + Math.abs(centreYMm));
  const board = labelBoard({
    left: plane.x(-widthMm / 2),
    top: plane.y(-heightMm / 2),
    right: plane.x(widthMm / 2),
    bottom: plane.y(heightMm / 2),
  });
  const seen = (ringMm: number, degrees: number): PointMm | null => {
    const angle = (degrees * Math.PI) / 180;
    const recorded = { xMm: centreXMm + (ringMm * Math.cos(angle)) / squeeze, yMm: centreYMm + ringMm * Math.sin(angle) };
    return plane.onFrame(recorded) ? plane.shown(recorded) : null;
  };
  let d = "";
  const labels: TextItem[] = [];
  for (const ring of shadingRings(shading, radius)) {
    const runs = visibleRuns((share) => seen(ring.radiusMm, 360 * share), RING_STEPS);
    d += runs.map((run) => pathOf(plane, run)).join("");
    const spots = LABEL_ANGLES.map((degrees) => seen(ring.radiusMm, degrees)).filter((point) => point !== null);
    const words = fixed(ring.stops, 2);
    const label = board.place(spots.map((p) => [text(plane.x(p.xMm), plane.y(p.yMm) + 4, words, "middle", "t-ring halo-plate")]));
    labels.push(...(label ?? []));
  }
  const lines: DrawItem[] =
    d === ""
      ? []
      : [
          { type: "path", k: "k-plate-ring-under", d },
          { type: "path", k: "k-plate-ring", d },
        ];
  return { lines, labels };
}

function markItems(plane: LookPlane): DrawItem[] {
  return lookPlaces(plane.look).flatMap(({ letter, recorded }): DrawItem[] => {
    const point = plane.shown(recorded);
    if (point === null) return [];
    const x = plane.x(point.xMm);
    const y = plane.y(point.yMm);
    return [{ type: "circle", k: "k-plate-mark", x, y, r: MARK_RADIUS }, text(x, y + 4.3, letter, "middle", "t-mark")];
  });
}

function titleOf(look: LookOnArea, side: Side): string {
  const corner = lookPlaces(look).find((place) => place.letter === "C")?.recorded ?? { xMm: 0, yMm: 0 };
  const shade = look.shading === null ? null : stopsFromFactor(shadingFactor(look.shading, corner.xMm, corner.yMm));
  const shadeWords =
    shade === null
      ? "shading not known"
      : `the corner is ${stops(Math.abs(shade))} ${shade > 0 ? "brighter" : "darker"} than the centre`;
  if (look.distortion === null) return `Shading: ${shadeWords}`;
  const bend = distortionPercent(look.distortion, corner.xMm, corner.yMm) ?? 0;
  if (side === "recorded") {
    const way = bend < -0.005 ? "bow outward" : bend > 0.005 ? "bow inward" : "stay straight";
    return `Straight lines ${way}, ${percent(bend)} at the corner; ${shadeWords}`;
  }
  const box = look.idealBox;
  const spread = box === null ? null : (100 * (box.rightMm - box.leftMm)) / look.widthMm;
  const size = spread === null ? "" : ` and the picture fills ${percent(spread, 1)} of the frame's width`;
  return `With distortion taken off straight lines are straight${size}; ${shadeWords}`;
}

function descriptionOf(look: LookOnArea, side: Side): string {
  const grid =
    look.distortion === null
      ? "No distortion is known, so no grid is drawn."
      : side === "recorded"
        ? "The frame with a square grid as the lens draws it, and the true grid in dots."
        : "The outline of the picture without distortion, its grid, and the recorded frame in dots.";
  const rings = look.shading === null ? "" : " Dashed rings join places of equal shading and carry it in stops.";
  return `${grid}${rings} C is the corner, S the middle of the side, T the middle of the top.`;
}
