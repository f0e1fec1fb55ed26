/** What a lens without measured shading would lose in the corner by geometry alone. */
import type { Take } from "../model/types.ts";
import { naturalFallOff, stopsFromFactor } from "../optics/shading.ts";

/** Stops at the corner by cos^4, negative is darker; `null` for a squeezed picture or where area or focal length is not known. */
export function naturalFallOffStops(take: Take, focalMm: number | null): number | null {
  const mode = take.sensorMode;
  if (mode === null || focalMm === null || take.squeeze !== 1) return null;
  return stopsFromFactor(naturalFallOff(Math.hypot(mode.activeWidthMm, mode.activeHeightMm) / 2, focalMm));
}
