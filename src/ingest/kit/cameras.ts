import type { FindingCollector } from "../../core/findings/collect.ts";
import { CSV } from "../../core/findings/csv.ts";
import { KIT } from "../../core/findings/kit.ts";
import { CAMERA_COLUMNS } from "../../csv/columns.ts";
import { readTable } from "../../csv/table.ts";
import type { SensorMode } from "../records.ts";
import { hasRequiredCells, rowCells } from "../row-cells.ts";

/** Reads kit/cameras.csv: the sensor modes in file order. A row that lacks its camera, mode or active size is an error and left out. */
export function readCameras(text: string, file: string, found: FindingCollector): readonly SensorMode[] {
  const table = readTable(text, file, CAMERA_COLUMNS, found);
  const modes: SensorMode[] = [];
  for (const row of table?.rows ?? []) {
    if (!hasRequiredCells(row, CAMERA_COLUMNS, CSV.blankCell, found)) continue;
    const cells = rowCells(row, CAMERA_COLUMNS, found);
    const camera = row.text("camera");
    const sensorMode = row.text("sensor_mode");
    const activeWidthMm = cells.number("active_width_mm");
    const activeHeightMm = cells.number("active_height_mm");
    if (activeWidthMm === null || activeHeightMm === null) continue;
    const first = modes.find((mode) => mode.camera === camera && mode.sensorMode === sensorMode);
    if (first !== undefined) {
      found.add(KIT.modeTwice, {
        place: row.cellPlace("sensor_mode"),
        field: "sensor_mode",
        message: `camera ${camera} has the mode ${sensorMode} twice, first in line ${first.place.line}`,
        hint: "Delete one row, or rename one mode. The first is used.",
      });
      continue;
    }
    modes.push({
      camera,
      body: cells.text("body"),
      serial: cells.text("serial"),
      sensorMode,
      activeWidthMm,
      activeHeightMm,
      resolutionX: cells.number("resolution_x"),
      resolutionY: cells.number("resolution_y"),
      squeeze: cells.number("squeeze"),
      place: row.place,
    });
  }
  return modes;
}
