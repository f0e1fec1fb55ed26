/** The rows that search reads: written by the builder as a script, read by the browser. Plain lists keep the file small. */

/** Name of the global that `search-rows.js` calls with the rows, once it is loaded. */
export const SEARCH_GLOBAL = "lensDaybookSearch";

/** Date, name as the pages write it ("Day 9, 6 October"), number of the day. */
export type SearchDay = readonly [date: string, name: string, day: number | null];

/** Id and name as the pages write it ("Kelp 26"). */
export type SearchLens = readonly [id: string, name: string];

/** A take of one camera. Texts may be empty where nothing is recorded. */
export type SearchTake = readonly [
  day: number,
  address: string,
  slate: string,
  take: string,
  camera: string,
  scene: string,
  roll: string,
  clip: string,
  /** First frame, and the first frame after the take. */
  timecodeIn: string,
  timecodeOut: string,
  /** Place in the list of lenses; -1 where none is recorded. */
  lens: number,
  focalMinMm: number | null,
  focalMaxMm: number | null,
  widestT: number | null,
  deepestT: number | null,
  /** Focal length and stop as the pages write them. */
  focal: string,
  stop: string,
  circled: 0 | 1,
  /** Status and kind of plate, in words: "good, clean of 14B". */
  standing: string,
  plate: string,
  plateOf: string,
  remarks: string,
  /** Number of the take in the show: the same for the clips of all its cameras. */
  number: number,
];

/** Where each of them stands in it. */
export const AT = {
  day: 0,
  address: 1,
  slate: 2,
  take: 3,
  camera: 4,
  scene: 5,
  roll: 6,
  clip: 7,
  timecodeIn: 8,
  timecodeOut: 9,
  lens: 10,
  focalMinMm: 11,
  focalMaxMm: 12,
  widestT: 13,
  deepestT: 14,
  focal: 15,
  stop: 16,
  circled: 17,
  standing: 18,
  plate: 19,
  plateOf: 20,
  remarks: 21,
  number: 22,
} as const;

export interface SearchRows {
  /** Path of a take's page below the report's folder, with `{date}` and `{address}` to put in. */
  readonly path: string;
  readonly days: readonly SearchDay[];
  readonly lenses: readonly SearchLens[];
  readonly takes: readonly SearchTake[];
}
