import { hasUnitChoice, settled } from "../format/units.ts";

/**
 * How wide a text can get. Readers bring their own fonts, so widths are those of a wide sans: a label that fits by this
 * table fits in every common face.
 *
 * @source advance widths of DejaVu Sans and DejaVu Sans Bold, in hundredths of an em
 */
const REGULAR: readonly (readonly [number, string])[] = [
  [20, "\u2009\u202f"],
  [28, "'ijl"],
  [29, "IJ"],
  [32, " \u00a0,."],
  [36, "/:;f-"],
  [39, "()[]t"],
  [41, "!r"],
  [46, '"'],
  [50, "*_\u2013\u00b0"],
  [55, "sz?c"],
  [59, "LFkvxy"],
  [62, "PTYaoe"],
  [64, "ESbdghnpqu0123456789"],
  [69, "KAVBRXZ"],
  [75, "CUHN"],
  [79, "DG&OQ"],
  [84, "w\u221e#+<=>\u2212\u00d7"],
  [97, "Mm%\u00bd\u00bc\u00be"],
  [99, "W"],
];

const SYSTEMS = ["metric", "imperial", "both"] as const;

/** A character that the table lacks counts as the widest. */
const WIDEST = 100;
/** Bold is at most this much wider, character for character. */
const BOLD = 1.13;

const WIDTHS: ReadonlyMap<string, number> = new Map(
  REGULAR.flatMap(([width, chars]) => [...chars].map((char) => [char, width] as const)),
);

/** Largest width of a text in CSS pixels at a font size in CSS pixels, whichever units its reader chooses. */
export function textWidth(text: string, size: number, bold = false): number {
  if (hasUnitChoice(text)) return Math.max(...SYSTEMS.map((system) => textWidth(settled(text, system), size, bold)));
  let hundredths = 0;
  for (const char of text) hundredths += WIDTHS.get(char) ?? WIDEST;
  return (hundredths / 100) * size * (bold ? BOLD : 1);
}

/** Font size of a text by its tone classes: what the style sheet gives `svg text` and its variants. */
export function toneSize(tone: string): number {
  const classes = tone.split(" ");
  if (classes.includes("t-cam")) return 20;
  if (classes.includes("t-inf")) return 17;
  return ["t-fine", "t-ring", "t-mark"].some((tone) => classes.includes(tone)) ? 12 : 12.5;
}

/** Width of a text as a drawing sets it. */
export function toneWidth(text: string, tone: string): number {
  const classes = tone.split(" ");
  return textWidth(
    text,
    toneSize(tone),
    ["t-b", "t-ring", "t-mark"].some((bold) => classes.includes(bold)),
  );
}
