import { type Reading, read, refuse } from "./reading.ts";

const PLAIN = /^[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d+)?$/;

/**
 * A plain number such as `2.4`, `-0.5`, `6.1e-4`. With `decimal` "," the sign is a comma and a point is refused.
 * `columnUnit` is the unit that the number is in. Refused with the likely reading: a decimal comma, grouped thousands, a unit after the number, a letter O or l for a digit, words.
 *
 * @example readNumber("2,41").ok // false
 */
export function readNumber(text: string, decimal: "." | "," = ".", columnUnit?: string): Reading<number> {
  const written = text.trim();
  const normal = decimal === "," ? written.replace(",", ".") : written;
  if (PLAIN.test(normal) && !(decimal === "," && written.includes("."))) {
    const value = Number(normal);
    if (Number.isFinite(value)) return read(value);
  }
  return refuse(`not a number: "${written}"`, numberHint(written, decimal, columnUnit));
}

function numberHint(written: string, decimal: "." | ",", columnUnit: string | undefined): string {
  if (/^(nan|null|none|n\/?a|-+|inf.*|\u221e|\?+)$/i.test(written)) return "Leave it empty when there is nothing to say.";
  const comma = /^[+-]?\d+,\d+$/.exec(written);
  if (comma && decimal === ".") {
    const point = written.replace(",", ".");
    const grouped = /^[+-]?\d{1,3},\d{3}$/.test(written) ? ` or ${written.replace(",", "")}` : "";
    return `Write ${point}${grouped}. Only a log may have decimal commas, when it says "# decimal: ,".`;
  }
  if (decimal === "," && PLAIN.test(written)) return `Write ${written.replace(".", ",")}: the log says "# decimal: ,".`;
  const grouped = /^[+-]?\d{1,3}([ ',.]\d{3})+([.,]\d+)?$/.test(written);
  if (grouped) return "Write the number without thousands separators.";
  const unit = /^([+-]?[\d.,]+)\s*([A-Za-z\u00b0%'"]+)$/.exec(written);
  const digits = written.replace(/[oO]/g, "0").replace(/[lI]/g, "1");
  const looksNumeric = digits !== written && PLAIN.test(digits.replace(",", "."));
  if (looksNumeric) return `Write ${digits}: there is a letter among the digits.`;
  if (unit && columnUnit !== undefined && unit[2]?.toLowerCase() !== columnUnit.toLowerCase())
    return `The column is in ${columnUnit}: write the figure in ${columnUnit}, without a unit behind it.`;
  if (unit) {
    const number = decimal === "." && /^[+-]?\d+,\d+$/.test(unit[1] as string) ? (unit[1] as string).replace(",", ".") : unit[1];
    return `Write ${number}, without the unit "${unit[2]}".`;
  }
  return "Write a plain number, or leave it empty.";
}
