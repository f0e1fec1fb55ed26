/** What the kit says about a lens, a camera, a calibration table. */

import { metresFromDioptres } from "../../core/quantity.ts";
import { NOT_RECORDED } from "../../format/absent.ts";
import { grams } from "../../format/amounts.ts";
import { areaMm, distance, millimetres } from "../../format/length.ts";
import { trimmed } from "../../format/number.ts";
import { transmittanceText, tStop } from "../../format/stop.ts";
import { plural } from "../../format/words.ts";
import type { CalibrationTable, Lens } from "../../ingest/records.ts";
import { type Fact, factOr } from "../facts.ts";
import type { Distances } from "../names.ts";
import { focalRange } from "../take/take-facts.ts";

/** "a" of a missing value: the words, else the value written. */
function write(value: number | null, as: (value: number) => string): string | null {
  return value === null ? null : as(value);
}

export function lensFacts(lens: Lens, distances: Distances): readonly Fact[] {
  const or = (term: string, value: string | null) => factOr(term, value, NOT_RECORDED);
  const widestF = write(lens.widestF, (f) => `f/${trimmed(f, 2)}`);
  return [
    or("Maker", lens.maker),
    or("Series", lens.series),
    or("Serial number", lens.serial),
    or("Kind", lens.kind),
    or("Focal length", lensFocal(lens)),
    or(
      "Widest T-stop",
      write(lens.widestT, (t) => `${tStop(t)}${exactly(t)}`),
    ),
    or("Widest f-stop", widestF),
    factOr("Transmittance", write(lens.transmittance, transmittanceText), NOT_RECORDED, {
      source: lens.widestF !== null && lens.widestT !== null ? "as written, else from f and T" : "",
    }),
    factOr(
      "Close focus",
      write(lens.closeFocusM, (m) => distance(m, distances)),
      NOT_RECORDED,
      { source: "from the image plane" },
    ),
    or("Front diameter", write(lens.frontDiameterMm, millimetres)),
    or("Mass", write(lens.massG, grams)),
    or("Length", write(lens.lengthMm, millimetres)),
    or("Mount", lens.mount),
    or(
      "Squeeze",
      write(lens.squeeze, (s) => trimmed(s, 3)),
    ),
    factOr("Entrance pupil", write(lens.entrancePupilMm, millimetres), NOT_RECORDED, { source: "from the image plane" }),
    factOr(
      "Pupil magnification",
      write(lens.pupilMagnification, (p) => trimmed(p, 3)),
      NOT_RECORDED,
      {
        source: "exit over entrance pupil",
      },
    ),
    factOr("Front to image plane", write(lens.frontToImageMm, millimetres), NOT_RECORDED, { source: "focused at infinity" }),
    or("Image circle", write(lens.imageCircleMm, millimetres)),
    or("Remarks", lens.remarks),
  ];
}

/** " (1.90)" where the exact value is not the label's round figure. */
function exactly(t: number): string {
  const label = tStop(t).slice(1);
  const value = trimmed(t, 2);
  return label === value ? "" : `, exactly ${value}`;
}

export function lensFocal(lens: Lens): string | null {
  if (lens.focalMm !== null) return millimetres(lens.focalMm);
  if (lens.focalMinMm === null || lens.focalMaxMm === null) return null;
  return focalRange(lens.focalMinMm, lens.focalMaxMm);
}

export interface CalibrationView {
  readonly known: boolean;
  readonly facts: readonly Fact[];
  /** Says that the table is used, or why it is shown and not evaluated. */
  readonly sentence: string;
  readonly boxed: boolean;
  /** The table's file, or what would be it. */
  readonly file: string;
}

export function calibrationView(lens: Lens, table: CalibrationTable | undefined, distances: Distances): CalibrationView {
  if (table === undefined) {
    return {
      known: false,
      facts: [],
      sentence: `No calibration table. Distortion and shading of this lens are not calculated; a table would be kit/calibration/${lens.id}.csv.`,
      boxed: true,
      file: "",
    };
  }
  const { convention: c } = table;
  const says = (term: string, value: string | null) => factOr(term, value, "not said");
  const missing = [
    c.model === null && "its model",
    c.direction === null && "its direction",
    c.radius === null && "what r = 1 is",
  ].filter((words) => words !== false);
  return {
    known: true,
    facts: [
      says("Model", c.model),
      says("Direction", c.direction),
      says("Radius", c.radius),
      says("Area of the table", c.areaMm === null ? null : areaMm(c.areaMm.width, c.areaMm.height)),
      says("Squeeze state", c.squeezeState),
      says("Shading radius", c.shadingRadius),
      says("Shading values", c.shadingValues),
      says("Made on", table.madeOn),
      says("Made by", table.madeBy),
      says("Source", table.source),
      ...coverage(table, distances),
    ],
    sentence:
      missing.length === 0
        ? "Between its points the table is read in a straight line; beyond them the nearest point stands in, and every figure that leans on it says so."
        : `Shown, and not evaluated: the table does not say ${missing.join(", ")}. Write it as a header line in ${table.file}.`,
    boxed: missing.length > 0,
    file: table.file,
  };
}

function coverage(table: CalibrationTable, distances: Distances): readonly Fact[] {
  const { points } = table;
  const range = (values: readonly number[]) => [Math.min(...values), Math.max(...values)] as const;
  const source = { source: plural(points.length, "point") };
  if (points.length === 0) return [factOr("Points", null, "none")];
  const [shortest, longest] = range(points.map((p) => p.focalMm));
  const [far, near] = range(points.map((p) => p.focusDioptres));
  const stops = points.map((p) => p.tStop).filter((t) => t !== null);
  const [widest, deepest] = stops.length === 0 ? [null, null] : range(stops);
  const to = (m: number) => distance(metresFromDioptres(m), distances);
  return [
    factOr("Focal length", focalRange(shortest, longest), "none", source),
    factOr("Focus", near === far ? to(near) : `${to(near)} to ${to(far)}`, "none", source),
    factOr("Stop", widest === null || deepest === null ? null : `${tStop(widest)} to ${tStop(deepest)}`, "any stop", source),
  ];
}
