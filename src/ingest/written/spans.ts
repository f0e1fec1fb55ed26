/** Values that people write alone or as a range. `from` and `to` stand in the order written; a single value has both alike. */

/** Focal lengths in millimetres. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

/** Stops as exact values of their series: 2.8 is 2.828...; 2.1, no mark of a series, is 2.1. */
export interface StopSpan {
  readonly from: number;
  readonly to: number;
  /** Whether a letter said T or f; `null` when none did (then it is a T-stop). */
  readonly kind: "t" | "f" | null;
}

/** Focus in dioptres: 1/m from the image plane, infinity is 0. */
export interface FocusSpan {
  readonly fromDioptres: number;
  readonly toDioptres: number;
}
