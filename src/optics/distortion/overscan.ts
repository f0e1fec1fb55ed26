/** How much larger than the frame a picture must be so that nothing is missing after distortion is taken off or put on. */
import type { SensorArea } from "../radius.ts";
import type { CanonicalDistortion } from "./canonical.ts";
import { equationRoom } from "./equation.ts";
import { mapPoint, type Side } from "./map.ts";

const STEPS = 64;

/**
 * Factor by which the active area must grow about its middle to hold the whole frame on the other side. `ideal`: the ideal
 * picture that holds all of the recorded frame; `recorded`: the recorded picture that fills the ideal frame. Below 1 when the
 * frame shrinks. The frame's edges are sampled, corners and middles included, since the extreme is not always in a corner.
 * `null` when an edge point is not defined.
 *
 * @source OpenLensIO maths, eq. 7 and 21-24, with absolute values so that a shifted centre counts on both sides
 */
export function overscanOf(d: CanonicalDistortion, area: SensorArea, side: Side): number | null {
  const room = equationRoom();
  const halfWidth = area.widthMm / 2;
  const halfHeight = area.heightMm / 2;
  let largest = 0;
  for (let i = 0; i <= STEPS; i++) {
    const share = (2 * i) / STEPS - 1;
    for (const [x, y] of [
      [share, 1],
      [share, -1],
      [1, share],
      [-1, share],
    ] as const) {
      if (!mapPoint(d, side, x * halfWidth, y * halfHeight, room)) return null;
      largest = Math.max(largest, Math.abs(room[0] ?? 0) / halfWidth, Math.abs(room[1] ?? 0) / halfHeight);
    }
  }
  return largest;
}
