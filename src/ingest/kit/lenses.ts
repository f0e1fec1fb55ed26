import type { FindingCollector } from "../../core/findings/collect.ts";
import { CSV } from "../../core/findings/csv.ts";
import { KIT } from "../../core/findings/kit.ts";
import { LENS_COLUMNS } from "../../csv/columns.ts";
import { readTable, type TableRow } from "../../csv/table.ts";
import { transmittanceFrom } from "../../optics/exposure.ts";
import type { Lens } from "../records.ts";
import { hasRequiredCells, type RowCells, rowCells } from "../row-cells.ts";
import { oneOf } from "../written/marks.ts";
import { type Reading, read, refuse } from "../written/reading.ts";
import { readStop } from "../written/stop.ts";

/**
 * Reads kit/lenses.csv in file order. A row without id or kind is an error and left out; widest stops are exact series values;
 * transmittance is the column's, else (f/T)^2 where both widest stops are given.
 */
export function readLenses(text: string, file: string, found: FindingCollector): readonly Lens[] {
  const table = readTable(text, file, LENS_COLUMNS, found);
  const lenses = new Map<string, Lens>();
  for (const row of table?.rows ?? []) {
    if (!hasRequiredCells(row, LENS_COLUMNS, CSV.blankCell, found)) continue;
    const lens = lensOf(row, rowCells(row, LENS_COLUMNS, found), found);
    const first = lens === null ? undefined : lenses.get(lens.id);
    if (lens !== null && first === undefined) lenses.set(lens.id, lens);
    if (lens === null || first === undefined) continue;
    found.add(KIT.lensTwice, {
      place: row.cellPlace("lens"),
      field: "lens",
      message: `the lens ${lens.id} stands twice in the kit, first in line ${first.place.line}`,
      hint: "Give one of them another id, or delete its row. The first is used.",
    });
  }
  return [...lenses.values()];
}

/** One stop of the kit as its exact series value. Refused: ranges. */
export function readKitStop(kind: "t" | "f"): (text: string) => Reading<number> {
  return (text) => {
    const stop = readStop(text);
    if (!stop.ok) return stop;
    if (stop.value.from !== stop.value.to) return refuse(`a range of stops: "${text}"`, "Write one stop.");
    if (stop.value.kind !== null && stop.value.kind !== kind) {
      return refuse(
        `"${text}" is ${stop.value.kind === "t" ? "a T-stop" : "an f-stop"}`,
        `This column takes ${kind === "t" ? "T-stops" : "f-stops"}.`,
      );
    }
    return read(stop.value.from);
  };
}

function lensOf(row: TableRow, cells: RowCells, found: FindingCollector): Lens | null {
  const kind = cells.cell("kind", CSV.unknownWord, (text) => oneOf(text, ["prime", "zoom"] as const))?.value ?? null;
  if (kind === null) return null;
  const id = row.text("lens");
  const widestT = cells.cell("widest_t", KIT.stop, readKitStop("t"))?.value ?? null;
  const widestF = cells.cell("widest_f", KIT.stop, readKitStop("f"))?.value ?? null;
  const focals = { focalMm: cells.number("focal_mm"), min: cells.number("focal_min_mm"), max: cells.number("focal_max_mm") };
  tellOfFocal(row, id, kind, focals, found);
  const range = kind === "zoom" && focals.min !== null && focals.max !== null && focals.min < focals.max;
  return {
    id,
    maker: cells.text("maker"),
    series: cells.text("series"),
    serial: cells.text("serial"),
    kind,
    focalMm: kind === "prime" ? focals.focalMm : null,
    focalMinMm: range ? focals.min : null,
    focalMaxMm: range ? focals.max : null,
    widestT,
    widestF,
    transmittance: transmittanceOf(row, id, cells.number("transmittance"), widestT, widestF, found),
    closeFocusM: cells.number("close_focus_m"),
    frontDiameterMm: cells.number("front_diameter_mm"),
    massG: cells.number("mass_g"),
    lengthMm: cells.number("length_mm"),
    mount: cells.text("mount"),
    squeeze: cells.number("squeeze"),
    entrancePupilMm: cells.number("entrance_pupil_mm"),
    pupilMagnification: cells.number("pupil_magnification"),
    frontToImageMm: cells.number("front_to_image_mm"),
    imageCircleMm: cells.number("image_circle_mm"),
    remarks: cells.text("remarks"),
    place: row.place,
  };
}

interface Focals {
  readonly focalMm: number | null;
  readonly min: number | null;
  readonly max: number | null;
}

function tellOfFocal(row: TableRow, id: string, kind: "prime" | "zoom", focals: Focals, found: FindingCollector): void {
  const tell = (field: string, message: string, hint: string): void =>
    found.add(KIT.lensFocal, { place: row.cellPlace(field), field, message, hint });
  if (kind === "prime" && focals.focalMm === null) {
    tell("focal_mm", `the prime ${id} has no focal length`, "Fill in focal_mm, the marked focal length.");
  }
  if (kind === "zoom" && (focals.min === null || focals.max === null)) {
    const lacking = focals.min === null ? "focal_min_mm" : "focal_max_mm";
    tell(lacking, `the zoom ${id} has no ${lacking}`, "Fill in focal_min_mm and focal_max_mm.");
  } else if (kind === "zoom" && focals.min !== null && focals.max !== null && focals.min >= focals.max) {
    tell(
      "focal_max_mm",
      `the zoom ${id} goes from ${focals.min} to ${focals.max} mm`,
      "Write the shorter focal length in focal_min_mm.",
    );
  }
}

function transmittanceOf(
  row: TableRow,
  id: string,
  given: number | null,
  widestT: number | null,
  widestF: number | null,
  found: FindingCollector,
): number | null {
  if (widestT !== null && widestF !== null && widestF > widestT) {
    found.add(KIT.faster, {
      place: row.cellPlace("widest_t"),
      field: "widest_t",
      message: `the lens ${id} opens to T${row.text("widest_t")} and f/${row.text("widest_f")}: no lens passes more light than falls in`,
      hint: "Mend one of the two; they may be in each other's column.",
    });
    return given;
  }
  if (given !== null) return given;
  return widestT === null || widestF === null ? null : transmittanceFrom(widestF, widestT);
}
