/** Text for formats that know no letters outside ASCII. */

const KNOWN: Readonly<Record<string, string>> = {
  ß: "ss",
  æ: "ae",
  Æ: "AE",
  ø: "o",
  Ø: "O",
  ł: "l",
  Ł: "L",
  đ: "d",
  Đ: "D",
  "‘": "'",
  "’": "'",
  "“": '"',
  "”": '"',
  "–": "-",
  "—": "-",
  "−": "-",
  "×": "x",
  "∞": "INF",
};

/**
 * One line of printable ASCII: accents are dropped, spaces of every kind are one space, a run of other letters is one `?`.
 *
 * @example asciiLine("Übung – 2") // "Ubung - 2"
 */
export function asciiLine(text: string): string {
  return text
    .normalize("NFKD")
    .replace(/\p{M}+/gu, "")
    .replace(/[^\x20-\x7e]/gu, (letter) => KNOWN[letter] ?? (/[\s\p{Cc}]/u.test(letter) ? " " : "\ufffd"))
    .replace(/\ufffd+/g, "?")
    .replace(/ +/g, " ")
    .trim();
}
