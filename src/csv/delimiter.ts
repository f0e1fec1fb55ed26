/** Delimiters of tables, in the order of preference. */
const DELIMITERS = [",", ";", "\t", "|"] as const;
export type Delimiter = (typeof DELIMITERS)[number];

/**
 * Tells the delimiter from the header line: the one that yields most known names; with equal counts the one that yields most cells.
 * Guessing from the rows would take a decimal comma for a delimiter.
 */
export function delimiterOf(headerLine: string, known: ReadonlySet<string>): Delimiter {
  let best: Delimiter = ",";
  let bestScore = -1;
  for (const delimiter of DELIMITERS) {
    const cells = splitLine(headerLine, delimiter);
    const hits = cells.filter((cell) => known.has(cell.text.trim())).length;
    const score = hits * 10_000 + cells.length;
    if (score > bestScore) {
      best = delimiter;
      bestScore = score;
    }
  }
  return best;
}

/** A cell of a line: its text with quotes resolved, and where it begins and ends in the line (UTF-16 offsets, quotes included). */
export interface SplitCell {
  readonly text: string;
  readonly start: number;
  readonly end: number;
}

/**
 * Splits one record. A quote counts only as the first character of a cell; inside, a doubled quote is one quote, and a quote that
 * neither is doubled nor ends the cell is text. With `quotes` false a quote is text everywhere.
 */
export function splitLine(record: string, delimiter: string, quotes = true): SplitCell[] {
  const cells: SplitCell[] = [];
  let at = 0;
  for (;;) {
    const close = quotes && record[at] === '"' ? closingQuote(record, at, delimiter) : -1;
    let end = close >= 0 ? record.indexOf(delimiter, close) : record.indexOf(delimiter, at);
    if (end < 0) end = record.length;
    const text = close >= 0 ? record.slice(at + 1, close).replaceAll('""', '"') : record.slice(at, end);
    cells.push({ text, start: at, end });
    if (end >= record.length) return cells;
    at = end + delimiter.length;
  }
}

/** Index of the quote that ends a cell which begins with a quote at `open`, or -1. */
function closingQuote(record: string, open: number, delimiter: string): number {
  let at = open + 1;
  for (;;) {
    const quote = record.indexOf('"', at);
    if (quote < 0) return -1;
    if (record[quote + 1] === '"') {
      at = quote + 2;
      continue;
    }
    let after = quote + 1;
    while (record[after] === " " && delimiter !== " ") after++;
    if (after >= record.length || record.startsWith(delimiter, after) || record[after] === "\n") return quote;
    at = quote + 1;
  }
}
