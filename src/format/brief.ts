/** Text cut to what a place can hold, and said to be cut. */

/** Whether the text is longer than `most` characters. */
function isLong(text: string, most: number): boolean {
  return [...text].length > most;
}

/**
 * The text up to the last whole word within `most` characters, followed by words that say where the rest stands; unchanged when it
 * fits. A word longer than the place is cut itself.
 *
 * @example brief("Boat drifted out of frame", 12, "rest in the notes") // "Boat drifted (rest in the notes)"
 */
export function brief(text: string, most: number, where: string): string {
  if (!isLong(text, most)) return text;
  const cut = [...text].slice(0, most + 1).join("");
  const space = cut.lastIndexOf(" ");
  const kept = space > most / 2 ? cut.slice(0, space) : [...text].slice(0, most).join("");
  return `${kept.replace(/[\s,;:.]+$/, "")} (${where})`;
}
