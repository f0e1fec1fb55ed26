/** The plates of a set-up: which hero a plate was made for, which plates a hero has, and how two of them differ. */
import { sameName } from "../model/address.ts";
import { heroesFor, type PlateMatch, plateMatch } from "../model/plate-match.ts";
import type { Take } from "../model/types.ts";
import type { TakeSummary } from "./types.ts";

/** A plate against its hero. Differences are plate less hero; `null` when one of the two does not say it. */
export interface PlateDifference {
  readonly match: PlateMatch;
  readonly sameSerial: boolean | null;
  readonly sameMode: boolean | null;
  readonly heightM: number | null;
  readonly tiltDeg: number | null;
  readonly rollDeg: number | null;
  readonly sameFilters: boolean | null;
  readonly ndStops: number | null;
  readonly shutterDeg: number | null;
  /** Distortion at the corner of the two middle logged frames, in percent. */
  readonly cornerPercent: number | null;
}

export interface PlateMates {
  /** Whether the take is the hero or was made for one. */
  readonly role: "hero" | "plate";
  /** Slate of the hero. */
  readonly slate: string;
  /** The hero of a plate, or the clean plate of a hero, on the same camera; `null` without one on this day. */
  readonly against: TakeSummary | null;
  readonly difference: PlateDifference | null;
  /** The set-up's other plates and heroes, in shooting order. */
  readonly others: readonly TakeSummary[];
}

/** Slate of the hero that a plate belongs to; its own slate for a hero and for a plate that names none. */
function setUpSlate(take: Take): string {
  return take.plateOf ?? take.slate;
}

/**
 * The mates of a take among the takes of its day; `null` for a take that is no plate and that no plate names. A plate is set
 * against the first hero that it fits by the show's stop limit, else against the first: circled before good before any.
 */
export function plateMates(t: TakeSummary, takes: readonly TakeSummary[], stopLimit: number): PlateMates | null {
  const { take } = t;
  const isPlate = take.plate !== null && take.plate !== "hero";
  const slate = isPlate ? setUpSlate(take) : take.slate;
  const setUp = takes.filter((other) => sameName(setUpSlate(other.take)) === sameName(slate));
  const madeFor = (other: TakeSummary): boolean => other.take.plate !== null && other.take.plate !== "hero";
  if (take.plate === null && !setUp.some(madeFor)) return null;
  const of = (found: readonly Take[]): TakeSummary[] => found.flatMap((one) => setUp.find((other) => other.take === one) ?? []);
  const candidates = isPlate ? setUp.filter((other) => !madeFor(other)) : setUp.filter((other) => other.take.plate === "clean");
  const mates = of(
    heroesFor(
      take,
      candidates.map((other) => other.take),
    ),
  );
  const against = (isPlate ? mates.find((hero) => fits(plateMatch(take, hero.take), stopLimit)) : null) ?? mates[0] ?? null;
  return {
    role: isPlate ? "plate" : "hero",
    slate,
    against,
    difference: against === null ? null : isPlate ? plateDifference(t, against) : plateDifference(against, t),
    others: setUp.filter((other) => other !== t && other !== against && (other.take.plate !== null || isPlate)),
  };
}

function fits({ sameLens, focalDiffers, stopsApart, dioptresApart, dioptresAllowed }: PlateMatch, stopLimit: number): boolean {
  const focus = dioptresApart === null || dioptresAllowed === null || dioptresApart <= dioptresAllowed;
  return sameLens !== false && focalDiffers !== true && (stopsApart ?? 0) <= stopLimit && focus;
}

/** How a plate differs from its hero. */
function plateDifference(plate: TakeSummary, hero: TakeSummary): PlateDifference {
  return {
    match: plateMatch(plate.take, hero.take),
    sameSerial: same(plate.take.lens?.serial, hero.take.lens?.serial),
    sameMode: same(plate.take.sensorMode?.sensorMode, hero.take.sensorMode?.sensorMode),
    heightM: less(plate.cameraHeightM?.value, hero.cameraHeightM?.value),
    tiltDeg: less(plate.tiltDeg?.value, hero.tiltDeg?.value),
    rollDeg: less(plate.rollDeg?.value, hero.rollDeg?.value),
    sameFilters: same(plate.filters, hero.filters),
    ndStops: less(plate.ndStops, hero.ndStops),
    shutterDeg: less(plate.shutterDeg, hero.shutterDeg),
    cornerPercent: less(plate.distortionPercent?.corner, hero.distortionPercent?.corner),
  };
}

function less(a: number | null | undefined, b: number | null | undefined): number | null {
  return a === null || a === undefined || b === null || b === undefined ? null : a - b;
}

function same(a: string | null | undefined, b: string | null | undefined): boolean | null {
  return a === null || a === undefined || b === null || b === undefined ? null : sameName(a) === sameName(b);
}
