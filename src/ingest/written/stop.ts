import { exactStop, FULL_STOPS, inBetweenStop, splitStop } from "../../optics/exposure.ts";
import { plainCharacters, type Reading, read, refuse } from "./reading.ts";
import type { StopSpan } from "./spans.ts";

type Kind = "t" | "f" | null;
interface OneStop {
  readonly value: number;
  readonly kind: Kind;
}

const WORD_FRACTIONS: readonly (readonly [RegExp, number])[] = [
  [/^(?:a|one)[ -](?:half|1\/2)$/, 1 / 2],
  [/^(?:a|one)[ -]third$/, 1 / 3],
  [/^two[ -]thirds$/, 2 / 3],
  [/^(?:a|one)[ -]quarter$/, 1 / 4],
  [/^three[ -]quarters$/, 3 / 4],
];
const FRACTIONS: Readonly<Record<string, number>> = { "1/4": 1 / 4, "1/3": 1 / 3, "1/2": 1 / 2, "2/3": 2 / 3, "3/4": 3 / 4 };
const WIDEST = 0.5;
const DEEPEST = 64;

/**
 * A stop or a range of stops as people write them, in the order written; labels count as their exact series value.
 * `2.8`, `T4`, `f/2.8`; a fraction of a stop after a full stop: `2.8 1/3`, `T4½`, `5.6-1/2`, `T2.8+1/3`, `5.6 and a half`;
 * `2.8/4` or `2.8-4 split`: half way between neighbours; a range: `2.8-4`, `T2.8 to T4`.
 * Refused: `4+` (direction unclear), a fraction after a stop that is not full, a decimal comma, numbers that are no stop.
 *
 * @example readStop("5.6 and a half") // { ok: true, value: { from: 6.727..., to: 6.727..., kind: null } }
 */
export function readStop(text: string): Reading<StopSpan> {
  const written = plainCharacters(text);
  const one = readOne(written);
  if (one.ok) return read({ from: one.value.value, to: one.value.value, kind: one.value.kind });
  for (const [left, right] of rangeParts(written)) {
    const from = readOne(left);
    const to = readOne(right);
    if (!from.ok || !to.ok) continue;
    if (from.value.kind !== null && to.value.kind !== null && from.value.kind !== to.value.kind) {
      return refuse(
        `one end of "${text.trim()}" is a T-stop, the other an f-stop`,
        "Write both ends as T-stops or both as f-stops.",
      );
    }
    return read({ from: from.value.value, to: to.value.value, kind: from.value.kind ?? to.value.kind });
  }
  return refuse(one.problem.replace(written, text.trim()), one.hint);
}

/** Ways to part a range at `to` or at a dash, first the word. */
function rangeParts(written: string): (readonly [string, string])[] {
  const parts: (readonly [string, string])[] = [];
  for (const match of written.matchAll(/ to |\s*-\s*/g)) {
    parts.push([written.slice(0, match.index).trim(), written.slice(match.index + match[0].length).trim()]);
  }
  return parts;
}

function readOne(written: string): Reading<OneStop> {
  const match = /^(t|f\s*\/|f)?\s*(\d+(?:\.\d+)?|\.\d+)(.*)$/i.exec(written.replace(/^\u0192/, "f"));
  if (match === null) return refuse(`not a stop: "${written}"`, 'Write a stop such as 2.8, T4, "2.8 1/3" or 2.8/4.');
  const kind: Kind = match[1] === undefined ? null : match[1].toLowerCase().startsWith("t") ? "t" : "f";
  const label = Number(match[2]);
  const rest = (match[3] as string).trim();
  if (rest === "") return wholeStop(written, label, kind);
  const split = /^(?:\/\s*(?:t|f\/?)?\s*(\d+(?:\.\d+)?)(?: split)?|-\s*(\d+(?:\.\d+)?) split)$/i.exec(rest);
  if (split) return splitOf(written, label, Number(split[1] ?? split[2]), kind);
  const fraction = fractionOf(rest);
  if (fraction !== null) return inBetween(written, label, fraction, kind);
  return refuse(`not a stop: "${written}"`, restHint(label, rest));
}

function wholeStop(written: string, label: number, kind: Kind): Reading<OneStop> {
  if (label >= WIDEST && label <= DEEPEST && !(label > 45 && label < DEEPEST)) return read({ value: exactStop(label), kind });
  const tenth = label / 10;
  const meant = FULL_STOPS.includes(tenth) ? ` Is it ${tenth}?` : "";
  return refuse(`no lens has this stop: "${written}"`, `Stops are from ${WIDEST} to ${DEEPEST}.${meant}`);
}

function splitOf(written: string, a: number, b: number, kind: Kind): Reading<OneStop> {
  const value = splitStop(Math.min(a, b), Math.max(a, b));
  if (value !== null) return read({ value, kind });
  return refuse(
    `"${written}" is not half way between neighbours`,
    `${a} and ${b} are not neighbours of the full series (1 1.4 2 2.8 4 5.6 8 11 16 22 32). For a range write ${a}-${b}.`,
  );
}

function inBetween(written: string, label: number, fraction: number, kind: Kind): Reading<OneStop> {
  const value = inBetweenStop(label, fraction);
  if (value !== null) return read({ value, kind });
  return refuse(
    `"${written}" has a fraction after a stop that is not a full stop`,
    "Fractions of a stop follow a full stop (1 1.4 2 2.8 4 5.6 8 11 16 22 32), such as 4 1/3.",
  );
}

function fractionOf(rest: string): number | null {
  const plain = /^(?:[-+ ]\s*)?(\d\/\d)$/.exec(rest);
  if (plain) return FRACTIONS[plain[1] as string] ?? null;
  const words = /^(?:and|\+|-)\s+(.+)$/i.exec(rest);
  if (words === null) return null;
  const said = (words[1] as string).toLowerCase();
  return (
    (Object.hasOwn(FRACTIONS, said) ? FRACTIONS[said] : undefined) ??
    WORD_FRACTIONS.find(([pattern]) => pattern.test(said))?.[1] ??
    null
  );
}

function restHint(label: number, rest: string): string {
  if (/^[+-]$/.test(rest)) return `Say which way and how far: "${label} 1/3" is a third of a stop closed down.`;
  if (/^,\d+$/.test(rest)) return `Write ${label}.${rest.slice(1)} with a point, or ${label}-${rest.slice(1)} for a range.`;
  if (/^\.\d+$/.test(rest)) return "There are two decimal points.";
  if (/open|over|under/i.test(rest)) return 'Write the stop closed down from the full stop before it, such as "2 1/2".';
  return 'Write a stop such as 2.8, T4, "2.8 1/3", 2.8/4, or a range 2.8-4.';
}
