/** A formula as the methods page and `daybook explain` show it. */

export interface FormulaSymbol {
  readonly symbol: string;
  readonly meaning: string;
  /** Empty for a pure number. */
  readonly unit: string;
}

export interface Formula {
  /** Stable; a calculated figure names it in `from`. Lower case with hyphens. */
  readonly id: string;
  /** Sentence case, no full stop. */
  readonly title: string;
  /** In plain text, one line a formula. */
  readonly expression: string;
  /** The same as a whole presentation MathML element. */
  readonly mathml: string;
  readonly symbols: readonly FormulaSymbol[];
  /** When it holds, and what is refused. */
  readonly validity: string;
  /** Author, title, place; or "derived from first principles", "common practice", "this project's choice". */
  readonly source: string;
}
