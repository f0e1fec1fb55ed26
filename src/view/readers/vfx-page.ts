/** The day for VFX: plates with hero and clean paired, their lens look and files, then every other take. */
import { NOT_CALCULATED, NOT_LOGGED, NOT_RECORDED } from "../../format/absent.ts";
import { fixed, thousands } from "../../format/number.ts";
import { stopRange } from "../../format/stop.ts";
import type { TakeSummary } from "../../summary/types.ts";
import type { PageModel } from "../context.ts";
import type { DayContext } from "../day/day-context.ts";
import { type DayHead, dayHead, dayTitle } from "../day/day-page.ts";
import { distanceInColumn, distanceUnit, rangeInColumn } from "../distances.ts";
import { type FileLink, fileLinks } from "../files.ts";
import { dayPath, hrefTo, takePath } from "../links.ts";
import { dayShort, plateWords, takeName } from "../names.ts";
import { pageBase } from "../page.ts";
import { type Cell, type Column, cell, column, num, numOr, type Row, row, type TableModel, table, textOr } from "../table.ts";
import { focalRange } from "../take/take-facts.ts";
import { calibrationWords } from "../take/take-readout.ts";
import { type PlatePair, pairPlates } from "./plates.ts";

const PLATE_COLUMN = "Plate";

export interface PlateGroup {
  readonly id: string;
  readonly heading: string;
  /** What differs between the hero and its clean plate, in words. */
  readonly sentence: string;
  readonly table: TableModel;
  readonly files: readonly { readonly take: string; readonly files: readonly FileLink[] }[];
}

export interface VfxPage extends PageModel, DayHead {
  readonly groups: readonly PlateGroup[];
  readonly hasGroups: boolean;
  readonly others: TableModel;
  readonly hasOthers: boolean;
  readonly othersHeading: string;
  readonly files: readonly FileLink[];
  readonly hasFiles: boolean;
}

export function vfxPage(day: DayContext): VfxPage {
  const { summary, site } = day;
  const path = dayPath(summary.date, "vfx");
  const ref = { date: summary.date, day: summary.day.record.day };
  const plates = day.takes.filter((t) => t.take.plate !== null);
  const others = day.takes.filter((t) => t.take.plate === null);
  const files = fileLinks(
    site,
    summary.date,
    path,
    (name) => name === "day.json" || name === "datapackage.json" || name === "takes.csv",
  );
  const columns = vfxColumns(day);
  const plain = columns.filter((c) => c.label !== PLATE_COLUMN);
  return {
    ...pageBase(
      {
        path,
        title: `VFX, ${dayTitle(day)}`,
        trail: [
          { label: dayShort(ref), path: dayPath(summary.date) },
          { label: "VFX", path },
        ],
        styles: ["day.css", "wide.css"],
        landscape: true,
      },
      site,
    ),
    ...dayHead(day),
    groups: pairPlates(plates).map((pair, i) => plateGroup(pair, day, path, columns, i)),
    hasGroups: plates.length > 0,
    others: table(
      "others-table",
      "Takes that are not marked as plates",
      plain,
      others.map((t) => vfxRow(t, day, path, false)),
    ),
    hasOthers: others.length > 0,
    othersHeading: plates.length === 0 ? "All takes" : "Takes that are not plates",
    files,
    hasFiles: files.length > 0,
  };
}

function plateGroup(pair: PlatePair, day: DayContext, path: string, columns: readonly Column[], i: number): PlateGroup {
  const { date } = day.summary;
  return {
    id: `plate-${i + 1}`,
    heading: pair.heading,
    sentence: pair.sentence,
    table: table(
      `plate-table-${i + 1}`,
      `Plates: ${pair.heading}`,
      columns,
      pair.takes.map((t) => vfxRow(t, day, path, true)),
    ),
    files: pair.takes
      .map((t) => {
        const folder = `vfx/${t.take.address}/`;
        return { take: takeName(t.take), files: fileLinks(day.site, date, path, (name) => name.startsWith(folder), folder) };
      })
      .filter((entry) => entry.files.length > 0),
  };
}

function vfxColumns(day: DayContext): readonly Column[] {
  const unit = distanceUnit(day.site.show.distances);
  return [
    column("Take"),
    column(PLATE_COLUMN),
    column("Clip"),
    column("Timecode in"),
    column("Length", { unit: "frames", num: true }),
    column("Lens"),
    column("Sensor mode"),
    column("Focal length"),
    column("Stop"),
    column("Focus", { unit }),
    column("Lens height", { unit, num: true }),
    column("Tilt", { unit: "degrees", num: true }),
    column("Entrance pupil", { unit: "mm", num: true }),
    column("Distortion", { unit: "% at corner", num: true }),
    column("Shading", { unit: "stops at corner", num: true }),
    column("Look from"),
    column("Not logged", { unit: "frames", num: true }),
  ];
}

function vfxRow(t: TakeSummary, day: DayContext, path: string, asPlate: boolean): Row {
  const { take } = t;
  const { distances } = day.site.show;
  const absent = take.track === null ? NOT_RECORDED : NOT_LOGGED;
  const lens = take.lensId === null ? undefined : day.lensPaths.get(take.lensId);
  return row(cell(takeName(take), { nb: true, href: hrefTo(path, takePath(day.summary.date, take.address)) }), [
    ...(asPlate ? [textOr(plateWords(take), NOT_RECORDED)] : []),
    textOr(take.clip, NOT_RECORDED, { nb: true }),
    textOr(t.timecodeIn, NOT_RECORDED, { nb: true }),
    take.durationFrames === 0 ? cell(NOT_RECORDED, { num: true, absent: true }) : num(thousands(take.durationFrames)),
    lens === undefined
      ? textOr(take.lensId, NOT_RECORDED, { nb: true })
      : cell(take.lensId ?? "", { nb: true, href: hrefTo(path, lens) }),
    textOr(take.sensorMode?.sensorMode ?? null, NOT_RECORDED),
    textOr(t.focal === null ? null : focalRange(t.focal.minMm, t.focal.maxMm), absent, { nb: true }),
    textOr(t.tStop === null ? null : stopRange(t.tStop.widest, t.tStop.deepest), absent, { nb: true }),
    textOr(t.focus === null ? null : rangeInColumn(t.focus.nearestM, t.focus.farthestM, distances), absent, { nb: true }),
    numOr(t.cameraHeightM === null ? null : distanceInColumn(t.cameraHeightM.value, distances), NOT_RECORDED),
    numOr(t.tiltDeg === null ? null : fixed(t.tiltDeg.value, 1), NOT_RECORDED),
    pupilCell(t),
    numOr(t.distortionPercent === null ? null : fixed(t.distortionPercent.corner, 2), NOT_CALCULATED),
    numOr(t.shadingStops === null ? null : fixed(t.shadingStops.corner, 2), NOT_CALCULATED),
    textOr(calibrationWords(t.calibration) === "" ? null : calibrationWords(t.calibration), "no table"),
    num(take.track === null ? "all" : thousands(t.framesMissing)),
  ]);
}

function pupilCell(t: TakeSummary): Cell {
  const pupil = t.entrancePupilMm;
  if (pupil === null) return cell(NOT_RECORDED, { num: true, absent: true });
  const low = fixed(pupil.min, 0);
  const high = fixed(pupil.max, 0);
  return num(low === high ? low : `${low} to ${high}`);
}
