/** Exposure of a take in words: light on the sensor, with the exposure index, or what is missing for it. */

import { signedStops } from "../../format/stop.ts";
import { listWords } from "../../format/words.ts";
import type { ExposurePart, ExposureSpread, SlateExposure, TakeExposure } from "../../summary/exposure.ts";
import { type Fact, fact } from "../facts.ts";

/** Less than this is the play of iris and log, not a difference. */
const ALIKE = 0.05;
const PARTS: Readonly<Record<ExposurePart, string>> = { stop: "stop", shutter: "shutter", nd: "ND", ei: "EI" };

/**
 * Two facts, each against the darkest take of the slate, since only differences mean anything. Without a partner on the slate the
 * bare figure stands, for comparing with another slate's.
 */
export function exposureFacts(exposure: TakeExposure, slate: SlateExposure | null): readonly Fact[] {
  return [
    exposureFact("Light on the sensor", exposure.lightStops, lacking(exposure, ["stop", "shutter", "nd"]), slate?.light ?? null),
    exposureFact("Light with EI", exposure.withEiStops, lacking(exposure, ["stop", "shutter", "nd", "ei"]), slate?.withEi ?? null),
  ];
}

function exposureFact(term: string, value: number | null, missing: string, spread: ExposureSpread | null): Fact {
  if (value === null) return fact(term, missing, { cls: "absent" });
  const against = spread === null ? "" : `, ${againstWords(value, spread)}`;
  return fact(term, signedStops(value), { source: `calculated${against}` });
}

function againstWords(value: number, { spreadStops, darkest }: ExposureSpread): string {
  if (spreadStops < ALIKE) return "as the others of the slate";
  const above = value - darkest.stops;
  return above < 0.005 ? "the darkest of the slate" : `${signedStops(above)} on the darkest of the slate`;
}

/** "not calculated: shutter and ND not recorded". */
function lacking(exposure: TakeExposure, parts: readonly ExposurePart[]): string {
  const names = parts.filter((part) => exposure.missing.includes(part)).map((part) => PARTS[part]);
  return names.length === 0 ? "not calculated" : `not calculated: ${listWords(names)} not recorded`;
}
