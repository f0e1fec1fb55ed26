/** The two tables of takes for VFX: how lens and camera stood, and the lens look with the files that carry it. */

import { NOT_CALCULATED, NOT_LOGGED, NOT_RECORDED } from "../../format/absent.ts";
import { fileSize } from "../../format/amounts.ts";
import { fixed, thousands } from "../../format/number.ts";
import { stopRange } from "../../format/stop.ts";
import { plural } from "../../format/words.ts";
import type { TakeSummary } from "../../summary/types.ts";
import type { PackFile } from "../context.ts";
import type { DayContext } from "../day/day-context.ts";
import { distanceInColumn, distanceUnit, rangeInColumn } from "../distances.ts";
import { packFileLink } from "../files.ts";
import { takeFacets } from "../filters.ts";
import { calibrationWords } from "../frame-values.ts";
import { hrefTo, packPath, takePath } from "../links.ts";
import { plateWords, takeName } from "../names.ts";
import { type Cell, cell, column, num, numOr, row, type TableModel, table, textOr } from "../table.ts";
import { focalRange } from "../take/take-facts.ts";

/** A row a take: lens, stop, focus, filters, and where the camera stood. `asPlates` adds what each take is a plate of. */
export function standTable(
  id: string,
  caption: string,
  takes: readonly TakeSummary[],
  day: DayContext,
  path: string,
  asPlates: boolean,
): TableModel {
  const { distances } = day.site.show;
  const unit = distanceUnit(distances);
  const columns = [
    column("Take"),
    ...(asPlates ? [column("Plate")] : []),
    column("Clip"),
    column("Timecode in"),
    column("Length", { unit: "frames", num: true }),
    column("Not logged", { unit: "frames", num: true }),
    column("Lens", { unit: "serial" }),
    column("Sensor mode"),
    column("Focal length"),
    column("Stop"),
    column("Focus", { unit }),
    column("Filters"),
    column("Lens height", { unit, num: true }),
    column("Tilt", { unit: "degrees", num: true }),
    column("Roll", { unit: "degrees", num: true }),
  ];
  const cells = (t: TakeSummary): readonly Cell[] => {
    const { take } = t;
    const absent = take.track === null ? NOT_RECORDED : NOT_LOGGED;
    return [
      ...(asPlates ? [textOr(plateWords(take), NOT_RECORDED)] : []),
      textOr(take.clip, NOT_RECORDED, { nb: true }),
      textOr(t.timecodeIn, NOT_RECORDED, { nb: true }),
      take.durationFrames === 0 ? cell(NOT_RECORDED, { num: true, absent: true }) : num(thousands(take.durationFrames)),
      num(take.track === null ? "all" : thousands(t.framesMissing), {
        value: take.track === null ? take.durationFrames : t.framesMissing,
      }),
      lensCell(t, day, path),
      textOr(take.sensorMode?.sensorMode ?? null, NOT_RECORDED),
      textOr(t.focal === null ? null : focalRange(t.focal.minMm, t.focal.maxMm), absent, { nb: true }),
      textOr(t.tStop === null ? null : stopRange(t.tStop.widest, t.tStop.deepest), absent, { nb: true }),
      textOr(t.focus === null ? null : rangeInColumn(t.focus.nearestM, t.focus.farthestM, distances), absent, { nb: true }),
      textOr(t.filters, NOT_RECORDED),
      numOr(t.cameraHeightM === null ? null : distanceInColumn(t.cameraHeightM.value, distances), NOT_RECORDED),
      numOr(t.tiltDeg === null ? null : fixed(t.tiltDeg.value, 1), NOT_RECORDED),
      numOr(t.rollDeg === null ? null : fixed(t.rollDeg.value, 1), NOT_RECORDED),
    ];
  };
  return table(
    id,
    caption,
    columns,
    takes.map((t) => row(takeCell(t, day, path), cells(t), "", { facets: takeFacets(t) })),
    { order: orderOf(asPlates), file: packFileLink(day.site, day.summary.date, path, "takes.csv") },
  );
}

function orderOf(asPlates: boolean): string {
  return asPlates ? "the order of the plates" : "shooting order";
}

/** A row a take: the lens look at its middle logged frame, and the take's files as links with their size. */
export function lookTable(id: string, caption: string, takes: readonly TakeSummary[], day: DayContext, path: string): TableModel {
  const filesOf = new Map(takes.map((t) => [t, filesOfTake(t, day)]));
  const kinds = FILE_KINDS.filter((kind) => [...filesOf.values()].some((files) => files.some((file) => kind.is(file.base))));
  const { date } = day.summary;
  return table(
    id,
    caption,
    [
      column("Take"),
      column("Entrance pupil", { unit: "mm", num: true }),
      column("Distortion", { unit: "% at corner", num: true }),
      column("Shading", { unit: "stops at corner", num: true }),
      column("Lens look from"),
      ...kinds.map((kind) => column(kind.label, { unit: kind.unit, num: true })),
    ],
    takes.map((t) => {
      const files = filesOf.get(t) ?? [];
      const cells = [
        pupilCell(t),
        numOr(t.distortionPercent === null ? null : fixed(t.distortionPercent.corner, 2), NOT_CALCULATED),
        numOr(t.shadingStops === null ? null : fixed(t.shadingStops.corner, 2), NOT_CALCULATED),
        textOr(calibrationWords(t.calibration) === "" ? null : calibrationWords(t.calibration), "no table"),
        ...kinds.map((kind) =>
          fileCell(
            files.filter((file) => kind.is(file.base)),
            (name) => hrefTo(path, packPath(date, name)),
          ),
        ),
      ];
      return row(takeCell(t, day, path), cells, "", { facets: takeFacets(t) });
    }),
    { showCaption: true },
  );
}

interface TakeFile extends PackFile {
  /** Name within the take's folder. */
  readonly base: string;
}

/** Columns of files, in the order of use. */
const FILE_KINDS: readonly { readonly label: string; readonly unit: string; readonly is: (base: string) => boolean }[] = [
  { label: "Every frame", unit: "CSV", is: (base) => base === "lens.csv" },
  { label: "OpenTrackIO", unit: "JSON Lines", is: (base) => base === "lens.opentrackio.jsonl" },
  { label: "Camera", unit: "USD", is: (base) => base === "camera.usda" },
  { label: "Undistort", unit: "EXR maps", is: (base) => base.startsWith("undistort-") },
  { label: "Redistort", unit: "EXR maps", is: (base) => base.startsWith("redistort-") },
  { label: "Shading", unit: "EXR maps", is: (base) => base.startsWith("shading-") },
  { label: "Frames of maps", unit: "CSV", is: (base) => base === "maps.csv" },
  { label: "Columns", unit: "JSON", is: (base) => base === "datapackage.json" },
];

function filesOfTake(t: TakeSummary, day: DayContext): readonly TakeFile[] {
  const folder = `vfx/${t.take.address}/`;
  return day.site.packFiles
    .filter((file) => file.name.startsWith(folder))
    .map((file) => ({ ...file, base: file.name.slice(folder.length) }));
}

/** "29 maps, 6.7 MB", a link to the first; the count is left out for one. */
function fileCell(files: readonly TakeFile[], hrefOf: (name: string) => string): Cell {
  const [first] = files;
  if (first === undefined) return cell("none", { num: true, absent: true });
  const bytes = files.reduce((sum, file) => sum + file.bytes, 0);
  const size = fileSize(bytes);
  const text = files.length === 1 ? size : `${plural(files.length, "map")}, ${size}`;
  return cell(text, { num: true, href: hrefOf(first.name), value: bytes });
}

function takeCell(t: TakeSummary, day: DayContext, path: string): Cell {
  return cell(takeName(t.take), { nb: true, href: hrefTo(path, takePath(day.summary.date, t.take.address)) });
}

function lensCell(t: TakeSummary, day: DayContext, path: string): Cell {
  const { lensId, lens } = t.take;
  if (lensId === null) return cell(NOT_RECORDED, { absent: true });
  const page = day.lensPaths.get(lensId);
  const serial = lens?.serial ?? null;
  const note = serial === null ? {} : { note: serial };
  return cell(lensId, { ...note, ...(page === undefined ? {} : { href: hrefTo(path, page) }) });
}

function pupilCell(t: TakeSummary): Cell {
  const pupil = t.entrancePupilMm;
  if (pupil === null) return cell(NOT_RECORDED, { num: true, absent: true });
  const low = fixed(pupil.min, 0);
  const high = fixed(pupil.max, 0);
  return num(low === high ? low : `${low} to ${high}`);
}
