/** Which part of the sensor plane the panel's canvas shows: one box for the whole take, so that nothing jumps while scrubbing. */
import type { LookRecord } from "../../format/take-record.ts";
import type { BoxMm, LookOnArea } from "../../still/middle-look.ts";
import type { View } from "./look-pixels.ts";

/** Width of the canvas in its own pixels. */
export const COLUMNS = 960;
/** Frames that are looked at for the largest box; between them the lens moves little. */
const TRIED = 48;
/** Air round the box for the marks, in parts of its width. */
const AIR = 0.02;

/** Holds the recorded frame and what it spreads to when distortion is off, over the take. */
export function viewOf(record: LookRecord, frames: number, lookAt: (frame: number) => LookOnArea | null): View {
  let left = -record.widthMm / 2;
  let right = record.widthMm / 2;
  let top = -record.heightMm / 2;
  let bottom = record.heightMm / 2;
  for (let i = 0; i < TRIED; i++) {
    const box = lookAt(Math.round((i * (frames - 1)) / (TRIED - 1)))?.idealBox ?? null;
    if (box === null) continue;
    left = Math.min(left, box.leftMm);
    right = Math.max(right, box.rightMm);
    top = Math.min(top, box.topMm);
    bottom = Math.max(bottom, box.bottomMm);
  }
  const air = AIR * (right - left);
  const box: BoxMm = {
    leftMm: left - air,
    rightMm: right + air,
    topMm: top - air * record.squeeze,
    bottomMm: bottom + air * record.squeeze,
  };
  const tall = (box.bottomMm - box.topMm) / ((box.rightMm - box.leftMm) * record.squeeze);
  return { columns: COLUMNS, rows: Math.round(COLUMNS * tall), box, widthMm: record.widthMm, heightMm: record.heightMm };
}

/** A place of the sensor plane in pixels of the canvas. */
export function placeOn({ columns, rows, box }: View, xMm: number, yMm: number): readonly [x: number, y: number] {
  return [((xMm - box.leftMm) / (box.rightMm - box.leftMm)) * columns, ((yMm - box.topMm) / (box.bottomMm - box.topMm)) * rows];
}
