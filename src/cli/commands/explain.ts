/** `daybook explain CODE`: a finding code or the id of a formula. */
import { FINDING_KINDS, findingKind } from "../../core/findings/catalogue.ts";
import type { FindingKind } from "../../core/findings/kind.ts";
import { nearestNames } from "../../core/nearest-name.ts";
import { listWords } from "../../format/words.ts";
import type { Formula } from "../../optics/formula.ts";
import { FORMULAS } from "../../optics/formulas.ts";
import { EXIT, type Io } from "../io.ts";
import { jsonLine } from "../json-lines.ts";
import type { CommonOptions } from "../options.ts";
import { type Colours, coloursFor, severityWord, wrapText } from "../style.ts";

/** Prints what a code or a formula means; without one, the list of all. Exit 2 for a name nobody knows. */
export function explain(name: string | undefined, options: CommonOptions, io: Io): number {
  const colours = coloursFor(io.out, io, options.color);
  if (name === undefined) {
    io.out.write(options.json ? allLines() : listText());
    return EXIT.fine;
  }
  const kind = findingKind(name);
  const formula = FORMULAS.find((f) => f.id === name.trim().toLowerCase());
  if (kind !== null) {
    io.out.write(options.json ? jsonLine({ type: "explanation", ...kind }) : kindText(kind, colours, width(io)));
    return EXIT.fine;
  }
  if (formula !== undefined) {
    io.out.write(options.json ? jsonLine({ type: "formula", ...formula }) : formulaText(formula, colours, width(io)));
    return EXIT.fine;
  }
  const near = nearestNames(name, [...FINDING_KINDS.map((k) => k.code), ...FORMULAS.map((f) => f.id)]);
  const hint = near.length === 0 ? "Run daybook explain to list them." : `Did you mean ${listWords(near, "or")}?`;
  io.err.write(`error: no finding code or formula "${name}". ${hint}\n`);
  return EXIT.usage;
}

function kindText(kind: FindingKind, colours: Colours, columns: number): string {
  const head = `${colours.bold(kind.code)}  ${severityWord(kind.severity, colours)}  ${kind.title}`;
  return `${head}\n\n${wrapText(kind.explain, columns, "  ")}\n`;
}

function formulaText(formula: Formula, colours: Colours, columns: number): string {
  const widest = Math.max(...formula.symbols.map((s) => s.symbol.length));
  const symbols = formula.symbols.map((s) => `  ${s.symbol.padEnd(widest)}  ${s.meaning}${s.unit === "" ? "" : ` (${s.unit})`}`);
  return [
    `${colours.bold(formula.id)}  ${formula.title}`,
    "",
    ...formula.expression.split("\n").map((line) => `  ${line}`),
    "",
    ...symbols,
    "",
    wrapText(formula.validity, columns, "  "),
    wrapText(`Source: ${formula.source}`, columns, "  "),
    "",
  ].join("\n");
}

function listText(): string {
  const kinds = FINDING_KINDS.map((kind) => `${kind.code.padEnd(10)}${kind.severity.padEnd(8)}${kind.title}`);
  const widest = Math.max(...FORMULAS.map((f) => f.id.length));
  const formulas = FORMULAS.map((f) => `${f.id.padEnd(widest + 2)}${f.title}`);
  return [...kinds, "", ...formulas, ""].join("\n");
}

function allLines(): string {
  const kinds = FINDING_KINDS.map((kind) => jsonLine({ type: "explanation", ...kind }));
  return [...kinds, ...FORMULAS.map((formula) => jsonLine({ type: "formula", ...formula }))].join("");
}

function width(io: Io): number {
  return Math.max(40, Math.min(io.out.columns, 100));
}
