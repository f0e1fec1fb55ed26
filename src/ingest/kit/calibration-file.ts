import type { FindingCollector } from "../../core/findings/collect.ts";
import { CSV } from "../../core/findings/csv.ts";
import { KIT } from "../../core/findings/kit.ts";
import { didYouMean } from "../../core/nearest-name.ts";
import { namesOf } from "../../csv/column-spec.ts";
import { CALIBRATION_COLUMNS, CALIBRATION_KEYS } from "../../csv/columns.ts";
import type { KeyLine } from "../../csv/key-lines.ts";
import { readTable, type TableRow } from "../../csv/table.ts";
import { COEFFICIENTS, type CoefficientName } from "../../optics/convention.ts";
import type { CalibrationPoint, CalibrationTable } from "../records.ts";
import { hasRequiredCells, rowCells } from "../row-cells.ts";
import { readMetres } from "../written/metres.ts";
import { tellOfCalibration } from "./calibration-checks.ts";
import { readConvention } from "./convention-keys.ts";
import { readKitStop } from "./lenses.ts";

/**
 * Reads one calibration table. A table that does not say its model, direction or radius is read as it is, with a check: it is shown
 * and never evaluated. `null`, with errors, when there is no table in the file.
 */
export function readCalibrationFile(
  text: string,
  source: { readonly file: string; readonly lens: string; readonly sha256: string },
  found: FindingCollector,
): CalibrationTable | null {
  const { file, lens, sha256 } = source;
  const table = readTable(text, file, CALIBRATION_COLUMNS, found);
  if (table === null) return null;
  const keys = new Map(table.document.keys.map((key) => [key.key, key]));
  tellOfUnknownKeys(table.document.keys, found);
  const convention = readConvention(keys, (key, problem, hint) =>
    found.add(KIT.badKey, { place: key.place, field: key.key, message: `${key.key}: ${problem}`, hint }),
  );
  const points = pointsOf(table.rows, found);
  const read: CalibrationTable = {
    lens,
    file,
    sha256,
    convention,
    madeOn: keys.get("made_on")?.value || null,
    madeBy: keys.get("made_by")?.value || null,
    source: keys.get("source")?.value || null,
    points,
  };
  tellOfCalibration(read, table.columns, table.document.header?.place(0) ?? { file, line: null, column: null }, found);
  return read;
}

function tellOfUnknownKeys(keys: readonly KeyLine[], found: FindingCollector): void {
  const known = namesOf(CALIBRATION_KEYS);
  for (const key of keys) {
    if (known.has(key.key)) continue;
    found.add(CSV.unknownKey, {
      place: key.place,
      field: key.key,
      message: `the key ${key.key} is not known and not read`,
      hint: didYouMean(key.key, known).trim() || `Known keys are ${[...known].join(", ")}.`,
    });
  }
}

function pointsOf(rows: readonly TableRow[], found: FindingCollector): readonly CalibrationPoint[] {
  const points = new Map<string, CalibrationPoint>();
  for (const row of rows) {
    const point = pointOf(row, found);
    if (point === null) continue;
    const id = `${point.focalMm} ${point.focusDioptres} ${point.tStop}`;
    const first = points.get(id);
    if (first === undefined) points.set(id, point);
    else {
      found.add(KIT.pointTwice, {
        place: row.place,
        message: `the point ${row.text("focal_mm")} mm, ${row.text("focus_m")} m, T${row.text("t") || " any"} comes twice, first in line ${first.place.line}`,
        hint: "Delete one of the rows. The first is used.",
      });
    }
  }
  return [...points.values()];
}

function pointOf(row: TableRow, found: FindingCollector): CalibrationPoint | null {
  if (!hasRequiredCells(row, CALIBRATION_COLUMNS, CSV.blankCell, found)) return null;
  const cells = rowCells(row, CALIBRATION_COLUMNS, found);
  const focalMm = cells.number("focal_mm");
  const focus = cells.cell("focus_m", CSV.notANumber, readMetres);
  const stop = cells.cell("t", KIT.stop, readKitStop("t"));
  if (focalMm === null || focus === null || (stop === null && row.text("t") !== "")) return null;
  const coefficients: Partial<Record<CoefficientName, number>> = {};
  for (const name of COEFFICIENTS) {
    const value = cells.number(name);
    if (value !== null) coefficients[name] = value;
  }
  return { focalMm, focusDioptres: 1 / focus.value, tStop: stop?.value ?? null, coefficients, place: row.place };
}
