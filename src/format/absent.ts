/** What a reader sees where there is nothing: a word, never a blank, a zero or a dash. */

/** Nobody wrote it down. */
export const NOT_RECORDED = "not recorded";
/** The log does not have it. */
export const NOT_LOGGED = "not logged";
/** It could not be worked out from what there is. */
export const NOT_CALCULATED = "not calculated";
