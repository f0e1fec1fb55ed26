/** Where a figure comes from. The word is shown beside the figure on every page. */
export type Source = "logged" | "noted" | "kit" | "calculated";

/**
 * Units of plain numbers are said in the name (`focusMm`, `tStop`, `durationFrames`). Inside the program:
 * lengths of optics in mm, distances of focus in dioptres (1/m, infinity = 0), stops exact, time in whole frames.
 */
export interface Figure<T> {
  readonly value: T;
  readonly source: Source;
  /** Id of the formula for calculated figures (see the formula registry). */
  readonly from?: string;
}

/** A distance that may be infinity: metres, or the word that machine outputs use. */
export type DistanceM = number | "inf";

/** Dioptres (1/m) to metres; 0 and below (rounding) is infinity. */
export function metresFromDioptres(dioptres: number): DistanceM {
  return dioptres <= 1e-12 ? "inf" : 1 / dioptres;
}

/** Metres to dioptres; infinity is 0. */
export function dioptresFromMetres(metres: DistanceM): number {
  return metres === "inf" || metres === Number.POSITIVE_INFINITY ? 0 : 1 / metres;
}

/** Number from a distance, with infinity as `Infinity`. */
export function numberFromDistance(metres: DistanceM): number {
  return metres === "inf" ? Number.POSITIVE_INFINITY : metres;
}

/** Distance from a number of metres that may be `Infinity`. */
export function distanceFromNumber(metres: number): DistanceM {
  return Number.isFinite(metres) ? metres : "inf";
}
