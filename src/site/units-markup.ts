/**
 * Prints the choices between metric and imperial of a page: in its text as elements of which the style sheet shows the ones
 * for the reader's units, elsewhere (attributes, titles of drawings, scripts) as the show wants them.
 */
import { choicePieces, hasUnitChoice, settled, type UnitChoice, unitParts } from "../format/units.ts";

/** Comments, elements whose content is no markup, tags, and the text between them. */
const PIECES = /<!--[\s\S]*?-->|<(script|style|title|desc|textarea|option)\b[\s\S]*?<\/\1>|<[^>]*>|[^<]+/g;

/** The whole page. Texts are escaped already, and in both wordings. */
export function printUnits(html: string): string {
  if (!hasUnitChoice(html)) return html;
  let drawing = false;
  return html.replace(PIECES, (piece) => {
    if (piece.startsWith("<svg")) drawing = true;
    if (piece.startsWith("</svg")) drawing = false;
    if (piece.startsWith("<")) return settled(piece);
    const name = drawing ? "tspan" : "span";
    return unitParts(piece)
      .map((part) => (typeof part === "string" ? part : elements(part, name)))
      .join("");
  });
}

function elements(choice: UnitChoice, name: string): string {
  return choicePieces(choice)
    .map(([cls, text]) => `<${name} class="${cls}">${plainQuotes(text)}</${name}>`)
    .join("");
}

/** Feet and inches need no escape between tags, and a day has hundreds of them. */
function plainQuotes(text: string): string {
  return text.replaceAll("&#39;", "'").replaceAll("&quot;", '"');
}
