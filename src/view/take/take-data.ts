/** The data script of a take: every frame's figures, packed, for the page in the browser. */
import { type PackedColumn, packColumn } from "../../core/packed-column.ts";
import { metresFromDioptres } from "../../core/quantity.ts";
import { tilt } from "../../format/degrees.ts";
import { distance } from "../../format/length.ts";
import { fixed } from "../../format/number.ts";
import type { FrameValues } from "../../format/readout.ts";
import { FRAME_COLUMNS, type FrameColumn, type TakeRecord } from "../../format/take-record.ts";
import { showsWish } from "../../format/units.ts";
import type { TakeSummary } from "../../summary/types.ts";
import type { StillFiles } from "../context.ts";
import { frameValues, readoutSources } from "../frame-values.ts";
import { hrefTo, takeDataPath, takePath } from "../links.ts";
import { type Distances, takeName } from "../names.ts";
import { lookRecord } from "./take-data-look.ts";

/** A script to write: path below the output folder, and its text. */
export interface DataScript {
  readonly path: string;
  readonly text: string;
}

/** Global that data scripts call, defined by `assets/take.js`. */
const RECEIVER = "lensDaybookTake";

/** The script of a take's page; `null` for a take without a logged frame, whose page has nothing to move through. */
export function takeDataScript(
  date: string,
  t: TakeSummary,
  distances: Distances,
  still: StillFiles | null = null,
): DataScript | null {
  const record = takeRecord(t, distances, still === null ? null : stillHref(date, t.take.address, still));
  if (record === null) return null;
  return { path: takeDataPath(date, t.take.address), text: `${RECEIVER}(${JSON.stringify(record)});\n` };
}

function stillHref(date: string, address: string, still: StillFiles): string | null {
  return still.script === undefined || still.script === null ? null : hrefTo(takePath(date, address), still.script);
}

/** Plain data of a take: columns of whole numbers, each just fine enough that every frame prints as the builder prints it. */
export function takeRecord(t: TakeSummary, distances: Distances, still: string | null = null): TakeRecord | null {
  const { take, middleFrame, perFrame } = t;
  if (middleFrame === null || perFrame === null) return null;
  const values = Array.from({ length: perFrame.frames }, (_, i) => frameValues(t, i)).filter((v) => v !== null);
  const calibrations = new Map<string, { readonly index: number; readonly source: string; readonly words: string }>();
  const calibration = values.map(({ logged, lookSource: source, calibration: words }) => {
    if (!logged) return Number.NaN;
    const key = `${source}\n${words}`;
    const known = calibrations.get(key) ?? { index: calibrations.size, source, words };
    calibrations.set(key, known);
    return known.index;
  });
  return {
    address: take.address,
    name: takeName(take),
    scene: take.scene,
    roll: take.roll,
    clip: take.clip,
    lens: take.lensId,
    rate: { num: take.rate.num, denom: take.rate.denom },
    dropFrame: take.dropFrame,
    inFrame: take.inFrame,
    frames: perFrame.frames,
    middle: middleFrame,
    distances: showsWish(distances),
    sources: readoutSources(t),
    logged: packColumn(perFrame.logged, 1),
    focus: packedFocus(perFrame.focusDioptres),
    columns: packedColumns(values),
    calibrations: [...calibrations.values()].map(({ source, words }) => ({ source, words })),
    calibration: packColumn(calibration, 1),
    look: lookRecord(t),
    still,
  };
}

const METRES = (dioptres: number): string => distance(metresFromDioptres(dioptres), "both");

/** The readout has one decimal, the copied table two; a value may round well to the one and not to the other. */
const BOTH_WAYS = (value: number): string => `${fixed(value, 1)} ${fixed(value, 2)}`;

/** Stops, and the brightness of the table beside the lens look. */
const SHADING = (value: number): string => `${fixed(value, 2)} ${fixed(2 ** value, 3)}`;

/** Where each column comes from and how it is printed. */
const COLUMNS: Readonly<Record<FrameColumn, readonly [of: (v: FrameValues) => number, print: (value: number) => string]>> = {
  near: [(v) => v.nearDioptres, METRES],
  far: [(v) => v.farDioptres, METRES],
  tStop: [(v) => v.tStop, (value) => fixed(value, 2)],
  focalMm: [(v) => v.focalMm, BOTH_WAYS],
  hyperfocal: [(v) => 1 / v.hyperfocalM, METRES],
  acrossDeg: [(v) => v.acrossDeg, BOTH_WAYS],
  upDeg: [(v) => v.upDeg, BOTH_WAYS],
  distortionC: [(v) => v.distortion[0], (value) => fixed(value, 2)],
  distortionS: [(v) => v.distortion[1], (value) => fixed(value, 2)],
  distortionT: [(v) => v.distortion[2], (value) => fixed(value, 2)],
  shadingC: [(v) => v.shading[0], SHADING],
  shadingS: [(v) => v.shading[1], SHADING],
  shadingT: [(v) => v.shading[2], SHADING],
  pupilMm: [(v) => v.pupilMm, (value) => fixed(value, 0)],
  heightM: [(v) => v.heightM, (value) => distance(value, "both")],
  tiltDeg: [(v) => v.tiltDeg, tilt],
};

function packedColumns(values: readonly FrameValues[]): TakeRecord["columns"] {
  const columns: Partial<Record<FrameColumn, PackedColumn>> = {};
  for (const name of FRAME_COLUMNS) {
    const [of, print] = COLUMNS[name];
    const column = values.map((v) => (v.logged ? of(v) : Number.NaN));
    if (!column.every(Number.isNaN)) columns[name] = packColumn(column, coarsest(column, print));
  }
  return columns;
}

/** Steps that are tried, coarse to fine; the last one is kept when none prints alike. */
const STEPS = [1, 10, 100, 1000, 2000, 5000, 1e4, 2e4, 5e4, 1e5, 2e5, 5e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12];

/** The coarsest step whose values print as the values themselves do. */
function coarsest(column: readonly number[], print: (value: number) => string): number {
  const texts = new Map<number, string>();
  for (const value of column) if (!Number.isNaN(value) && !texts.has(value)) texts.set(value, print(value));
  const alike = (by: number): boolean => {
    for (const [value, text] of texts) if (print(Math.round(value * by) / by) !== text) return false;
    return true;
  };
  return STEPS.find(alike) ?? 1e12;
}

/** Metres as the log has them, so that the very same number comes back; as fine as needed to print alike where that fails. */
function packedFocus(dioptres: Float64Array): PackedColumn {
  const metres = Array.from(dioptres, (d) => (d <= 0 ? 0 : 1 / d));
  const back = (m: number): number => (m === 0 ? 0 : 1 / m);
  const exact = STEPS.find((by) => metres.every((m, i) => Number.isNaN(m) || back(Math.round(m * by) / by) === dioptres[i]));
  return packColumn(metres, exact ?? coarsest(metres, (m) => METRES(back(m))));
}
