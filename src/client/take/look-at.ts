/** The lens look of a frame, from the packed terms of the take's record. */
import { type PackedColumn, unpackColumn } from "../../core/packed-column.ts";
import type { LookRecord } from "../../format/take-record.ts";
import type { Coefficients, Direction } from "../../optics/convention.ts";
import { type CanonicalDistortion, completeCanonical, RADIUS_POWERS } from "../../optics/distortion/canonical.ts";
import type { CanonicalShading } from "../../optics/shading.ts";
import { type LookOnArea, lookOnArea } from "../../still/middle-look.ts";

/** The look at any frame; `null` where the frame has neither distortion nor shading. */
export function looksOf(record: LookRecord, frames: number): (frame: number) => LookOnArea | null {
  const equation = unpackColumn(record.equation, frames);
  const terms = unpacked(record.terms, frames);
  const shadingTerms = record.shading === null ? {} : unpacked(record.shading.terms, frames);
  const lensAt = (frame: number): CanonicalDistortion | null => {
    const found = record.equations[equation[frame] ?? Number.NaN];
    if (found === undefined) return null;
    const model = found.model as CanonicalDistortion["model"];
    const inMm: Record<string, number> = {};
    for (const [name, power] of Object.entries(RADIUS_POWERS[model])) {
      inMm[name] = (terms[name]?.[frame] ?? 0) / record.scaleMm ** power;
    }
    return completeCanonical(model, inMm as Coefficients, {
      direction: found.direction as Direction,
      squeeze: found.squeeze,
      centreXMm: terms.centreXMm?.[frame] ?? 0,
      centreYMm: terms.centreYMm?.[frame] ?? 0,
    });
  };
  const shadingAt = (frame: number): CanonicalShading | null => {
    const b1 = shadingTerms.b1?.[frame] ?? Number.NaN;
    if (record.shading === null || Number.isNaN(b1)) return null;
    return {
      b1: b1 / record.scaleMm ** 2,
      b2: (shadingTerms.b2?.[frame] ?? 0) / record.scaleMm ** 4,
      b3: (shadingTerms.b3?.[frame] ?? 0) / record.scaleMm ** 6,
      centreXMm: shadingTerms.centreXMm?.[frame] ?? 0,
      centreYMm: shadingTerms.centreYMm?.[frame] ?? 0,
      squeeze: record.shading.squeeze,
    };
  };
  return (frame) => lookOnArea(record, record.squeeze, lensAt(frame), shadingAt(frame));
}

function unpacked(columns: Readonly<Record<string, PackedColumn>>, frames: number): Readonly<Record<string, Float64Array>> {
  return Object.fromEntries(Object.entries(columns).map(([name, column]) => [name, unpackColumn(column, frames)]));
}
