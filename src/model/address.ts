/**
 * Address of a take: `<camera>-<slate>-<take>`, lower case, accents dropped, each run outside `[a-z0-9]` folded to one `-`,
 * none at the ends. It never changes with the take's neighbours.
 *
 * @example takeAddress("A", "99", "3 Übung") // "a-99-3-ubung"
 */
export function takeAddress(camera: string, slate: string, take: string): string {
  return foldName(`${camera}-${slate}-${take}`);
}

/** A text as a file name part: `[a-z0-9-]`, at most 80 characters, never empty. */
export function foldName(text: string): string {
  const folded = text
    .normalize("NFKD")
    .replace(/\p{M}+/gu, "")
    .toLowerCase()
    .replace(/ß/g, "ss")
    .replace(/[^a-z0-9]+/g, "-")
    .slice(0, 80)
    .replace(/^-+|-+$/g, "");
  return folded === "" ? "x" : folded;
}

/** Form in which identities are compared: case and spaces do not make two takes of one. */
export function sameName(text: string): string {
  return text.trim().replace(/\s+/g, " ").toLowerCase();
}

/** One text for the clips that are one take of a day, whatever their cameras. */
export function takeKey({ slate, take }: { readonly slate: string; readonly take: string }): string {
  return `${sameName(slate)}\u0000${sameName(take)}`;
}
