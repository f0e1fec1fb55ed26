/** What a written form yields: a value, or what is wrong with it and how to write it. The problem names the text as written. */
export type Reading<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problem: string; readonly hint: string };

export function read<T>(value: T): Reading<T> {
  return { ok: true, value };
}

export function refuse(problem: string, hint: string): { readonly ok: false; readonly problem: string; readonly hint: string } {
  return { ok: false, problem, hint };
}

/** Typographic quotes, dashes, vulgar fractions and odd spaces in the plain characters that the grammars are written in. */
export function plainCharacters(text: string): string {
  return text
    .replace(/[\u00a0\u2007\u2009\u202f]/g, " ")
    .replace(/[\u2018\u2019\u2032]/g, "'")
    .replace(/[\u201c\u201d\u2033]/g, '"')
    .replace(/[\u2010-\u2015\u2212]/g, "-")
    .replace(/[\u2044\u2215]/g, "/")
    .replace(/[\u00bc-\u00be\u2153\u2154\u215b-\u215e]/g, (sign) => ` ${VULGAR[sign]}`)
    .replace(/ {2,}/g, " ")
    .trim();
}

const VULGAR: Readonly<Record<string, string>> = {
  "¼": "1/4",
  "½": "1/2",
  "¾": "3/4",
  "⅓": "1/3",
  "⅔": "2/3",
  "⅛": "1/8",
  "⅜": "3/8",
  "⅝": "5/8",
  "⅞": "7/8",
};
