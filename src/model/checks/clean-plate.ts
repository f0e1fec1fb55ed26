/** Plates: a slate that a plate belongs to, and a clean plate in the lens state of its hero. */
import { CHECK } from "../../core/findings/check.ts";
import { didYouMean } from "../../core/nearest-name.ts";
import { sameName } from "../address.ts";
import { heroesFor, plateMatch } from "../plate-match.ts";
import type { Range } from "../range.ts";
import type { Take } from "../types.ts";
import type { DayContext } from "./day.ts";
import { metres, round } from "./words.ts";

export function checkCleanPlates(context: DayContext): void {
  const { takes, tell } = context;
  for (const take of takes) {
    if (take.plateOf === null) continue;
    const heroes = takes.filter((other) => sameName(other.slate) === sameName(take.plateOf as string));
    if (heroes.length === 0) {
      tell(CHECK.plateOfNobody, {
        place: take.note?.plateOf?.place ?? null,
        field: "plate_of",
        message: `No take of this day has slate ${take.plateOf}, which this plate belongs to.`,
        hint: `Correct plate_of if the slate is wrong.${didYouMean(
          take.plateOf,
          takes.map((other) => other.slate),
        )} If its hero was shot on another day, nothing needs to be done.`,
        take: take.address,
      });
    } else if (take.plate === "clean") compare(take, heroes, context);
  }
}

/** The circled takes of the hero on this camera, else the good ones, else all: the plate has to fit one of them. */
function compare(clean: Take, all: readonly Take[], { show, tell }: DayContext): void {
  const heroes = heroesFor(clean, all);
  const problems = heroes.map((hero) => differences(clean, hero, show.limits.stopDifference));
  const [first] = problems;
  if (first === undefined || problems.some((list) => list.length === 0)) return;
  const hero = heroes[0] as Take;
  tell(CHECK.cleanPlateDiffers, {
    place: clean.note?.plate?.place ?? clean.note?.place ?? null,
    field: "plate",
    message: `This clean plate differs from its hero ${hero.address}: ${first.join("; ")}.`,
    hint: `A clean plate is shot with the hero's lens, focal length, stop and focus. Look at both takes (hero: line ${hero.note?.place.line ?? "?"}), or tell VFX.`,
    take: clean.address,
  });
}

function differences(clean: Take, hero: Take, stopLimit: number): readonly string[] {
  const match = plateMatch(clean, hero);
  if (match.sameLens === false) return [`lens ${clean.lensId} instead of ${hero.lensId}`];
  const { plate: a, hero: b } = match;
  const found: string[] = [];
  if (match.focalDiffers === true && a.focalMm !== null && b.focalMm !== null) {
    found.push(`${rangeText(a.focalMm, " mm")} instead of ${rangeText(b.focalMm, " mm")}`);
  }
  if ((match.stopsApart ?? 0) > stopLimit && a.tStop !== null && b.tStop !== null) {
    found.push(`T${rangeText(a.tStop, "")} instead of T${rangeText(b.tStop, "")}`);
  }
  const { dioptresApart: apart, dioptresAllowed: allowed } = match;
  if (apart !== null && allowed !== null && apart > allowed && a.dioptres !== null && b.dioptres !== null) {
    found.push(`focus ${distances(a.dioptres)} instead of ${distances(b.dioptres)}, beyond the depth of field`);
  }
  return found;
}

function rangeText({ low, high }: Range, unit: string): string {
  return round(low) === round(high) ? `${round(low)}${unit}` : `${round(low)} to ${round(high)}${unit}`;
}

function distances({ low, high }: Range): string {
  return metres(low) === metres(high) ? metres(low) : `${metres(low)} to ${metres(high)}`;
}
