/** What the words and the unit of a header mean. */
import { nearestNames } from "../../core/nearest-name.ts";
import { LOG_FILE_COLUMNS } from "../../csv/columns.ts";

// biome-ignore format: a table
const UNIT_WORDS: Readonly<Record<string, string>> = {
  m: "m", metre: "m", metres: "m", meter: "m", meters: "m", mm: "mm", cm: "cm", ft: "ft", feet: "ft", foot: "ft", "'": "ft",
  in: "in", inch: "in", inches: "in", '"': "in", dpt: "dpt", diopter: "dpt", diopters: "dpt", dioptre: "dpt", dioptres: "dpt",
  "1/m": "dpt", s: "s", sec: "s", seconds: "s", ms: "ms", deg: "deg", degrees: "deg", "\u00b0": "deg",
};

/** Header words to what they mean, the first that fits. */
export const WORDS: readonly (readonly [RegExp, string])[] = [
  [/\b(time ?code|tc|smpte|ltc)\b/, "timecode"],
  [/\bhyper ?focal\b/, "hyperfocal"],
  [/\b(focal( ?length)?|fl|efl|brennweite|focale)\b/, "focal"],
  [/\b(near|far|dof|depth)\b/, ""],
  [/\b(focus ?dist(ance)?|focus|dist(ance)?|fd|fokus|entfernung)\b/, "focus"],
  [/\b(t ?stop|t ?number|tno|iris|t|blende)\b/, "t"],
  [/\b(f ?stop|f ?number|fno|aperture|f)\b/, "f"],
  [/\bzoom\b/, "zoom"],
  [/\b(entrance ?pupil|pupil)\b/, "pupil"],
  [/\bsqueeze\b/, "squeeze"],
  [/\b(pan|heading|yaw)\b/, "pan"],
  [/\b(tilt|pitch)\b/, "tilt"],
  [/\b(height|elevation)\b/, "height"],
  [/\b(cam|camera)( ?(id|name|letter|index))?\b/, "camera"],
  [/\b(clip|file)( ?name)?\b/, "clip"],
  [/\bslate\b/, "slate"],
  [/\btake\b/, "take"],
  [/\blens( ?(id|name|model|type))?\b/, "lens"],
  [/\b(frame|frm)( ?(no|num|number|count|index))?\b/, "frame"],
  [/\b(time|elapsed|seconds)\b/, "time"],
  [/\broll\b/, "roll"],
];
/** Words of a reading that is a count. */
export const ENCODER = /\b(enc|encoder|raw|counts?|ticks?|motor)\b/;

/** Columns by what header words mean; focus has its unit behind it. */
const COLUMN_OF: Readonly<Record<string, string>> = {
  hyperfocal: "hyperfocal_m",
  focal: "focal_mm",
  pupil: "entrance_pupil_mm",
  pan: "pan_deg",
  tilt: "tilt_deg",
  roll: "roll_deg",
  height: "height_m",
  time: "time_s",
};
const NAMES = LOG_FILE_COLUMNS.map((spec) => spec.name);

/** The column of a log that a header that is none of the names most likely means; `null` when nothing is near. */
export function meantColumn(header: string): string | null {
  const { words, unit } = headerParts(header);
  const rule = WORDS.find(([pattern]) => pattern.exec(words)?.[0] === words);
  const meaning = rule?.[1] ?? "";
  if (meaning === "focus") return `focus_${unit === "" || unit === "s" || unit === "ms" || unit === "deg" ? "m" : unit}`;
  const column = COLUMN_OF[meaning] ?? meaning;
  if (NAMES.includes(column)) return column;
  // One letter more or less makes any short name another short one.
  return words.length < 3
    ? null
    : (nearestNames(
        header,
        NAMES.filter((name) => name.length > 2),
      )[0] ?? null);
}

/** Words of a header in lower case with single spaces, and its unit: in brackets, or as its last word. */
export function headerParts(header: string): { readonly words: string; readonly unit: string } {
  const lower = header
    .trim()
    .replace(/([a-z])([A-Z])/g, "$1 $2")
    .toLowerCase();
  const bracket = /[[({<]\s*([^\])}>]*?)\s*[\])}>]/.exec(lower);
  const plain = lower
    .replace(/[[({<][^\])}>]*[\])}>]?/g, " ")
    .replace(/[^a-z0-9"'\u00b0/]+/g, " ")
    .trim();
  const last = plain.split(" ").at(-1) ?? "";
  const inBracket = unitOf(bracket?.[1] ?? "");
  if (inBracket !== "") return { words: plain, unit: inBracket };
  const suffix = plain.includes(" ") ? unitOf(last) : "";
  return { words: suffix === "" ? plain : plain.slice(0, -last.length).trim(), unit: suffix };
}

function unitOf(word: string): string {
  return Object.hasOwn(UNIT_WORDS, word) ? (UNIT_WORDS[word] as string) : "";
}
