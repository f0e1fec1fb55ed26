/** Rules that need the whole day: clips and plates. */
import { type Finding, finding } from "../../core/finding.ts";
import { sameName } from "../address.ts";
import type { Take } from "../types.ts";

/** Rules that need the whole day: set-ups and clips. */
export function checkDay(takes: readonly Take[]): Finding[] {
  return [...clipsTwice(takes), ...plateOfNobody(takes)];
}

function clipsTwice(takes: readonly Take[]): Finding[] {
  const first = new Map<string, Take>();
  const found: Finding[] = [];
  for (const take of takes) {
    if (take.clip === null) continue;
    const key = sameName(take.clip);
    const other = first.get(key);
    if (other === undefined) first.set(key, take);
    else {
      found.push(
        finding({
          code: "CHECK717",
          severity: "check",
          place: take.note?.clip?.place ?? take.note?.place ?? null,
          field: "clip",
          message: `Clip ${take.clip} is noted for two takes: ${other.address} and ${take.address}.`,
          hint: "One clip belongs to one take. Correct the clip of one of them.",
          take: take.address,
        }),
      );
    }
  }
  return found;
}

function plateOfNobody(takes: readonly Take[]): Finding[] {
  const slates = new Set(takes.map((take) => sameName(take.slate)));
  return takes
    .filter((take) => take.plateOf !== null && !slates.has(sameName(take.plateOf)))
    .map((take) =>
      finding({
        code: "CHECK718",
        severity: "remark",
        place: take.note?.plateOf?.place ?? null,
        field: "plate_of",
        message: `No take of this day has slate ${take.plateOf}, which this plate belongs to.`,
        hint: "Correct plate_of if the slate is wrong; if its hero was shot on another day, nothing needs to be done.",
        take: take.address,
      }),
    );
}
