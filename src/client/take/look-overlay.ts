/** Lines over the picture: the square grid as the lens draws it and as it is, the frames, the places that figures are for. */
import { equationRoom } from "../../optics/distortion/equation.ts";
import { mapPoint, type PointMm, type Side } from "../../optics/distortion/map.ts";
import { lookPlaces } from "../../still/look-places.ts";
import type { LookOnArea } from "../../still/middle-look.ts";
import type { View } from "./look-pixels.ts";
import { placeOn } from "./look-view.ts";

const INK = "#14160f";
const PAPER = "#fbf8f1";
/** Squares across the frame, as in the drawing of the page without scripts. */
const SQUARES = 10;
const STEPS = 32;

/** What lines are drawn on: a view on a canvas, `unit` of whose pixels are one on the screen. */
export interface Sheet {
  readonly to: CanvasRenderingContext2D;
  readonly view: View;
  readonly unit: number;
}

/** Draws the lines of one side of the split: `ideal` when distortion is off there. */
export function drawLines(sheet: Sheet, look: LookOnArea, side: Side, withGrid: boolean): void {
  if (withGrid && look.distortion !== null) drawGrid(sheet, look, side);
  const frame = outlineOf(look);
  if (side === "recorded" || look.distortion === null) stroke(sheet, [frame], INK, 1, []);
  else {
    const spread = frame.map((p) => mapped(look, "ideal", p)).filter((p) => p !== null);
    stroke(sheet, [spread], INK, 1, []);
    stroke(sheet, [frame], PAPER, 1, [1.5, 3]);
    if (look.idealBox !== null) stroke(sheet, [boxOf(look)], INK, 0.75, [7, 4]);
  }
}

/** The true grid; as recorded in dots, and the grid as the lens draws it, cut at the frame. */
function drawGrid(sheet: Sheet, look: LookOnArea, side: Side): void {
  const { to, view } = sheet;
  const ideal = gridLines(look, (p) => p);
  if (side === "ideal") {
    stroke(sheet, ideal, INK, 0.75, []);
    return;
  }
  const [left, top] = placeOn(view, -look.widthMm / 2, -look.heightMm / 2);
  const [right, bottom] = placeOn(view, look.widthMm / 2, look.heightMm / 2);
  to.save();
  to.beginPath();
  to.rect(left, top, right - left, bottom - top);
  to.clip();
  stroke(sheet, ideal, PAPER, 1, [1.5, 3.5]);
  const drawn = gridLines(look, (p) => mapped(look, "recorded", p));
  stroke(sheet, drawn, INK, 0.75, []);
  to.restore();
}

/** Marks the places that the figures are for. */
export function drawMarks(sheet: Sheet, look: LookOnArea, side: Side): void {
  for (const place of lookPlaces(look)) {
    const shown = side === "ideal" ? mapped(look, "ideal", place.recorded) : place.recorded;
    if (shown !== null) drawMark(sheet, placeOn(sheet.view, shown.xMm, shown.yMm), place.letter);
  }
}

/** The place of a corner (or of the middle, 0 0) as a side shows it, on the canvas. */
export function cornerOn(view: View, look: LookOnArea | null, side: Side, sx: number, sy: number): readonly [number, number] {
  const recorded = { xMm: (sx * view.widthMm) / 2, yMm: (sy * view.heightMm) / 2 };
  const shown = look !== null && side === "ideal" ? (mapped(look, "ideal", recorded) ?? recorded) : recorded;
  return placeOn(view, shown.xMm, shown.yMm);
}

function gridLines(look: LookOnArea, shown: (ideal: PointMm) => PointMm | null): readonly (readonly PointMm[])[] {
  const stepX = look.widthMm / SQUARES;
  const stepY = stepX * look.squeeze;
  const box = look.idealBox;
  const halfX = Math.max(look.widthMm / 2, -(box?.leftMm ?? 0), box?.rightMm ?? 0);
  const halfY = Math.max(look.heightMm / 2, -(box?.topMm ?? 0), box?.bottomMm ?? 0);
  const line = (place: (share: number) => PointMm): readonly PointMm[] =>
    Array.from({ length: STEPS + 1 }, (_, i) => shown(place((2 * i) / STEPS - 1))).filter((p) => p !== null);
  const lines: (readonly PointMm[])[] = [];
  for (let n = -Math.floor(halfX / stepX); n * stepX <= halfX; n++)
    lines.push(line((share) => ({ xMm: n * stepX, yMm: share * halfY })));
  for (let n = -Math.floor(halfY / stepY); n * stepY <= halfY; n++)
    lines.push(line((share) => ({ xMm: share * halfX, yMm: n * stepY })));
  return lines;
}

function outlineOf({ widthMm, heightMm }: LookOnArea): readonly PointMm[] {
  const corners = [
    [-1, -1, 1, -1],
    [1, -1, 1, 1],
    [1, 1, -1, 1],
    [-1, 1, -1, -1],
  ] as const;
  return corners.flatMap(([x1, y1, x2, y2]) =>
    Array.from({ length: STEPS + 1 }, (_, i) => ({
      xMm: ((x1 + ((x2 - x1) * i) / STEPS) * widthMm) / 2,
      yMm: ((y1 + ((y2 - y1) * i) / STEPS) * heightMm) / 2,
    })),
  );
}

/** The canvas that holds the whole picture with the frame's middle in its own. */
function boxOf({ idealBox }: LookOnArea): readonly PointMm[] {
  const x = Math.max(-(idealBox?.leftMm ?? 0), idealBox?.rightMm ?? 0);
  const y = Math.max(-(idealBox?.topMm ?? 0), idealBox?.bottomMm ?? 0);
  return [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
    [-1, -1],
  ].map(([sx = 0, sy = 0]) => ({ xMm: sx * x, yMm: sy * y }));
}

const room = equationRoom();

function mapped({ distortion }: LookOnArea, side: Side, point: PointMm): PointMm | null {
  if (distortion === null) return point;
  return mapPoint(distortion, side, point.xMm, point.yMm, room) ? { xMm: room[0] ?? 0, yMm: room[1] ?? 0 } : null;
}

function stroke(
  { to, view, unit }: Sheet,
  lines: readonly (readonly PointMm[])[],
  colour: string,
  width: number,
  dash: number[],
): void {
  to.beginPath();
  for (const line of lines) {
    line.forEach((point, i) => {
      const [x, y] = placeOn(view, point.xMm, point.yMm);
      if (i === 0) to.moveTo(x, y);
      else to.lineTo(x, y);
    });
  }
  to.setLineDash(dash.map((part) => part * unit));
  to.lineWidth = width * unit;
  to.strokeStyle = colour;
  to.stroke();
  to.setLineDash([]);
}

/** As large as the air round the picture lets them be. */
const MARK_UNIT = 2.2;

function drawMark({ to, unit: wanted }: Sheet, [x, y]: readonly [number, number], letter: string): void {
  const unit = Math.min(wanted, MARK_UNIT);
  to.beginPath();
  to.arc(x, y, 8 * unit, 0, 2 * Math.PI);
  to.fillStyle = PAPER;
  to.fill();
  to.lineWidth = unit;
  to.strokeStyle = INK;
  to.stroke();
  to.fillStyle = INK;
  to.font = `700 ${(12 * unit).toFixed(1)}px sans-serif`;
  to.textAlign = "center";
  to.textBaseline = "middle";
  to.fillText(letter, x, y + unit / 2);
}
