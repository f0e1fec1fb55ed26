/** Presentation MathML from small pieces, so that formulas are well formed by construction. */

/** A whole formula on its own line. */
export function math(...parts: readonly string[]): string {
  return `<math xmlns="http://www.w3.org/1998/Math/MathML" display="block">${row(...parts)}</math>`;
}

/** A plain chain of identifiers, numbers and operators, written with spaces: `s = D + v`. `*` is a thin product, `-` a true minus. */
export function line(text: string): string {
  return text.split(" ").map(token).join("");
}

function token(word: string): string {
  if (/^\d/.test(word)) return `<mn>${word}</mn>`;
  const [letter, index] = word.split("_");
  if (index !== undefined) return `<msub>${identifier(letter as string)}${identifier(index)}</msub>`;
  return /^[\p{L}\p{M}]/u.test(word) ? identifier(word) : operator(word);
}

function identifier(name: string): string {
  return /^\d/.test(name) ? `<mn>${name}</mn>` : `<mi>${name}</mi>`;
}

function operator(sign: string): string {
  // A comma parts two formulas on one line: they need air.
  if (sign === ",") return '<mo separator="true">,</mo><mspace width="1em"></mspace>';
  return `<mo>${sign === "-" ? "\u2212" : sign === "*" ? "\u2062" : sign}</mo>`;
}

export function row(...parts: readonly string[]): string {
  return `<mrow>${parts.join("")}</mrow>`;
}

export function over(numerator: string, denominator: string): string {
  return `<mfrac>${row(numerator)}${row(denominator)}</mfrac>`;
}

export function root(...parts: readonly string[]): string {
  return `<msqrt>${parts.join("")}</msqrt>`;
}

export function power(base: string, exponent: string): string {
  return `<msup>${row(base)}${row(exponent)}</msup>`;
}

export function below(base: string, index: string): string {
  return `<msub>${row(base)}${row(index)}</msub>`;
}

/** Brackets that grow with what they hold. */
export function bracket(...parts: readonly string[]): string {
  return row("<mo>(</mo>", ...parts, "<mo>)</mo>");
}

/** The logarithm to base two of what follows in brackets. */
export function log2(...parts: readonly string[]): string {
  return applied("<msub><mi>log</mi><mn>2</mn></msub>", ...parts);
}

/** A function by its name, applied to what follows in brackets. */
export function applied(name: string, ...parts: readonly string[]): string {
  return `<mspace width="0.17em"></mspace>${name}<mo>\u2061</mo>${bracket(...parts)}`;
}

/** Words inside a formula. */
export function words(text: string): string {
  return `<mtext>${text}</mtext>`;
}
