/** The frame of a lens look on paper: where millimetres of the sensor lie, and what is seen. */

import { equationRoom } from "../../optics/distortion/equation.ts";
import { mapPoint, type PointMm, type Side } from "../../optics/distortion/map.ts";
import type { LookOnArea } from "../../still/middle-look.ts";

/** Room round the drawing for the marks. */
const MARGIN = 12;
/** Points along each side of the frame's outline. */
const SIDE_STEPS = 16;

export interface LookPlane {
  readonly look: LookOnArea;
  /** What is drawn: the picture as recorded, or with distortion taken off. */
  readonly side: Side;
  readonly width: number;
  readonly height: number;
  /** Pixels a millimetre down; across times the squeeze. */
  readonly scale: number;
  x(xMm: number): number;
  y(yMm: number): number;
  /** Whether a recorded point is on the frame. */
  onFrame(point: PointMm): boolean;
  /** A recorded point as this side shows it; `null` where that is not defined. */
  shown(recorded: PointMm): PointMm | null;
}

/** The recorded frame has the same place and size on both sides, so that the two lie over each other. */
export function lookPlane(look: LookOnArea, side: Side, width: number): LookPlane {
  const halfWidth = look.widthMm / 2;
  const halfHeight = look.heightMm / 2;
  const box = look.idealBox;
  const left = Math.min(-halfWidth, box?.leftMm ?? 0);
  const right = Math.max(halfWidth, box?.rightMm ?? 0);
  const top = Math.min(-halfHeight, box?.topMm ?? 0);
  const bottom = Math.max(halfHeight, box?.bottomMm ?? 0);
  const scale = (width - 2 * MARGIN) / ((right - left) * look.squeeze);
  const nudge = 1e-9 * look.widthMm;
  return {
    look,
    side,
    width,
    height: Math.ceil((bottom - top) * scale + 2 * MARGIN),
    scale,
    x: (xMm) => MARGIN + (xMm - left) * scale * look.squeeze,
    y: (yMm) => MARGIN + (yMm - top) * scale,
    onFrame: ({ xMm, yMm }) => Math.abs(xMm) <= halfWidth + nudge && Math.abs(yMm) <= halfHeight + nudge,
    shown: (recorded) => (side === "recorded" ? recorded : mapped(look, "ideal", recorded)),
  };
}

/** A point on the other side; itself without distortion. */
export function mapped(look: LookOnArea, to: Side, { xMm, yMm }: PointMm): PointMm | null {
  if (look.distortion === null) return { xMm, yMm };
  const room = equationRoom();
  return mapPoint(look.distortion, to, xMm, yMm, room) ? { xMm: room[0] ?? Number.NaN, yMm: room[1] ?? Number.NaN } : null;
}

/** Outline of the recorded frame as a side shows it, round from the top left corner; `null` where it is not defined. */
export function outline(plane: LookPlane): readonly PointMm[] | null {
  const { widthMm, heightMm } = plane.look;
  const corners = [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
    [-1, -1],
  ] as const;
  const steps = plane.side === "recorded" ? 1 : SIDE_STEPS;
  const points: PointMm[] = [];
  for (let corner = 0; corner < 4; corner++) {
    const [fromX, fromY] = corners[corner] ?? [0, 0];
    const [toX, toY] = corners[corner + 1] ?? [0, 0];
    for (let i = 0; i < steps; i++) {
      const share = i / steps;
      const xMm = ((fromX + (toX - fromX) * share) * widthMm) / 2;
      const yMm = ((fromY + (toY - fromY) * share) * heightMm) / 2;
      const point = plane.shown({ xMm, yMm });
      if (point === null) return null;
      points.push(point);
    }
  }
  return points;
}
