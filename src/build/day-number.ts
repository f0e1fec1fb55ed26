/** The number of a day, for the pages of its neighbours, without reading the whole day. */
import type { ShowFolder } from "../ingest/folder.ts";

/** `day:` of the day's day.yaml; `null` when the file or the key is absent or is no whole number. */
export function dayNumber(folder: ShowFolder, date: string): number | null {
  const bytes = folder.read(`days/${date}/day.yaml`);
  if (!(bytes instanceof Uint8Array)) return null;
  const match = /^day[ \t]*:[ \t]*(\d{1,6})[ \t]*(?:#.*)?$/m.exec(new TextDecoder().decode(bytes).replace(/\r/g, ""));
  return match === null ? null : Number(match[1]);
}
