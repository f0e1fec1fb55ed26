/** Masses, file sizes and other amounts that have one unit. */
import { fixed, signed, thousands, trimmed } from "./number.ts";
import { THIN, withUnit } from "./space.ts";

/** Grams in whole numbers: `1 090 g`. */
export function grams(mass: number): string {
  return withUnit(thousands(mass), "g");
}

/** A step in grams with its sign: `+240 g`. */
export function signedGrams(mass: number): string {
  return withUnit(signed(mass, 0).replace(/\B(?=(\d{3})+$)/g, THIN), "g");
}

/** File size, a thousand bytes to a KB: `640 bytes`, `96 KB`, `8.1 MB`, `61 MB`. */
export function fileSize(bytes: number): string {
  if (bytes < 1000) return withUnit(String(bytes), bytes === 1 ? "byte" : "bytes");
  const units = ["KB", "MB", "GB", "TB"];
  let value = bytes / 1000;
  let unit = 0;
  // 999.5 would print as 1000 of the smaller unit.
  while (value >= 999.5 && unit < units.length - 1) {
    value /= 1000;
    unit++;
  }
  return withUnit(unit > 0 && value < 9.95 ? fixed(value, 1) : fixed(value, 0), units[unit] as string);
}

/** Colour temperature: `4300 K`. Four digits stay together, as they are said. */
export function kelvin(value: number): string {
  return withUnit(fixed(value, 0), "K");
}

/** Dioptres to three decimals: `0.250`. The unit stands in the head. */
export function dioptres(value: number): string {
  return fixed(value, 3);
}

/** An amount of focus in depths of field: `3.9 depths`. */
export function depths(value: number): string {
  return withUnit(fixed(value, 1), "depths");
}

/** Frames a second: `24 fps`, `23.976 fps`. */
export function fps(value: number): string {
  return withUnit(trimmed(value, 3), "fps");
}
