/** Neutral density within a set-up: noted for some takes only, or another amount while nothing else changed. */
import { CHECK } from "../../core/findings/check.ts";
import { sameName } from "../address.ts";
import type { Take } from "../types.ts";
import type { DayContext } from "./day.ts";
import { round } from "./words.ts";

/** Filters written in the other column. */
const ND_AMONG_FILTERS = /(?:^|[^a-z])(?:i?rnd|nd|neutral)(?![a-z])/i;

export function checkNeutralDensity(context: DayContext): void {
  const setUps = new Map<string, Take[]>();
  for (const take of context.takes) {
    if (take.note === null) continue;
    const key = `${sameName(take.slate)}\n${sameName(take.camera)}`;
    setUps.set(key, [...(setUps.get(key) ?? []), take]);
  }
  for (const takes of setUps.values()) {
    absent(takes, context);
    changed(takes, context);
  }
}

/** One finding a set-up, at its first take without ND. */
function absent(takes: readonly Take[], { tell }: DayContext): void {
  const filtered = takes.find((take) => (take.note?.ndStops?.value ?? 0) > 0);
  const bare = takes.find((take) => take.note?.ndStops === null && !ND_AMONG_FILTERS.test(take.note.filters?.value ?? ""));
  if (filtered === undefined || bare === undefined) return;
  tell(CHECK.ndAbsent, {
    place: bare.note?.place ?? null,
    field: "nd",
    message: `Take ${bare.take} of slate ${bare.slate} on camera ${bare.camera} has no ND in the notes, and take ${filtered.take} has ${filtered.note?.ndStops?.text ?? ""}.`,
    hint: `Write the ND if it was on (the other take is line ${filtered.note?.place.line ?? "?"}), or none if it was taken out.`,
    take: bare.address,
  });
}

/** One finding a set-up: the first take with other ND and the exposure of the one before. */
function changed(takes: readonly Take[], { show, tell }: DayContext): void {
  let before: Take | null = null;
  for (const take of takes) {
    const own = take.note?.ndStops ?? null;
    const other = before?.note?.ndStops ?? null;
    if (
      own !== null &&
      other !== null &&
      before !== null &&
      sameExposure(take, before) &&
      Math.abs(own.value - other.value) > show.limits.ndDifferenceStops
    ) {
      tell(CHECK.ndChanges, {
        place: own.place,
        field: "nd",
        message: `The ND is ${own.text} here and ${other.text} in take ${before.take} of the same set-up, ${round(Math.abs(own.value - other.value))} stops apart, and stop, EI and shutter in the notes are the same.`,
        hint: `If the light changed, nothing needs to be done. Else correct one of them (the other is line ${before.note?.place.line ?? "?"}).`,
        take: take.address,
      });
      return;
    }
    if (own !== null) before = take;
  }
}

/** Whether two notes give a stop, and the same stop, EI, shutter and speed. */
function sameExposure(one: Take, other: Take): boolean {
  const words = ({ note, captureFps }: Take): string =>
    [note?.stop?.text ?? "", note?.ei?.value ?? "", note?.shutter?.text ?? "", captureFps].join("\n");
  return one.note?.stop != null && words(one) === words(other);
}
