import type { FindingCollector } from "../core/findings/collect.ts";
import { CSV } from "../core/findings/csv.ts";
import type { FindingKind } from "../core/findings/kind.ts";
import { NOTE } from "../core/findings/note.ts";
import { LARGEST_NUMBER, SMALLEST_POSITIVE } from "../csv/column-spec.ts";
import { NOTE_COLUMNS } from "../csv/columns.ts";
import { readTable, type TableRow } from "../csv/table.ts";
import { readStillName } from "./pictures/stills.ts";
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

const FARTHEST_M = 1e6;

/** How a day's notes are to be read (`notes` in day.yaml). */
export interface NotesSettings {
  /** A blank slate means "as above": the table is from a spreadsheet with merged cells. */
  readonly blankSlateRepeats: boolean;
}

/** Reads notes.csv in file order. A row that names no take is an error and left out; a refused cell is an error and `null`. */
export function readNotes(text: string, file: string, settings: NotesSettings, found: FindingCollector): readonly NoteRow[] {
  const table = readTable(text, file, NOTE_COLUMNS, found);
  const rows: NoteRow[] = [];
  let above = "";
  for (const row of table?.rows ?? []) {
    const own = row.text("slate");
    const slate = own === "" && settings.blankSlateRepeats ? above : own;
    if (slate === "") tellOfNoSlate(row, above, settings, found);
    const others = NOTE_COLUMNS.filter((spec) => spec.name !== "slate");
    if (hasRequiredCells(row, others, NOTE.noTake, found) && slate !== "") rows.push(noteOf(row, slate, found));
    if (own !== "") above = own;
  }
  return rows;
}

function tellOfNoSlate(row: TableRow, above: string, settings: NotesSettings, found: FindingCollector): void {
  const propose = `Fill it in; or, if a blank slate means "as above" (${above}) all through these notes, write "notes: {blank_slate_repeats: true}" in day.yaml.`;
  found.add(NOTE.noTake, {
    place: row.cellPlace("slate"),
    field: "slate",
    message: settings.blankSlateRepeats ? "slate is blank, and no row above has one" : "slate is blank",
    hint: above === "" ? "Fill it in (what is written on the slate); the row is left out until then." : propose,
  });
}

function noteOf(row: TableRow, slate: string, found: FindingCollector): NoteRow {
  const cells = rowCells(row, NOTE_COLUMNS, found);
  const text = (column: string): Cell<string> => ({
    value: row.text(column),
    text: row.text(column),
    place: row.cellPlace(column),
  });
  return {
    place: row.place,
    slate: { ...text("slate"), value: slate },
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
    still: cells.cell("still", NOTE.stillPath, readStillName),
    remarks: cells.textCell("remarks"),
  };
}

/** Frames taken a second: a plain number, or a rate such as 24000/1001. */
function readFps(text: string): Reading<number> {
  const rate = readRate(text);
  if (rate.ok) return read(rate.value.num / rate.value.denom);
  const number = readNumber(text.replace(/\s*fps$/i, ""));
  if (number.ok && number.value >= 0.001 && number.value <= 1e6) return number;
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
  if (number.ok && !(number.value >= SMALLEST_POSITIVE && number.value <= LARGEST_NUMBER)) {
    return refuse(`out of range: "${text}"`, "Write a number greater than 0.");
  }
  return number.ok ? number : refuse(`not a number: "${text}"`, number.hint);
}

/** Metres: a plain number, since the column says metres, or a distance with its unit. */
function metresOf(text: string, positive: boolean): Reading<number> {
  const number = readNumber(text);
  if (number.ok) {
    if (Math.abs(number.value) <= FARTHEST_M && (!positive || number.value >= SMALLEST_POSITIVE)) return number;
    return refuse(`no distance: "${text}"`, positive ? "Write metres greater than 0." : "Write metres.");
  }
  const distance = readDistance(text);
  return distance.ok && Number.isFinite(distance.value) ? distance : number;
}
