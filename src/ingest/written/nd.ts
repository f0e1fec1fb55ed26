import { ndStopsFromDensity, ndStopsFromFactor } from "../../optics/exposure.ts";
import { plainCharacters, type Reading, read, refuse } from "./reading.ts";

/** Factors that are engraved without being powers of two. */
const ENGRAVED_FACTORS = [100, 200, 400, 500, 1000, 10_000, 100_000];

/**
 * Stops of a neutral density: a density with a decimal point below 4 (`0.6`, `ND0.9`, `.3`: density / log10 2), a factor (`ND4`:
 * log2 4), stops (`2 stops`, `1 1/3 stops`), several with `+` between. Refused: a bare whole number, which may be either.
 *
 * @example readNd("ND8") // { ok: true, value: 3 }
 */
export function readNd(text: string): Reading<number> {
  const parts = plainCharacters(text).split("+");
  let stops = 0;
  for (const part of parts) {
    const one = readOne(part.trim());
    if (!one.ok) return parts.length > 1 ? refuse(`${one.problem} in "${text.trim()}"`, one.hint) : one;
    stops += one.value;
  }
  return read(stops);
}

function readOne(written: string): Reading<number> {
  if (/^(?:none|clear|no)$/i.test(written)) return read(0);
  const stops = /^(\d+(?:\.\d+)?)?(?: ?(\d)\/(\d))?[ -]?stops?$/i.exec(written);
  if (stops && (stops[1] !== undefined || stops[2] !== undefined)) return stopsOf(written, stops[1], stops[2], stops[3]);
  const number = /^(nd)?\s*(\d*)(\.\d+)?\s*(nd)?$/i.exec(written);
  if (number === null || (number[2] === "" && number[3] === undefined)) {
    return refuse(`not a neutral density: "${written}"`, "Write a density (0.6), a factor (ND4) or stops (2 stops).");
  }
  const value = Number(`${number[2] || "0"}${number[3] ?? ""}`);
  const named = number[1] !== undefined || number[4] !== undefined;
  if (number[3] !== undefined) return densityOf(written, value);
  if (!named) return bareNumber(written, value);
  return factorOf(written, value);
}

function stopsOf(written: string, whole: string | undefined, top: string | undefined, bottom: string | undefined): Reading<number> {
  const fraction = top === undefined || bottom === undefined ? 0 : Number(top) / Number(bottom);
  if (!(fraction < 1)) return refuse(`"${written}" has a fraction of 1 or more`, "Write stops such as 2 stops or 1 1/3 stops.");
  const value = Number(whole ?? 0) + fraction;
  return value <= 20
    ? read(value)
    : refuse(`"${written}" is more than a filter takes`, "Write a density (0.6), a factor (ND4) or stops (2 stops).");
}

function densityOf(written: string, value: number): Reading<number> {
  if (value < 4) return read(ndStopsFromDensity(value));
  return refuse(`"${written}" is too much for a density`, "A density is below 4. Write ND before a factor, or the word stops.");
}

function bareNumber(written: string, value: number): Reading<number> {
  const density = (value / 10).toFixed(1);
  const asFactor = value >= 2 ? `"ND${value}" (${ndStopsFromFactor(value).toFixed(1)} stops)` : '"0.3"';
  const asDensity = value > 0 && value < 40 ? `, "${density}" (a density)` : "";
  return refuse(`a bare number is no neutral density: "${written}"`, `Write ${asFactor}${asDensity} or "${value} stops".`);
}

function factorOf(written: string, value: number): Reading<number> {
  if ((value >= 2 && Number.isInteger(Math.log2(value))) || ENGRAVED_FACTORS.includes(value)) return read(ndStopsFromFactor(value));
  if (value < 2)
    return refuse(`"${written}" is no factor`, "A factor is 2 or more. Write a density with a decimal point, such as 0.3.");
  return refuse(
    `"${written}" may be a factor of ${value} or a density of ${(value / 10).toFixed(1)}`,
    `Write "${(value / 10).toFixed(1)}" for the density, or the stops in words.`,
  );
}
