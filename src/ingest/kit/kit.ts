import type { FindingCollector } from "../../core/findings/collect.ts";
import type { FindingKind } from "../../core/findings/kind.ts";
import { KIT } from "../../core/findings/kit.ts";
import { didYouMean } from "../../core/nearest-name.ts";
import { wholeFile } from "../../csv/decode.ts";
import { readEncoderFile } from "../log/encoder-file.ts";
import type { Opener } from "../open-file.ts";
import type { Kit, Lens } from "../records.ts";
import { readCalibrationFile } from "./calibration-file.ts";
import { readCameras } from "./cameras.ts";
import { readLenses } from "./lenses.ts";

const CAMERAS = "kit/cameras.csv";
const LENSES = "kit/lenses.csv";
const CALIBRATION = "kit/calibration";
const ENCODERS = "kit/encoders";

/** Reads cameras, lenses, calibration tables and encoder tables. Every file is optional; what is absent is a remark. */
export function readKit(open: Opener, found: FindingCollector): Kit {
  const modes = readOptional(open, CAMERAS, "cameras", found, (text) => readCameras(text, CAMERAS, found)) ?? [];
  const lenses = readOptional(open, LENSES, "lenses", found, (text) => readLenses(text, LENSES, found)) ?? [];
  const calibration = tablesIn(
    CALIBRATION,
    "Calibration tables",
    KIT.otherFile,
    open,
    (table) => {
      if (!lenses.some((lens) => lens.id === table.lens)) tellOfNobody(KIT.tableWithoutLens, table, lenses, found);
      return readCalibrationFile(table.text, table, found);
    },
    found,
  );
  const encoders = tablesIn(
    ENCODERS,
    "Encoder tables",
    KIT.otherEncoderFile,
    open,
    (table) => {
      if (!lenses.some((lens) => lens.id === table.lens)) tellOfNobody(KIT.encoderWithoutLens, table, lenses, found);
      return readEncoderFile(table.text, table, found);
    },
    found,
  );
  return { modes, lenses, calibration, ...(encoders.size === 0 ? {} : { encoders }) };
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

/** A file of a folder whose files are named by lens. */
interface LensFile {
  readonly file: string;
  readonly lens: string;
  readonly sha256: string;
  readonly text: string;
}

/** The tables of a folder, by lens id. */
function tablesIn<T>(
  folder: string,
  what: string,
  otherFile: FindingKind,
  open: Opener,
  reader: (table: LensFile) => T | null,
  found: FindingCollector,
): ReadonlyMap<string, T> {
  const tables = new Map<string, T>();
  for (const entry of open.list(folder)) {
    const file = `${folder}/${entry.name}`;
    if (!entry.name.toLowerCase().endsWith(".csv")) {
      found.add(otherFile, { place: wholeFile(file), message: `${file} is not read`, hint: `${what} end in .csv.` });
      continue;
    }
    const text = open.text(file);
    if (text === null) continue;
    const lens = entry.name.slice(0, -".csv".length);
    const table = reader({ file, lens, sha256: open.hash(file), text });
    if (table !== null) tables.set(lens, table);
  }
  return tables;
}

function tellOfNobody(kind: FindingKind, { file, lens }: LensFile, lenses: readonly Lens[], found: FindingCollector): void {
  const near = didYouMean(
    lens,
    lenses.map((l) => l.id),
  ).trim();
  found.add(kind, {
    place: wholeFile(file),
    field: "lens",
    message: `the kit has no lens ${lens}, so this table serves nobody`,
    hint: near || "Name the file by the lens id, or add the lens to kit/lenses.csv.",
  });
}
