/** A plate of the show as a row of a table. */
import { metresFromDioptres } from "../../core/quantity.ts";
import { NOT_LOGGED, NOT_RECORDED } from "../../format/absent.ts";
import { fileSize } from "../../format/amounts.ts";
import { distance } from "../../format/length.ts";
import { fixed, thousands } from "../../format/number.ts";
import { stopRange, tStop } from "../../format/stop.ts";
import { listWords, plural, sentenceCase } from "../../format/words.ts";
import type { Lens } from "../../ingest/records.ts";
import type { DayDigest, PlateState, TakeDigest } from "../../summary/digest-types.ts";
import type { CalibrationState } from "../../summary/types.ts";
import { distanceInColumn, distanceUnit, rangeInColumn } from "../distances.ts";
import { dayPath, hrefTo, PLATES_PATH, packPath, takePath } from "../links.ts";
import { type Distances, dayHeading, plateWords, takeName } from "../names.ts";
import type { PlateTake } from "../readers/plates.ts";
import { type Cell, type CellLink, type Column, cell, column, numOr, type Row, row, textOr } from "../table.ts";
import { focalRange } from "../take/take-facts.ts";

/** A plate as pairing sees it, with the rest of what its day left behind. */
export interface ShowPlate extends PlateTake {
  readonly digest: DayDigest;
  readonly own: TakeDigest;
  readonly state: PlateState;
  readonly lens: Lens | null;
}

export function plateColumns(distances: Distances): readonly Column[] {
  const unit = distanceUnit(distances);
  return [
    column("Take"),
    column("Plate"),
    column("Day"),
    column("Lens", { unit: "serial" }),
    column("Focal length"),
    column("Focus", { unit }),
    column("Stop"),
    column("Height", { unit, num: true }),
    column("Tilt", { unit: "degrees", num: true }),
    column("Roll", { unit: "degrees", num: true }),
    column("Filters"),
    column("Calibration"),
    column("Missing"),
    column("Files"),
  ];
}

export function plateRow(plate: ShowPlate, lensPaths: ReadonlyMap<string, string>, distances: Distances): Row {
  const { own, state, digest } = plate;
  const absent = state.hasLog ? NOT_LOGGED : NOT_RECORDED;
  const missing = missingWords(plate);
  return row(cell(takeName(own), { href: hrefTo(PLATES_PATH, takePath(digest.date, own.address)) }), [
    textOr(plateWords(own), NOT_RECORDED),
    cell(dayHeading(digest), { href: hrefTo(PLATES_PATH, dayPath(digest.date)) }),
    lensCell(plate, lensPaths),
    textOr(own.focalMm === null ? null : focalRange(own.focalMm.min, own.focalMm.max), absent),
    textOr(own.focus === null ? null : rangeInColumn(own.focus.nearestM, own.focus.farthestM, distances), absent),
    textOr(own.tStop === null ? null : stopRange(own.tStop.widest, own.tStop.deepest), absent),
    numOr(state.heightM === null ? null : distanceInColumn(state.heightM, distances), NOT_RECORDED),
    numOr(state.tiltDeg === null ? null : fixed(state.tiltDeg, 1), NOT_RECORDED),
    numOr(state.rollDeg === null ? null : fixed(state.rollDeg, 1), NOT_RECORDED),
    textOr(state.filters, NOT_RECORDED),
    cell(coverageWords(state.calibration, distances)),
    cell(missing === "" ? "nothing" : missing),
    filesCell(digest, own.address),
  ]);
}

function lensCell({ own, lens }: ShowPlate, lensPaths: ReadonlyMap<string, string>): Cell {
  if (own.lens === null) return cell(NOT_RECORDED, { absent: true });
  const path = lensPaths.get(own.lens);
  if (lens === null || path === undefined) return cell(own.lens, { note: "not in the kit" });
  return cell(own.lens, { href: hrefTo(PLATES_PATH, path), note: lens.serial ?? "serial not recorded" });
}

/** Whether the calibration served at the middle logged frame, and if not, why. */
export function coverageWords(state: CalibrationState, distances: Distances): string {
  if (state.kind === "logged") return "coefficients as logged";
  if (state.kind === "inside") return "inside the table";
  if (state.kind === "none") return `none: ${state.reason}`;
  const axes = state.axes.map(({ axis, asked, used }) => {
    if (axis === "focal") return `${fixed(asked, 1)} mm, table to ${fixed(used, 1)} mm`;
    if (axis === "stop") return `${tStop(asked)}, table to ${tStop(used)}`;
    return `focus ${distance(metresFromDioptres(asked), distances)}, table to ${distance(metresFromDioptres(used), distances)}`;
  });
  return axes.length === 0 ? "nearest point: the table lacks a cell here" : `nearest point: ${listWords(axes)}`;
}

/** What a plate lacks, in sentences; empty when nothing does. */
export function missingWords({ own, state, lens }: ShowPlate): string {
  const unrecorded = [
    own.clip === null && "clip",
    own.timecodeIn === null && "timecode",
    own.lens === null && "lens",
    lens !== null && lens.serial === null && "serial",
    state.sensorMode === null && "sensor mode",
    own.focalMm === null && "focal length",
    own.focus === null && "focus",
    own.tStop === null && "stop",
    state.heightM === null && "height",
    state.tiltDeg === null && "tilt",
    state.rollDeg === null && "roll",
    state.filters === null && "filters",
  ].filter((name) => name !== false);
  const sentences = [
    state.hasLog ? null : "No lens log.",
    state.hasLog && state.framesMissing > 0 ? `${plural(state.framesMissing, "frame")} not logged.` : null,
    own.lens !== null && lens === null ? `Lens ${own.lens} is not in the kit.` : null,
    state.hasLog && state.calibration.kind === "none" ? "No calibration." : null,
    unrecorded.length === 0 ? null : `${sentenceCase(listWords(unrecorded))} not recorded.`,
  ];
  return sentences.filter((words) => words !== null).join(" ");
}

/** Files that stand by themselves, with the words of their link; the rest of a plate's folder is counted. */
const NAMED: Readonly<Record<string, string>> = {
  "lens.csv": "lens.csv",
  "lens.opentrackio.jsonl": "OpenTrackIO",
  "camera.usda": "USD",
  "maps.csv": "maps.csv",
};

function filesCell(digest: DayDigest, address: string): Cell {
  const folder = `vfx/${address}/`;
  const files = digest.packFiles.filter((file) => file.name.startsWith(folder));
  if (files.length === 0) return cell("none in the pack", { absent: true });
  const named = files.flatMap((file) => {
    const label = NAMED[file.name.slice(folder.length)];
    return label === undefined ? [] : [{ label, href: hrefTo(PLATES_PATH, packPath(digest.date, file.name)) }];
  });
  const maps = files.filter((file) => file.name.endsWith(".exr"));
  const bytes = fileSize(maps.reduce((sum, file) => sum + file.bytes, 0));
  const note = maps.length === 0 ? "no maps" : `${thousands(maps.length)} ${maps.length === 1 ? "map" : "maps"}, ${bytes}`;
  return cell("", { links: named.map((link, i): CellLink => ({ ...link, before: i === 0 ? "" : ", " })), note, cls: "wordy" });
}
