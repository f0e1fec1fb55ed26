/**
 * Stop numbers engraved on lenses are rounded; what they mean is a power of the square root of two. A label of the series
 * counts as its exact value, so that 2.8 to 4 is one stop and not 1.03.
 *
 * @source Full and third series: Wikipedia "f-number". Half series: tables on kameraarkasi.org and photographytips.com.
 */

/** Labels of whole stops; the index is the number of stops from 1. */
export const FULL_STOPS: readonly number[] = Object.freeze([1, 1.4, 2, 2.8, 4, 5.6, 8, 11, 16, 22, 32]);

/** Labels one and two thirds of a stop past each whole stop. 1.2 and 13 are also written for halves: here they are thirds. */
const THIRDS: readonly (readonly [number, number])[] = [
  [1.1, 1.2],
  [1.6, 1.8],
  [2.2, 2.5],
  [3.2, 3.5],
  [4.5, 5],
  [6.3, 7.1],
  [9, 10],
  [13, 14],
  [18, 20],
  [25, 29],
];

/** Labels half a stop past each whole stop from 1.4 on, with the two ways of rounding. */
const HALVES: readonly (readonly number[])[] = [
  [],
  [1.7],
  [2.4],
  [3.3, 3.4],
  [4.8],
  [6.7, 6.8],
  [9.5, 9.6],
  [13.6],
  [19],
  [27],
  [38],
];

/** Stops from 1 of every label; thirds are kept as counts of thirds so that their exact values are the same numbers everywhere. */
const STOPS_OF_LABEL: ReadonlyMap<number, number> = new Map([
  ...FULL_STOPS.map((label, k): [number, number] => [label, k]),
  ...THIRDS.flatMap(([one, two], k): [number, number][] => [
    [one, (3 * k + 1) / 3],
    [two, (3 * k + 2) / 3],
  ]),
  ...HALVES.flatMap((labels, k) => labels.map((label): [number, number] => [label, k + 0.5])),
]);

/** Labels of the third series in order, each with its exact value. */
export const THIRD_STOPS: readonly { readonly label: number; readonly exact: number }[] = Object.freeze(
  FULL_STOPS.flatMap((label, k) => [label, ...(THIRDS[k] ?? [])]).map((label, k) =>
    Object.freeze({ label, exact: stopValue(k / 3) }),
  ),
);

/** The stop number so many stops down from 1: sqrt(2)^stops. Two stops are exactly a factor of two, to the last bit. */
export function stopValue(stops: number): number {
  const doublings = Math.floor(stops / 2);
  return 2 ** doublings * 2 ** (stops / 2 - doublings);
}

/** True when the number is a label of the full, third or half series. */
export function isStopLabel(label: number): boolean {
  return STOPS_OF_LABEL.has(label);
}

/**
 * Exact value of a stop label (2.8 is 2.8284...); any other number is returned as it is (2.1 is 2.1).
 *
 * @example exactStop(5.6) // 5.656854249492381
 */
export function exactStop(label: number): number {
  const stops = STOPS_OF_LABEL.get(label);
  return stops === undefined ? label : stopValue(stops);
}

/** A whole stop closed down by a fraction of a stop, such as `5.6 1/2`: 6.727. `null` when the label is no whole stop. */
export function inBetweenStop(fullLabel: number, fractionOfStop: number): number | null {
  const stops = FULL_STOPS.indexOf(fullLabel);
  return stops < 0 ? null : stopValue(stops + fractionOfStop);
}

/** Half way between two neighbouring whole stops, as `2.8/4` is written. `null` when they are not neighbours of the full series. */
export function splitStop(wider: number, deeper: number): number | null {
  const stops = FULL_STOPS.indexOf(wider);
  return stops >= 0 && FULL_STOPS[stops + 1] === deeper ? stopValue(stops + 0.5) : null;
}
