import { plainCharacters, type Reading, read, refuse } from "./reading.ts";

export type Shutter = { readonly degrees: number } | { readonly seconds: number };

/**
 * A shutter angle in degrees (`172.8`, `180°`, `180 deg`: above 0 up to 360) or an exposure time in seconds (`1/48`, `1/48 s`, `0.02 s`).
 * Of both, `172.8°, 1/50 s`, the angle counts: it is exact, the time is rounded.
 *
 * @example readShutter("1/48") // { ok: true, value: { seconds: 0.0208333... } }
 */
export function readShutter(text: string): Reading<Shutter> {
  const written = plainCharacters(text).toLowerCase();
  const both = /^(.*(?:\u00b0|deg|degrees))(?:\s*,\s*|\s+)1\/\d+(?:\.\d+)?\s*(?:s|sec)?\.?$/.exec(written);
  if (both) return readShutter(both[1] as string);
  const time = /^1\s*\/\s*(\d+(?:\.\d+)?)\s*(?:s|sec|th)?\.?$/.exec(written);
  if (time && Number(time[1]) >= 1) return read({ seconds: 1 / Number(time[1]) });
  const seconds = /^(\d*\.?\d+)\s*(?:s|sec)\.?$/.exec(written);
  if (seconds && Number(seconds[1]) > 0) return read({ seconds: Number(seconds[1]) });
  const angle = /^(\d+(?:\.\d+)?|\.\d+)\s*(?:\u00b0|deg|degrees)?$/.exec(written);
  if (angle === null) return refuse(`not a shutter: "${text.trim()}"`, "Write degrees (172.8) or an exposure time (1/48).");
  const degrees = Number(angle[1]);
  if (degrees > 0 && degrees <= 360) return read({ degrees });
  return refuse(`a shutter of ${degrees} degrees: "${text.trim()}"`, `An angle is above 0 and at most 360. Is it 1/${degrees}?`);
}
