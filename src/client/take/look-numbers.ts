/** Figures of the lens look at a frame, written as the builder writes those of the middle frame. */
import { NOT_CALCULATED, NOT_LOGGED } from "../../format/absent.ts";
import { fixed, thousands } from "../../format/number.ts";
import { signedPercent } from "../../format/percent.ts";
import type { FrameValues } from "../../format/readout.ts";
import { NBSP } from "../../format/space.ts";
import type { LookRecord } from "../../format/take-record.ts";
import { lookPlaces, shiftAt } from "../../still/look-places.ts";
import type { LookOnArea } from "../../still/middle-look.ts";

/** Rows of the table: corner, mid-side, mid-top. Cells: distortion, shift where the recorded pixels are known, shading, brightness. */
export function pointRows(v: FrameValues, look: LookOnArea | null, pixels: LookRecord["pixels"]): readonly (readonly string[])[] {
  const absent = v.logged ? NOT_CALCULATED : NOT_LOGGED;
  const places = look === null ? [] : lookPlaces(look);
  const shift = (i: number): string => {
    const place = places[i];
    const found =
      look === null || pixels === null || place === undefined
        ? null
        : shiftAt(look, { widthPx: pixels[0], heightPx: pixels[1] }, place.recorded);
    if (found === null) return absent;
    return found.way === null ? fixed(0, 0) : `${fixed(found.pixels, found.pixels < 10 ? 1 : 0)}${NBSP}${found.way}`;
  };
  const or = (value: number, write: (value: number) => string): string => (Number.isNaN(value) ? absent : write(value));
  return ([0, 1, 2] as const).map((i) => [
    or(v.distortion[i], (percent) => fixed(percent, 2)),
    ...(pixels === null ? [] : [shift(i)]),
    or(v.shading[i], (stops) => fixed(stops, 2)),
    or(v.shading[i], (stops) => fixed(2 ** stops, 3)),
  ]);
}

/** The canvas that keeps the whole frame once distortion is off; empty where it is not known. */
export function overscanWords(look: LookOnArea | null, pixels: LookRecord["pixels"]): string {
  const box = look?.idealBox ?? null;
  if (look === null || box === null || pixels === null) return "";
  const across = (2 * Math.max(-box.leftMm, box.rightMm)) / look.widthMm;
  const down = (2 * Math.max(-box.topMm, box.bottomMm)) / look.heightMm;
  const grown = (side: number, factor: number): string => thousands(side + 2 * Math.ceil((side * (factor - 1)) / 2 - 1e-6));
  const size = `${grown(pixels[0], across)}${NBSP}×${NBSP}${grown(pixels[1], down)}`;
  return `Overscan at this frame: ${size}${NBSP}pixels (${signedPercent(100 * (Math.max(across, down) - 1), 1)}).`;
}

/** Fills the table that the builder made. */
export function fillPoints(table: Element, rows: readonly (readonly string[])[]): void {
  const lines = table.querySelectorAll("tbody tr");
  rows.forEach((row, i) => {
    const cells = lines[i]?.querySelectorAll("td") ?? [];
    row.forEach((text, j) => {
      const cell = cells[j];
      if (cell === undefined) return;
      cell.textContent = text;
      cell.classList.toggle("absent", text === NOT_CALCULATED || text === NOT_LOGGED);
    });
  });
}
