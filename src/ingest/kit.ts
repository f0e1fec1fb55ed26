import type { FindingCollector } from "../core/findings/collect.ts";
import { KIT } from "../core/findings/kit.ts";
import { didYouMean } from "../core/nearest-name.ts";
import { wholeFile } from "../csv/decode.ts";
import { readCalibrationFile } from "./calibration-file.ts";
import { readCameras } from "./cameras.ts";
import { readLenses } from "./lenses.ts";
import type { Opener } from "./open-file.ts";
import type { CalibrationTable, Kit, Lens } from "./records.ts";

const CAMERAS = "kit/cameras.csv";
const LENSES = "kit/lenses.csv";
const CALIBRATION = "kit/calibration";

/** Reads cameras, lenses and calibration tables. Every file is optional; what is absent is a remark. */
export function readKit(open: Opener, found: FindingCollector): Kit {
  const modes = readOptional(open, CAMERAS, "cameras", found, (text) => readCameras(text, CAMERAS, found)) ?? [];
  const lenses = readOptional(open, LENSES, "lenses", found, (text) => readLenses(text, LENSES, found)) ?? [];
  return { modes, lenses, calibration: readTables(open, lenses, found) };
}

function readOptional<T>(open: Opener, file: string, what: string, found: FindingCollector, reader: (text: string) => T): T | null {
  if (open.has(file)) {
    const text = open.text(file);
    return text === null ? null : reader(text);
  }
  found.add(KIT.absent, {
    place: wholeFile(file),
    message: `there is no ${file}: the ${what} of the show are not recorded`,
    hint: "Write the file (`daybook columns` lists its columns), or leave it when the figures are not needed.",
  });
  return null;
}

function readTables(open: Opener, lenses: readonly Lens[], found: FindingCollector): ReadonlyMap<string, CalibrationTable> {
  const tables = new Map<string, CalibrationTable>();
  for (const entry of open.list(CALIBRATION)) {
    const file = `${CALIBRATION}/${entry.name}`;
    if (!entry.name.toLowerCase().endsWith(".csv")) {
      found.add(KIT.otherFile, { place: wholeFile(file), message: `${file} is not read`, hint: "Calibration tables end in .csv." });
      continue;
    }
    const text = open.text(file);
    const lens = entry.name.slice(0, -".csv".length);
    if (text === null) continue;
    const ids = lenses.map((l) => l.id);
    if (!ids.includes(lens)) {
      found.add(KIT.tableWithoutLens, {
        place: wholeFile(file),
        field: "lens",
        message: `the kit has no lens ${lens}, so this table serves nobody`,
        hint: didYouMean(lens, ids).trim() || "Name the file by the lens id, or add the lens to kit/lenses.csv.",
      });
    }
    const table = readCalibrationFile(text, { file, lens, sha256: open.hash(file) }, found);
    if (table !== null) tables.set(lens, table);
  }
  return tables;
}
