/** How every figure is computed, and what the words mean. */
import { FORMULAS } from "../../optics/formulas.ts";
import type { PageModel, SiteContext } from "../context.ts";
import { METHODS_PATH } from "../links.ts";
import { pageBase } from "../page.ts";
import { cell, column, FIXED, row, type TableModel, table } from "../table.ts";
import { CONVENTIONS, SOURCES, WORDS } from "./methods-text.ts";

export interface FormulaView {
  readonly id: string;
  readonly title: string;
  readonly mathml: string;
  readonly expression: string;
  readonly symbols: TableModel;
  readonly hasSymbols: boolean;
  readonly validity: string;
  readonly source: string;
}

export interface Named {
  readonly id: string;
  readonly term: string;
  readonly text: string;
}

export interface MethodsPage extends PageModel {
  readonly words: readonly Named[];
  readonly sources: readonly Named[];
  readonly conventions: readonly Named[];
  readonly formulas: readonly FormulaView[];
}

export function methodsPage(context: SiteContext): MethodsPage {
  return {
    ...pageBase(
      {
        path: METHODS_PATH,
        title: "Words and methods",
        trail: [{ label: "Words and methods", path: METHODS_PATH }],
        styles: ["home.css", "reference.css"],
      },
      context,
    ),
    words: WORDS,
    sources: SOURCES,
    conventions: CONVENTIONS,
    formulas: FORMULAS.map((formula) => ({
      id: formula.id,
      title: formula.title,
      mathml: formula.mathml,
      expression: formula.expression,
      symbols: table(
        `${formula.id}-symbols`,
        `Symbols of ${formula.title.toLowerCase()}`,
        [column("Symbol"), column("Meaning"), column("Unit")],
        formula.symbols.map((s) => row(cell(s.symbol), [cell(s.meaning), cell(s.unit === "" ? "a number" : s.unit)])),
        { cls: FIXED },
      ),
      hasSymbols: formula.symbols.length > 0,
      validity: formula.validity,
      source: formula.source,
    })),
  };
}
