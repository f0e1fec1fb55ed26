/** What a reader sees where there is nothing: a word, never a blank, a zero or a dash. */

/** Nobody wrote it down. */
export const NOT_RECORDED = "not recorded";
/** The log does not have it. */
export const NOT_LOGGED = "not logged";
/** It could not be worked out from what there is. */
export const NOT_CALCULATED = "not calculated";

/** The text of a value, or the word for its absence. */
export function orNotRecorded<T>(value: T | null | undefined, write: (value: T) => string = String): string {
  return value === null || value === undefined ? NOT_RECORDED : write(value);
}

/** The text of a logged number, or the word for its absence; NaN is absent. */
export function orNotLogged(value: number | null | undefined, write: (value: number) => string = String): string {
  return value === null || value === undefined || Number.isNaN(value) ? NOT_LOGGED : write(value);
}
