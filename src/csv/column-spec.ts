/** How the text of a column's cells is read. */
export type CellKind =
  | "text"
  | "number"
  | "count"
  | "timecode"
  | "rate"
  | "stop"
  | "distance"
  | "focal"
  | "nd"
  | "shutter"
  | "mark";

/** A column of a table: its fixed name, its unit, how cells are read and what it says. */
export interface ColumnSpec {
  readonly name: string;
  readonly holds: CellKind;
  /** Absent for text and for plain numbers. */
  readonly unit?: string;
  readonly required?: boolean;
  /** The number must be greater than this. */
  readonly above?: number;
  /** The number must be at least this. */
  readonly from?: number;
  /** The number must be at most this. */
  readonly upTo?: number;
  readonly about: string;
}

/** A `# key: value` line. */
export interface KeySpec {
  readonly name: string;
  /** What may stand after the colon, in words. */
  readonly values: string;
  readonly required?: boolean;
  readonly about: string;
}

/** Names of columns or keys as a set. */
export function namesOf(specs: readonly { readonly name: string }[]): ReadonlySet<string> {
  return new Set(specs.map((spec) => spec.name));
}

/** Nothing that is measured on a set has a larger number in any unit. With it no figure grows beyond what a number can hold. */
export const LARGEST_NUMBER = 1e9;
/** Nor a smaller one that is not zero, where the column takes positive numbers only. */
export const SMALLEST_POSITIVE = 1e-6;

/** Limits of a column's numbers, both ends included. */
export function limitsOf(spec: ColumnSpec): { readonly low: number; readonly high: number } {
  const low = spec.above === 0 ? SMALLEST_POSITIVE : -LARGEST_NUMBER;
  return { low: Math.max(low, spec.from ?? low), high: Math.min(LARGEST_NUMBER, spec.upTo ?? LARGEST_NUMBER) };
}

/** What is wrong with a number of a column, in words, or `null` when it is within the column's limits. */
export function limitProblem(spec: ColumnSpec, value: number): string | null {
  if (spec.above !== undefined && !(value > spec.above)) return `must be greater than ${spec.above}`;
  if (spec.from !== undefined && !(value >= spec.from)) return `must be at least ${spec.from}`;
  if (spec.upTo !== undefined && !(value <= spec.upTo)) return `must be at most ${spec.upTo}`;
  const { low, high } = limitsOf(spec);
  if (!(value <= high)) return "is larger than anything that is measured";
  if (!(value >= low))
    return spec.above === 0 ? "is smaller than anything that is measured" : "is further below zero than anything that is measured";
  return null;
}
