import type { FindingCollector } from "../core/findings/collect.ts";
import { CSV } from "../core/findings/csv.ts";
import type { FindingKind } from "../core/findings/kind.ts";
import { NOTE } from "../core/findings/note.ts";
import { NOTE_COLUMNS } from "../csv/columns.ts";
import { readTable, type TableRow } from "../csv/table.ts";
import type { Cell, NoteRow } from "./records.ts";
import { hasRequiredCells, rowCells } from "./row-cells.ts";
import { readDistance, readWrittenDistance } from "./written/distance.ts";
import { readFocal } from "./written/focal.ts";
import { readCircled, readPlate, readSound, readStatus } from "./written/marks.ts";
import { readNd } from "./written/nd.ts";
import { readNumber } from "./written/number.ts";
import { readFocus } from "./written/range.ts";
import { type Reading, read, refuse } from "./written/reading.ts";
import { readRate } from "./written/setting.ts";
import { readShutter } from "./written/shutter.ts";
import { readStop } from "./written/stop.ts";

/** Reads notes.csv in file order. A row that names no take is an error and left out; a refused cell is an error and `null`. */
export function readNotes(text: string, file: string, found: FindingCollector): readonly NoteRow[] {
  const table = readTable(text, file, NOTE_COLUMNS, found);
  const rows: NoteRow[] = [];
  for (const row of table?.rows ?? []) {
    if (hasRequiredCells(row, NOTE_COLUMNS, NOTE.noTake, found)) rows.push(noteOf(row, found));
  }
  return rows;
}

function noteOf(row: TableRow, found: FindingCollector): NoteRow {
  const cells = rowCells(row, NOTE_COLUMNS, found);
  const text = (column: string): Cell<string> => ({
    value: row.text(column),
    text: row.text(column),
    place: row.cellPlace(column),
  });
  return {
    place: row.place,
    slate: text("slate"),
    take: text("take"),
    camera: text("camera"),
    scene: cells.textCell("scene"),
    roll: cells.textCell("roll"),
    clip: cells.textCell("clip"),
    tcIn: cells.textCell("tc_in"),
    tcOut: cells.textCell("tc_out"),
    rate: cells.cell("rate", NOTE.rate, readRate),
    captureFps: cells.cell("capture_fps", CSV.notANumber, readFps),
    lens: cells.textCell("lens"),
    focalMm: cells.cell("focal", NOTE.focal, readFocal),
    stop: cells.cell("stop", NOTE.stop, readStop),
    focus: cells.cell("focus", kindOfDistance(row.text("focus")), readFocus),
    filters: cells.textCell("filters"),
    ndStops: cells.cell("nd", NOTE.nd, readNd),
    shutter: cells.cell("shutter", NOTE.shutter, readShutter),
    ei: cells.cell("ei", CSV.notANumber, (value) => numberAfter(value, /^(?:ei|iso|asa)\s*/i)),
    whiteBalanceK: cells.cell("wb", CSV.notANumber, (value) => numberAfter(value, /\s*k$/i)),
    sensorMode: cells.textCell("sensor_mode"),
    heightM: cells.cell("height_m", CSV.notANumber, (value) => metresOf(value, false)),
    tiltDeg: cells.numberCell("tilt_deg"),
    rollDeg: cells.numberCell("roll_deg"),
    subjectM: cells.cell("subject_m", CSV.notANumber, (value) => metresOf(value, true)),
    circled: cells.cell("circled", CSV.unknownWord, readCircled)?.value ?? false,
    status: cells.cell("status", CSV.unknownWord, readStatus),
    sound: cells.cell("sound", CSV.unknownWord, readSound),
    plate: cells.cell("plate", CSV.unknownWord, readPlate),
    plateOf: cells.textCell("plate_of"),
    still: cells.textCell("still"),
    remarks: cells.textCell("remarks"),
  };
}

/** Frames taken a second: a plain number, or a rate such as 24000/1001. */
function readFps(text: string): Reading<number> {
  const rate = readRate(text);
  if (rate.ok) return read(rate.value.num / rate.value.denom);
  const number = readNumber(text.replace(/\s*fps$/i, ""));
  if (number.ok && number.value > 0) return number;
  return number.ok ? refuse(`no speed: "${text}"`, "Write the frames taken a second, such as 48.") : number;
}

function kindOfDistance(text: string): FindingKind {
  const one = readWrittenDistance(text);
  const bare = (one.ok && one.value.kind === "bare") || /^[\d.]+\s*(-|to)\s*[\d.]+$/.test(text.trim());
  return bare ? NOTE.distanceUnit : NOTE.distance;
}

/** A positive number without the letters people write before or after it, such as `EI 800` or `5600K`. */
function numberAfter(text: string, letters: RegExp): Reading<number> {
  const number = readNumber(text.trim().replace(letters, ""));
  if (number.ok && !(number.value > 0)) return refuse(`out of range: "${text}"`, "Write a number greater than 0.");
  return number.ok ? number : refuse(`not a number: "${text}"`, number.hint);
}

/** Metres: a plain number, since the column says metres, or a distance with its unit. */
function metresOf(text: string, positive: boolean): Reading<number> {
  const number = readNumber(text);
  if (number.ok) {
    if (!positive || number.value > 0) return number;
    return refuse(`no distance: "${text}"`, "Write metres greater than 0.");
  }
  const distance = readDistance(text);
  return distance.ok && Number.isFinite(distance.value) ? distance : number;
}
