import { plainCharacters, type Reading, read, refuse } from "./reading.ts";

const MOST_PAGES = 10_000;

/**
 * Script pages in eighths: `2 3/8` is 19, `5/8` is 5, `2` is 16. Refused: other denominators and decimals, with the form in eighths.
 */
export function readPages(text: string): Reading<number> {
  const written = plainCharacters(text);
  const match = /^(?:(\d+)(?:\s+|-(?=\d\/)))?(\d+)\/8$/.exec(written) ?? /^(\d+)$/.exec(written);
  if (match !== null) {
    const whole = Number(match[1] ?? 0);
    const eighths = Number(match[2] ?? 0);
    if (whole > MOST_PAGES)
      return refuse(`"${written.slice(0, 20)}" is more than a script has`, "Pages are written in eighths, such as 2 3/8.");
    if (eighths < 8) return read(whole * 8 + eighths);
    return refuse(`"${written}" has ${eighths} eighths`, `Eighths go up to 7: write ${inEighths(whole * 8 + eighths)}.`);
  }
  const other = /^(?:(\d+)\s+)?(\d+)\/(\d+)$/.exec(written);
  const value = other ? Number(other[1] ?? 0) + Number(other[2]) / Number(other[3]) : Number(written);
  const meant = Number.isInteger(value * 8) && value > 0 ? ` Write ${inEighths(value * 8)}.` : "";
  return refuse(`not pages in eighths: "${text.trim()}"`, `Pages are written in eighths, such as 2 3/8.${meant}`);
}

function inEighths(eighths: number): string {
  const whole = Math.floor(eighths / 8);
  const rest = eighths % 8;
  if (rest === 0) return String(whole);
  return whole === 0 ? `${rest}/8` : `${whole} ${rest}/8`;
}
