/** Formulas as they are set in print: the registry writes them with the signs of a keyboard. */

const SUPERSCRIPTS: Readonly<Record<string, string>> = {
  "-": "\u207b",
  "0": "\u2070",
  "1": "\u00b9",
  "2": "\u00b2",
  "3": "\u00b3",
  "4": "\u2074",
  "5": "\u2075",
  "6": "\u2076",
  "7": "\u2077",
  "8": "\u2078",
  "9": "\u2079",
};

/**
 * Raised powers, true minus signs, roots and Greek letters.
 *
 * @example formulaText("tau = (N / T)^2; loss in stops -log2(tau)") // "τ = (N / T)²; loss in stops −log₂(τ)"
 */
export function formulaText(text: string): string {
  return text
    .replace(/\^(-?\d+)/g, (_, power: string) => [...power].map((sign) => SUPERSCRIPTS[sign] ?? sign).join(""))
    .replaceAll("+-", "\u00b1")
    .replaceAll("-+", "\u2213")
    .replace(/(?<=[ (=])-(?=[ a-z0-9])/g, "\u2212")
    .replace(/\bsqrt\(/g, "\u221a(")
    .replace(/\blog2\b/g, "log\u2082")
    .replace(/\btau\b/g, "\u03c4")
    .replace(/\bdelta\b/g, "\u03b4")
    .replace(/(\d) (\d\/8)\b/g, "$1\u00a0$2");
}
