/** Text of `search-rows.js`: what search knows of each take, as a classic script, because a page from the disk may not fetch. */
import { packRows } from "../../core/packed-rows.ts";
import { SEARCH_GLOBAL, type SearchDay, type SearchLens, type SearchRows, type SearchTake } from "../../core/search-rows.ts";
import { trimmed } from "../../format/number.ts";
import { stopRange } from "../../format/stop.ts";
import type { Kit } from "../../ingest/records.ts";
import { takeKey } from "../../model/address.ts";
import type { DayDigest, TakeDigest } from "../../summary/digest-types.ts";
import { takePath } from "../links.ts";
import { dayShort, lensName, plateWords, tradeWords } from "../names.ts";
import { focalRange } from "../take/take-facts.ts";

export const SEARCH_ROWS_PATH = "search-rows.js";

/** The rows of all days, in the order of the days and of their takes. */
export function searchRows(digests: readonly DayDigest[], kit: Kit): SearchRows {
  const lenses = new Map<string, number>();
  const lensNames: SearchLens[] = [];
  const place = (id: string): number => {
    const known = lenses.get(id);
    if (known !== undefined) return known;
    lenses.set(id, lensNames.length);
    lensNames.push([id, lensName(kit.lenses.find((lens) => lens.id === id) ?? null, id)]);
    return lensNames.length - 1;
  };
  const takes = new Map<string, number>();
  const counted = (name: string): number => {
    const number = takes.get(name) ?? takes.size;
    takes.set(name, number);
    return number;
  };
  return {
    path: takePath("{date}", "{address}"),
    days: digests.map((d): SearchDay => [d.date, dayShort(d), d.day]),
    takes: digests.flatMap((d, day) => {
      const number = (t: TakeDigest) => counted(`${day} ${takeKey(t)}`);
      return d.takes.map((t) => searchTake(t, day, t.lens === null ? -1 : place(t.lens), number(t)));
    }),
    lenses: lensNames,
  };
}

function searchTake(t: TakeDigest, day: number, lens: number, number: number): SearchTake {
  const plate = plateWords(t);
  return [
    day,
    t.address,
    t.slate,
    t.take,
    t.camera,
    t.scene ?? "",
    t.roll ?? "",
    t.clip ?? "",
    t.timecodeIn ?? "",
    t.timecodeOut ?? "",
    lens,
    rounded(t.focalMm?.min),
    rounded(t.focalMm?.max),
    rounded(t.tStop?.widest),
    rounded(t.tStop?.deepest),
    t.focalMm === null ? "" : focalRange(t.focalMm.min, t.focalMm.max),
    t.tStop === null ? "" : stopRange(t.tStop.widest, t.tStop.deepest),
    t.circled ? 1 : 0,
    [t.status === null ? null : tradeWords(t.status), plate].filter((word) => word !== null).join(", "),
    t.plate ?? "",
    t.plateOf ?? "",
    oneLine(t.remarks ?? ""),
    number,
  ];
}

/** To a hundredth: enough to compare with what a reader types. */
function rounded(value: number | undefined): number | null {
  return value === undefined ? null : Number(trimmed(value, 2));
}

function oneLine(text: string): string {
  return text.replace(/\s+/g, " ").trim();
}

/** The script: a call with the rows, packed. Nothing in it can end a script element. */
export function searchRowsScript(rows: SearchRows): string {
  const packed = JSON.stringify(packRows(rows));
  return `${SEARCH_GLOBAL}(${packed.replace(/[<\u2028\u2029]/g, (sign) => `\\u${sign.charCodeAt(0).toString(16).padStart(4, "0")}`)});\n`;
}
