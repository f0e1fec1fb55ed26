import { metresIn, readDistance, readWrittenDistance, type WrittenDistance, withoutUnit } from "./distance.ts";
import { plainCharacters, type Reading, read, refuse } from "./reading.ts";
import type { FocusSpan } from "./spans.ts";

/**
 * A focus distance or a range in the order written, in dioptres from the image plane (infinity is 0): `1.9 m`, `3.2-1.6 m`,
 * `12 to 5.5 ft`, `6'-9' 6"`, `2 m - inf`. A unit at the end serves both ends. Refused as `readDistance` refuses.
 *
 * @example readFocus("4-2 m") // { ok: true, value: { fromDioptres: 0.25, toDioptres: 0.5 } }
 */
export function readFocus(text: string): Reading<FocusSpan> {
  const one = readWrittenDistance(text);
  if (one.ok && one.value.kind === "metres") return span(one.value.metres, one.value.metres);
  if (one.ok && one.value.kind === "bare") return withoutUnit(text.trim(), one.value.number);
  const written = plainCharacters(text);
  let refusal: { readonly ok: false; readonly problem: string; readonly hint: string } | null = null;
  for (const match of written.matchAll(/\s+to\s+|\s*-\s*/g)) {
    const left = readWrittenDistance(written.slice(0, match.index));
    const right = readWrittenDistance(written.slice(match.index + match[0].length));
    if (!left.ok || !right.ok) continue;
    const both = ends(text.trim(), left.value, right.value);
    if (both.ok) return both;
    refusal ??= both;
  }
  if (refusal !== null) return refusal;
  const single = readDistance(text);
  return single.ok ? span(single.value, single.value) : single;
}

function ends(written: string, left: WrittenDistance, right: WrittenDistance): Reading<FocusSpan> {
  if (left.kind === "bare" && right.kind === "bare") {
    const feet = `${metresIn(left.number, "ft").toFixed(2)} to ${metresIn(right.number, "ft").toFixed(2)} m`;
    return refuse(
      `a range of distances without a unit: "${written}"`,
      `Write "${written} m", or "${written} ft" (which is ${feet}).`,
    );
  }
  const from = inUnitOf(left, right);
  const to = inUnitOf(right, left);
  if (from === null || to === null) {
    return refuse(`one end of "${written}" has no unit`, "Write the unit at both ends, or once after the last number: 3.2-1.6 m.");
  }
  return span(from, to);
}

/** Metres of one end; a bare number takes the unit of the other end. */
function inUnitOf(end: WrittenDistance, other: WrittenDistance): number | null {
  if (end.kind === "metres") return end.metres;
  return other.kind === "metres" && other.unit !== null ? metresIn(end.number, other.unit) : null;
}

function span(fromMetres: number, toMetres: number): Reading<FocusSpan> {
  return read({ fromDioptres: 1 / fromMetres, toDioptres: 1 / toMetres });
}
