import { plainCharacters, type Reading, read, refuse } from "./reading.ts";

const METRES: Readonly<Record<string, number>> = { m: 1, cm: 0.01, mm: 0.001, ft: 0.3048, in: 0.0254 };
const UNIT_WORDS: readonly (readonly [RegExp, string])[] = [
  [/^(?:m|mtrs?|met(?:re|er)s?)\.?$/, "m"],
  [/^(?:cm|centimet(?:re|er)s?)\.?$/, "cm"],
  [/^(?:mm|millimet(?:re|er)s?)\.?$/, "mm"],
  [/^(?:'|ft|feet|foot)\.?$/, "ft"],
  [/^(?:"|''|in|ins|inch|inches)\.?$/, "in"],
];

/** One written distance, before a unit has been lent to it from the other end of a range. */
export type WrittenDistance =
  | { readonly kind: "metres"; readonly metres: number; readonly unit: string | null }
  | { readonly kind: "bare"; readonly number: number };

/**
 * One distance in metres (`Infinity` for `inf`, `infinity`, the sign). `1.9 m`, `85 cm`, `12ft`, `6' 2 1/2"`, `9"`, `5'6`, `5 1/2 ft`.
 * 1 ft is 0.3048 m, 1 in is 0.0254 m, exactly; `5.6'` is 5 ft 7.2 in. Refused: a number without a unit (with the two likely
 * readings), zero, negative numbers, inches of 12 and more after feet, a decimal comma, fractions other than halves to sixteenths.
 *
 * @example readDistance(`2' 3 3/4"`) // { ok: true, value: 0.70485 }
 */
export function readDistance(text: string): Reading<number> {
  const one = readWrittenDistance(text);
  if (!one.ok) return one;
  return one.value.kind === "metres" ? read(one.value.metres) : withoutUnit(text.trim(), one.value.number);
}

/** As `readDistance`, but a number without a unit is given as such. */
export function readWrittenDistance(text: string): Reading<WrittenDistance> {
  const written = plainCharacters(text).toLowerCase();
  if (/^(?:inf|inf\.|infinity|\u221e)$/.test(written)) return metres(Number.POSITIVE_INFINITY, null);
  if (/^-/.test(written)) return refuse(`"${text.trim()}" is negative`, "Distances are from the image plane and positive.");
  const feetAndInches = readFeetAndInches(text.trim(), written);
  if (feetAndInches !== null) return feetAndInches;
  const single = /^(\d+(?:\.\d+)?|\.\d+)?(?: ?(\d+)\/(\d+))?\s*([a-z'"]+\.?)?$/.exec(written);
  if (single === null || (single[1] === undefined && single[2] === undefined))
    return refuse(`not a distance: "${text.trim()}"`, formHint(written));
  const number = mixedNumber(single[1], single[2], single[3]);
  if (number === null) return badFraction(text.trim());
  if (!(number > 0)) return refuse(`"${text.trim()}" is no distance`, "Write the distance from the image plane, or inf.");
  if (single[4] === undefined) return read({ kind: "bare", number });
  const unit = unitOf(single[4]);
  if (unit === null)
    return refuse(`"${text.trim()}" has an unknown unit "${single[4]}"`, "Units are m, cm, mm, ft (') and in (\").");
  return metres(number * (METRES[unit] as number), unit);
}

/** The refusal of a number without a unit, with both readings in metres. */
export function withoutUnit(
  written: string,
  number: number,
): { readonly ok: false; readonly problem: string; readonly hint: string } {
  const feet = (number * 0.3048).toFixed(2);
  return refuse(`a distance without a unit: "${written}"`, `Write "${written} m", or "${written} ft" (which is ${feet} m).`);
}

function readFeetAndInches(shown: string, written: string): Reading<WrittenDistance> | null {
  const match =
    /^(\d+(?:\.\d+)?)\s*(?:'(?!')|ft\.?|feet|foot)\s*[- ]?\s*(\d+(?:\.\d+)?)?(?:(?:^|[ -])?\s*(\d+)\/(\d+))?\s*("|''|in\.?|ins\.?|inch|inches)?$/.exec(
      written,
    );
  if (match === null || (match[2] === undefined && match[3] === undefined)) return null;
  const feet = Number(match[1]);
  const [, , whole, top, bottom] = match;
  // `6' 1/2"` has a fraction only; `6' 21/2"` cannot be told from 2 1/2 and is refused as 21/2 is no fraction.
  const inches = mixedNumber(whole, top, bottom);
  if (inches === null) return badFraction(shown);
  if (!Number.isInteger(feet))
    return refuse(`"${shown}" has a fraction of a foot and inches`, "Write whole feet before inches, or decimal feet alone.");
  if (inches >= 12) return refuse(`"${shown}" has ${inches} inches after feet`, "Inches after feet go up to 11 15/16.");
  const total = feet * 0.3048 + inches * 0.0254;
  if (!(total > 0)) return refuse(`"${shown}" is no distance`, "Write the distance from the image plane, or inf.");
  return metres(total, "ft");
}

function mixedNumber(whole: string | undefined, top: string | undefined, bottom: string | undefined): number | null {
  if (top === undefined || bottom === undefined) return Number(whole ?? 0);
  const denominator = Number(bottom);
  if (![2, 4, 8, 16].includes(denominator) || Number(top) >= denominator || (whole ?? "0").includes(".")) return null;
  return Number(whole ?? 0) + Number(top) / denominator;
}

function badFraction(shown: string): { readonly ok: false; readonly problem: string; readonly hint: string } {
  return refuse(
    `"${shown}" has a fraction that no tape has`,
    "Fractions are halves, quarters, eighths and sixteenths below 1, such as 2 1/2.",
  );
}

function unitOf(word: string): string | null {
  return UNIT_WORDS.find(([pattern]) => pattern.test(word))?.[1] ?? null;
}

/** Distances on a set; beyond them are slips that no figure can be worked out from. */
const NEAREST_M = 1e-6;
const FARTHEST_M = 1e6;

function metres(value: number, unit: string | null): Reading<WrittenDistance> {
  if (unit !== null && !(value >= NEAREST_M && value <= FARTHEST_M)) {
    return refuse(`a distance of ${value} m is none of a set`, "Write the distance from the image plane, or inf.");
  }
  return read({ kind: "metres", metres: value, unit });
}

/** Metres of a number in a unit that the other end of a range has. */
export function metresIn(number: number, unit: string): number {
  return number * (METRES[unit] ?? Number.NaN);
}

function formHint(written: string): string {
  const comma = /^(\d+),(\d+)\s*([a-z'"]*)$/.exec(written);
  if (comma) return `Write ${comma[1]}.${comma[2]} ${comma[3] || "m"} with a point.`;
  return `Write a distance such as 1.9 m, 85 cm, 6' 2 1/2", 9", 12 ft or inf.`;
}
