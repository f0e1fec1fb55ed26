/** Every formula that a figure can name in `from`. */
import type { Formula } from "./formula.ts";
import { COVERAGE_FORMULAS } from "./formulas-coverage.ts";
import { DAY_FORMULAS } from "./formulas-day.ts";
import { EXPOSURE_FORMULAS } from "./formulas-exposure.ts";
import { GEOMETRY_FORMULAS } from "./formulas-geometry.ts";
import { LENS_FORMULAS } from "./formulas-lens.ts";

export const FORMULAS: readonly Formula[] = Object.freeze([
  ...GEOMETRY_FORMULAS,
  ...EXPOSURE_FORMULAS,
  ...LENS_FORMULAS,
  ...COVERAGE_FORMULAS,
  ...DAY_FORMULAS,
]);

const BY_ID: ReadonlyMap<string, Formula> = new Map(FORMULAS.map((formula) => [formula.id, formula]));

/** The formula of an id, or `null`. */
export function formulaById(id: string): Formula | null {
  return BY_ID.get(id) ?? null;
}

export type { Formula, FormulaSymbol } from "./formula.ts";
