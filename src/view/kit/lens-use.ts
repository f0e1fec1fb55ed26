/** Where a lens was used, in focus and stop: the map and its table. */
import { focusStopMap } from "../../chart/kit/focus-stop-map.ts";
import { svg } from "../../chart/svg.ts";
import { distance } from "../../format/length.ts";
import { tStop } from "../../format/stop.ts";
import { minutesSeconds } from "../../format/time.ts";
import { plural } from "../../format/words.ts";
import { bandEdges, type LensMap } from "../../summary/lens-map.ts";
import { type FrameRate, framesPerSecond } from "../../time/frame-rate.ts";
import type { Distances } from "../names.ts";
import { cell, column, FIXED, num, row, type TableModel, table } from "../table.ts";
import type { DrawingView } from "./kit-drawings.ts";

const SIZE = { width: 620, height: 340 } as const;

export interface LensUseView {
  readonly has: boolean;
  readonly drawing: DrawingView;
  readonly table: TableModel;
  readonly sentence: string;
}

/** The cells are drawn and listed alike, so that the table says what the map shows. */
export function lensUseView(map: LensMap, rate: FrameRate, distances: Distances): LensUseView {
  const fps = framesPerSecond(rate);
  const has = map.cells.length > 0;
  return {
    has,
    drawing: {
      svg: svg(focusStopMap(map, { ...SIZE, distances, framesPerSecond: fps }), { idPrefix: "use" }),
      label: "Focus and stop used, drawn",
    },
    table: useTable(map, fps, distances),
    sentence: has ? sentenceOf(map) : "On no take with focus, stop and focal length logged.",
  };
}

function sentenceOf(map: LensMap): string {
  const outside = map.cells.reduce((sum, cell) => sum + (cell.outside ? cell.frames : 0), 0);
  const parts = [
    "Filled, lightest first: under 10 seconds, to a minute, longer. All focal lengths together, at the show's rate.",
    outside === 0
      ? ""
      : `Outside the table's range of focus and stop: ${plural(outside, "frame")}; the nearest point stands in there.`,
    map.framesUnknown === 0 ? "" : `${plural(map.framesUnknown, "frame")} without focus, stop or focal length are not on the map.`,
  ];
  return parts.filter((part) => part !== "").join(" ");
}

function useTable(map: LensMap, fps: number, distances: Distances): TableModel {
  const stops = [...new Set(map.cells.map((c) => c.thirds))].sort((a, b) => a - b);
  const bands = [...new Set(map.cells.map((c) => c.band))].sort((a, b) => a - b);
  return table(
    "use-table",
    "Time at each focus and stop, min:s",
    [
      column("Focus"),
      ...stops.map((thirds) => column(tStop(2 ** (thirds / 6)), { num: true })),
      column("All stops", { num: true }),
    ],
    bands.map((band) => {
      const here = map.cells.filter((c) => c.band === band);
      const all = here.reduce((sum, c) => sum + c.frames, 0);
      return row(cell(bandWords(band, distances), { nb: true }), [
        ...stops.map((thirds) => {
          const found = here.find((c) => c.thirds === thirds);
          return found === undefined ? cell("none", { num: true, absent: true }) : num(timeWords(found.frames / fps));
        }),
        num(timeWords(all / fps)),
      ]);
    }),
    { showCaption: true, cls: FIXED },
  );
}

/** A time that rounds to nothing is said to be short, not to be none. */
function timeWords(seconds: number): string {
  return seconds < 0.5 ? "under 0:01" : minutesSeconds(seconds);
}

function bandWords(band: number, distances: Distances): string {
  const { far, near } = bandEdges(band);
  const to = Number.isFinite(near) ? distance(1 / near, distances) : "the lens";
  return `${distance(far === 0 ? "inf" : 1 / far, distances)} to ${to}`;
}
