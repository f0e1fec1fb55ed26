/** The editorial folder of a pack. */
import { stableJson } from "../../core/stable-json.ts";
import type { DaySummary } from "../../summary/types.ts";
import { rateLabel } from "../../time/frame-rate.ts";
import type { Tool } from "../day-json.ts";
import type { FormatLosses, LeftOut } from "../losses.ts";
import { tableResource } from "../table-resource.ts";
import { EDL_LOSSES, edlTexts, fitsEditList } from "./edl.ts";
import { OTIO_LOSSES, otioText } from "./otio.ts";
import { type CameraReel, cameraReels, type RateGroup, rateGroups, rateName } from "./reels.ts";
import { BIN_COLUMNS, binsCsv, MARKER_COLUMNS, markersCsv, TABLE_LOSSES, type TableColumn } from "./tables.ts";

export interface TextFile {
  /** Relative to the pack. */
  readonly name: string;
  readonly text: string;
}

export interface EditorialFiles {
  readonly files: readonly TextFile[];
  readonly leftOut: readonly LeftOut[];
}

export const EDITORIAL_LOSSES: readonly FormatLosses[] = [OTIO_LOSSES, EDL_LOSSES, TABLE_LOSSES];

const FOLDER = "editorial";

/**
 * A timeline per camera, an edit list per camera and rate (that of the show's rate has the bare name), the two tables and
 * their data package. A camera none of whose takes has a timecode has no timeline and no list.
 */
export function editorialFiles(summary: DaySummary, tool: Tool): EditorialFiles {
  const reels = cameraReels(summary);
  const base = `${FOLDER}/${summary.show.code}-${summary.date}`;
  const timed = reels.filter((reel) => reel.takes.length > 0);
  const timelines = timed.map((reel) => ({ name: `${base}-${reel.fileName}.otio`, text: otioText(summary, reel, tool) }));
  const lists = timed.flatMap((reel) => rateGroups(reel).flatMap((group) => editLists(summary, reel, group, base)));
  return {
    files: [
      ...timelines,
      ...lists,
      { name: `${FOLDER}/markers.csv`, text: markersCsv(summary) },
      { name: `${FOLDER}/bins.csv`, text: binsCsv(summary) },
      { name: `${FOLDER}/datapackage.json`, text: editorialPackage(summary) },
    ],
    leftOut: reels.flatMap(leftOutOf),
  };
}

function editLists(summary: DaySummary, reel: CameraReel, group: RateGroup, base: string): readonly TextFile[] {
  if (!fitsEditList(group.rate)) return [];
  const rate = rateName(group.rate, group.dropFrame);
  const own = rate === rateName(summary.show.rate, summary.show.dropFrame) ? "" : `-${rate}`;
  return edlTexts(summary, reel.camera, group).map((text, i) => ({
    name: `${base}-${reel.fileName}${own}${i === 0 ? "" : `-part-${i + 1}`}.edl`,
    text,
  }));
}

function leftOutOf(reel: CameraReel): readonly LeftOut[] {
  const fast = rateGroups(reel).filter((group) => !fitsEditList(group.rate));
  return [
    ...reel.untimed.map((t) => ({ take: t.take.address, files: "editorial/*.otio, *.edl", reason: "it has no timecode." })),
    ...fast.flatMap((group) =>
      group.takes.map(({ summary }) => ({
        take: summary.take.address,
        files: "editorial/*.edl",
        reason: `timecode at ${rateLabel(group.rate)} frames a second does not fit the columns.`,
      })),
    ),
  ];
}

function editorialPackage(summary: DaySummary): string {
  return stableJson({
    profile: "tabular-data-package",
    name: `${summary.show.code.toLowerCase()}-${summary.date}-editorial`,
    title: `${summary.show.title}, ${summary.date}, editorial`,
    resources: [
      resource("markers", "A row a mark inside a take, in shooting order.", MARKER_COLUMNS),
      resource("bins", "A row a take and camera, by scene.", BIN_COLUMNS),
    ],
  });
}

function resource(name: string, description: string, columns: readonly TableColumn[]) {
  return tableResource(
    name,
    description,
    columns.map((column) => ({ name: column.name, type: column.type, description: column.about })),
  );
}
