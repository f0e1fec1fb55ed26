/** A file and its hash in a table: whole, and broken only where a reader expects it. */
import { type Cell, cell } from "./table.ts";

/** Hex digits that an eye takes in and a voice reads at once. */
const GROUP = 8;

/** A path, which may go on on the next line after a folder. */
export function fileCell(path: string): Cell {
  return cell(path, { mono: true, cls: "path", pieces: path.split(/(?<=\/)/) });
}

/** A whole SHA-256 in groups of eight digits. A part of a hash proves nothing, on paper least of all. */
export function hashCell(sha256: string): Cell {
  return cell(sha256, { mono: true, cls: "hash", pieces: sha256.match(new RegExp(`.{1,${GROUP}}`, "g")) ?? [] });
}
