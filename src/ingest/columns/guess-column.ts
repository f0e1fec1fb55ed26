/** What a column of an unknown log may be: told from the words and the unit of its header, then from its values. */
import { LOG_FILE_COLUMNS } from "../../csv/columns.ts";
import { ENCODER, headerParts, WORDS } from "./header-words.ts";

/** Values of a column, as written and as numbers. */
export interface ColumnSample {
  readonly header: string;
  /** Cells that are not blank, trimmed. */
  readonly texts: readonly string[];
  /** Those of them that are numbers. */
  readonly numbers: readonly number[];
}

export interface ColumnGuess {
  /** Known column, or `null`: the column is kept word for word. */
  readonly column: string | null;
  /** Why, in a few words each. */
  readonly reasons: readonly string[];
  /** What a person must decide; `null` when nothing. */
  readonly doubt: string | null;
}

/** A time of day: whole seconds, or a decimal point with thousandths. */
const CLOCK = /^\d\d?:\d\d:\d\d(?:[.,]\d{3,})?$/;
const TWO_FIGURES = /^[TFf]?\/?\d+(?:[.,]\d+)?\s*(?:mm)?\s*[/|@]\s*[TFf]?\/?\d+(?:[.,]\d+)?$/;
const FEET = /^\d+(?:\.\d+)?\s*(?:'|ft)\s*(?:\d|$)/;
const TIMECODE = /^\d\d:\d\d:\d\d[:;.]\d\d\d?$/;
const KNOWN = new Map(LOG_FILE_COLUMNS.map((spec) => [spec.name.toLowerCase(), spec.name]));

/** Guesses one column. Nothing of this happens when a report is built. */
export function guessColumn(sample: ColumnSample): ColumnGuess {
  const { header, texts } = sample;
  const exact = KNOWN.get(header.trim().toLowerCase());
  if (exact !== undefined)
    return guess(exact, exact === header.trim() ? "the name itself" : `the name itself, written ${header.trim()}`);
  const { words, unit } = headerParts(header);
  const rule = WORDS.find(([pattern]) => pattern.test(words));
  const meaning = rule?.[1] ?? "";
  const said = rule === undefined ? "" : `"${rule[0].exec(words)?.[0]}" in the header`;
  const clock = texts.find((text) => CLOCK.test(text));
  if (clock !== undefined && (meaning === "time" || meaning === "timecode"))
    return kept(`a time of day (${clock}) has no frames; log the timecode, or seconds from the start (time_s)`);
  if (texts.some((text) => TWO_FIGURES.test(text)) && sample.numbers.length === 0)
    return kept(`two figures in one cell (${texts[0]}); log them in a column each`);
  const labels = texts.filter((text) => TIMECODE.test(text)).length;
  if (labels > 0 && labels >= 0.8 * texts.length)
    return guess("timecode", ...(meaning === "timecode" ? [said] : []), `values such as ${texts.find((t) => TIMECODE.test(t))}`);
  if (ENCODER.test(words) && ["focus", "t", "f", "zoom", "focal"].includes(meaning)) return encoder(meaning, said, sample);
  switch (meaning) {
    case "focus":
      return guessFocus(sample, unit, said);
    case "t":
    case "f":
      return within(sample, 0.5, 64) ? guess(meaning, said, rangeOf(sample)) : encoder(meaning, said, sample);
    case "focal":
      return inUnit(sample, unit, "mm", "focal_mm", said);
    case "zoom":
      return within(sample, 4, 2000) && unit !== "" ? inUnit(sample, unit, "mm", "focal_mm", said) : zoom(sample, said);
    case "hyperfocal":
      return inUnit(sample, unit, "m", "hyperfocal_m", said);
    case "pupil":
      return inUnit(sample, unit, "mm", "entrance_pupil_mm", said);
    case "height":
      return inUnit(sample, unit, "m", "height_m", said);
    case "pan":
    case "tilt":
    case "roll":
      return sample.numbers.length === 0 ? kept("the values are no angles") : inUnit(sample, unit, "deg", `${meaning}_deg`, said);
    case "squeeze":
      return sample.numbers.length > 0 ? guess("squeeze", said, rangeOf(sample)) : kept("the values are no numbers");
    case "camera":
    case "clip":
    case "slate":
    case "take":
    case "lens":
      return guess(meaning, said, `values such as ${texts[0] ?? "(blank)"}`);
    case "frame":
      return counted(sample, "frame", said);
    case "time":
      return unit === "ms" ? kept("milliseconds are not read; write seconds") : counted(sample, "time_s", said);
    default:
      return kept(rule === undefined ? "no word that is known" : "not a figure that is read");
  }
}

function guessFocus(sample: ColumnSample, unit: string, said: string): ColumnGuess {
  const feet = sample.texts.find((text) => FEET.test(text));
  if (feet !== undefined)
    return kept(`feet and inches (${feet}) are read in notes only; log decimal feet (focus_ft) or metres (focus_m)`);
  if (sample.numbers.length === 0) return kept("the values are no distances");
  if (["m", "mm", "cm", "ft", "in", "dpt"].includes(unit)) return guess(`focus_${unit}`, said, `unit "${unit}"`, rangeOf(sample));
  const high = Math.max(...sample.numbers.filter(Number.isFinite));
  const whole = sample.numbers.every(Number.isInteger);
  if (whole && high > 20_000) return encoder("focus", said, sample);
  if (whole && high >= 300)
    return {
      ...guess("focus_mm", said, rangeOf(sample)),
      doubt: "the header has no unit; whole numbers this large are likely millimetres, or the counts of an encoder (encoder_focus)",
    };
  return {
    ...guess("focus_m", said, rangeOf(sample)),
    doubt: "the header has no unit; the numbers may be metres (focus_m) or feet (focus_ft). Compare a row with the tape",
  };
}

function zoom(sample: ColumnSample, said: string): ColumnGuess {
  if (within(sample, 4, 2000))
    return { ...guess("focal_mm", said, rangeOf(sample)), doubt: "the header has no unit; the numbers look like millimetres" };
  return encoder("zoom", said, sample);
}

function encoder(meaning: string, said: string, sample: ColumnSample): ColumnGuess {
  if (sample.numbers.length === 0) return kept("the values are no numbers");
  const name = meaning === "focus" ? "focus" : meaning === "t" || meaning === "f" ? "iris" : "zoom";
  const hint = name === "focus" ? ["distances come through kit/encoders/<lens>.csv"] : [];
  return guess(`encoder_${name}`, said, `${rangeOf(sample)}: readings of an encoder`, ...hint);
}

function inUnit(sample: ColumnSample, unit: string, wanted: string, column: string, said: string): ColumnGuess {
  if (sample.numbers.length === 0) return kept("the values are no numbers");
  if (unit !== "" && unit !== wanted) return kept(`${said}, and its unit "${unit}" is not read for it (${wanted} is)`);
  const reasons = [said, ...(unit === "" ? [] : [`unit "${unit}"`]), rangeOf(sample)];
  const doubt = unit === "" && wanted === "m" ? `the header has no unit; ${column} is in metres` : null;
  return { ...guess(column, ...reasons), doubt };
}

function counted(sample: ColumnSample, column: "frame" | "time_s", said: string): ColumnGuess {
  const [first] = sample.numbers;
  if (first === undefined) return kept("the values are no numbers");
  const doubt = first === 0 ? null : `${column} is counted from 0 at start_timecode, and here the first is ${first}`;
  return { ...guess(column, said, rangeOf(sample)), doubt };
}

function within({ numbers }: ColumnSample, low: number, high: number): boolean {
  return numbers.length > 0 && numbers.every((n) => n >= low && n <= high);
}

function rangeOf({ numbers }: ColumnSample): string {
  const finite = numbers.filter(Number.isFinite);
  if (finite.length === 0) return "no number in the first rows";
  const low = Math.min(...finite);
  const high = Math.max(...finite);
  return low === high ? `always ${low}` : `${low} to ${high}`;
}

function guess(column: string, ...reasons: readonly string[]): ColumnGuess {
  return { column, reasons, doubt: null };
}

function kept(reason: string): ColumnGuess {
  return { column: null, reasons: [reason], doubt: null };
}
