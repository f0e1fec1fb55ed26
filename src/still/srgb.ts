/** sRGB bytes to linear light, 0 to 1, and back. */

const LINEAR = Float64Array.from({ length: 256 }, (_, byte) => linear(byte / 255));

/** @source IEC 61966-2-1:1999, 5.2 */
function linear(value: number): number {
  return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
}

export function linearFromByte(byte: number): number {
  return LINEAR[byte] ?? 0;
}

/** Steps of the table of bytes: at its steepest, near black, a step is a twentieth of a byte. */
const STEPS = 65_535;
const BYTES = Uint8Array.from({ length: STEPS + 1 }, (_, i) => Math.round(255 * encoded(i / STEPS)));

function encoded(light: number): number {
  return light <= 0.0031308 ? 12.92 * light : 1.055 * light ** (1 / 2.4) - 0.055;
}

/** The nearest byte, to a twentieth of one; what is below black is 0, what is above white is 255. */
export function byteFromLinear(light: number): number {
  if (!(light > 0)) return 0;
  return light >= 1 ? 255 : (BYTES[Math.round(light * STEPS)] ?? 0);
}
