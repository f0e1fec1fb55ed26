/** Signs that cannot be told apart or typed easily, by name. */

/** U+00A0, between a number and its unit: the two never part at a line end. */
export const NBSP = "\u00a0";
/** U+202F, between thousands. */
export const THIN = "\u202f";
/** U+2212, the minus of figures; a hyphen is not a minus. */
export const MINUS = "\u2212";
/** U+221E. */
export const INFINITY = "\u221e";

/** A figure and its unit with a no-break space: `35 mm`. */
export function withUnit(figure: string, unit: string): string {
  return `${figure}${NBSP}${unit}`;
}

/** The text for a terminal or a program, neither of which wants spaces that nobody types. */
export function plainSpaces(text: string): string {
  return text.replaceAll(/[\u00a0\u202f]/g, " ");
}
