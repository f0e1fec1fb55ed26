/** Script pages, counted in eighths. */
import { NBSP } from "./space.ts";

/**
 * Pages from a whole number of eighths: `2 3/8`. Eighths are not cancelled down (six are 6/8) and a full page shows none of its
 * own as 0/8, so that a column of pages reads alike; nothing at all is 0.
 *
 * @example eighths(19) // "2 3/8"
 * @example eighths(40) // "5 0/8"
 */
export function eighths(count: number): string {
  if (count === 0) return "0";
  const pages = Math.floor(count / 8);
  const rest = `${count % 8}/8`;
  return pages === 0 ? rest : `${pages}${NBSP}${rest}`;
}
