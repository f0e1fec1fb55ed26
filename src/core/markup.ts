/** Text for HTML, SVG and XML that no template writes. */

/** Text for an element or for an attribute in double quotes. */
export function escapeMarkup(text: string): string {
  return text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;").replaceAll('"', "&quot;");
}
