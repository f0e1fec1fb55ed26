/**
 * The distance axis: y grows with 1/distance, so that equal heights are equal amounts of focus. Infinity is on top.
 */

/** Nearest distances in metres that a scale may end at, far first. The last ones are for macro work. */
const FLOORS_M = [4, 2, 1.4, 1, 0.7, 0.5, 0.35, 0.25, 0.18, 0.12, 0.09, 0.06] as const;

const METRES_PER_FOOT = 0.3048;
/** Closest that two ticks may stand, in pixels. */
const TICK_GAP = 20;

/** Round distances, roundest first; a tick of a later group only stands where an earlier one leaves room. */
const METRE_GROUPS: readonly (readonly number[])[] = [
  [10, 5, 2, 1, 0.5, 0.2, 0.1],
  [3, 20, 1.5, 0.7, 0.3, 0.15, 50],
  [4, 0.8, 0.6, 0.4, 0.25, 0.12, 100],
  [6, 2.5, 1.75, 1.2, 0.9, 0.35, 0.08, 30],
  [8, 7, 1.25, 0.45, 0.18, 0.07, 15],
];
const FOOT_GROUPS: readonly (readonly number[])[] = [
  [30, 10, 5, 3, 2, 1, 0.5],
  [15, 6, 4, 8, 60, 1.5, 0.75],
  [20, 7, 2.5, 12, 100, 1.25, 4 / 12],
  [40, 9, 3.5, 4.5, 1.75, 8 / 12, 5 / 12],
];

export interface DistanceScale {
  readonly infinityY: number;
  readonly floorY: number;
  /** Largest dioptres on the scale. */
  readonly floorDioptres: number;
  readonly pixelsPerDioptre: number;
  /** y of dioptres, cut at infinity and at the floor. */
  y(dioptres: number): number;
}

export interface DistanceTick {
  readonly dioptres: number;
  readonly text: string;
}

/** A scale from infinity (0 dioptres) at `infinityY` down to `floorDioptres` at `floorY`. */
export function distanceScale(infinityY: number, floorY: number, floorDioptres: number): DistanceScale {
  const pixelsPerDioptre = (floorY - infinityY) / floorDioptres;
  return {
    infinityY,
    floorY,
    floorDioptres,
    pixelsPerDioptre,
    y: (dioptres) => Math.min(floorY, Math.max(infinityY, infinityY + dioptres * pixelsPerDioptre)),
  };
}

/** The shallowest floor, in dioptres, that holds a distance given in dioptres. */
export function floorFor(nearestDioptres: number): number {
  const floor = FLOORS_M.find((m) => nearestDioptres <= 1 / m + 1e-9) ?? FLOORS_M[FLOORS_M.length - 1] ?? 1;
  return 1 / floor;
}

/** Round metre ticks, infinity first, at least 20 pixels apart. */
export function metreTicks(scale: DistanceScale): readonly DistanceTick[] {
  return ticks(
    scale,
    METRE_GROUPS.map((group) => group.map((m) => ({ dioptres: 1 / m, text: String(m) }))),
  );
}

/** Round foot ticks, infinity first, at least 20 pixels apart: "10" is ten feet, `2' 6"` and `9"` say their inches. */
export function footTicks(scale: DistanceScale): readonly DistanceTick[] {
  return ticks(
    scale,
    FOOT_GROUPS.map((group) => group.map((ft) => ({ dioptres: 1 / (ft * METRES_PER_FOOT), text: feetText(ft) }))),
  );
}

function feetText(feet: number): string {
  const inches = Math.round(feet * 12);
  const whole = Math.floor(inches / 12);
  if (inches % 12 === 0) return String(whole);
  return whole === 0 ? `${inches}"` : `${whole}' ${inches % 12}"`;
}

function ticks(scale: DistanceScale, groups: readonly (readonly DistanceTick[])[]): readonly DistanceTick[] {
  const chosen: DistanceTick[] = [{ dioptres: 0, text: "\u221e" }];
  for (const group of groups) {
    for (const tick of group) {
      if (tick.dioptres > scale.floorDioptres + 1e-9) continue;
      const clear = chosen.every((other) => Math.abs(other.dioptres - tick.dioptres) * scale.pixelsPerDioptre >= TICK_GAP);
      if (clear) chosen.push(tick);
    }
  }
  return chosen.sort((a, b) => a.dioptres - b.dioptres);
}

/** Tenths of a dioptre between two labels of the dioptre border, so that labels are at least 20 pixels apart. */
export function dioptreLabelStep(scale: DistanceScale): number {
  return [1, 2, 5, 10, 20, 50].find((step) => (step / 10) * scale.pixelsPerDioptre >= TICK_GAP) ?? 100;
}
