/** One take's log on the take's own frames. */

import type { EncoderTable } from "../ingest/log/encoder-table.ts";
import { METRES_PER_FOCUS_UNIT } from "../ingest/log/focus-units.ts";
import { LOG_COLUMNS, type LogColumn } from "../ingest/log/log-record.ts";
import type { Lens } from "../ingest/records.ts";
import type { LogShare } from "./distribute.ts";
import { dioptresOfReadings, encoderStep } from "./encoder-focus.ts";
import type { FrameRun, LensTrack } from "./types.ts";

/**
 * Copies the rows that fell on a take's frames into arrays of the take's length.
 * Distances measured from the front become image-plane distances with the lens's front-to-image length;
 * without it there is no focus, and the track says so. A log with encoder readings and no distances has them through the marks of
 * the lens (`encoders`), which are from the image plane.
 */
export function lensTrack(share: LogShare, lens: Lens | null, encoders: EncoderTable | null = null): LensTrack {
  const { log, rowOfFrame } = share;
  const frames = rowOfFrame.length;
  const logged = new Uint8Array(frames);
  for (let i = 0; i < frames; i++) if ((rowOfFrame[i] as number) >= 0) logged[i] = 1;

  const fromFront = log.keys.distanceFrom === "front";
  const frontToImageM = lens?.frontToImageMm == null ? null : lens.frontToImageMm / 1000;
  const focusUnconverted = fromFront && frontToImageM === null && log.columns.focus !== undefined;
  const columns: Partial<Record<LogColumn, Float64Array>> = {};
  for (const name of LOG_COLUMNS) {
    const source = log.columns[name];
    if (source === undefined || (name === "focus" && focusUnconverted)) continue;
    const values = new Float64Array(frames).fill(Number.NaN);
    for (let i = 0; i < frames; i++) {
      const row = rowOfFrame[i] as number;
      if (row >= 0) values[i] = source[row] as number;
    }
    if (name === "focus" && fromFront && frontToImageM !== null) addToDistance(values, frontToImageM);
    columns[name] = values;
  }
  const readings = log.columns.focus === undefined && encoders !== null ? columns.encoder_focus : undefined;
  if (readings !== undefined && encoders !== null) columns.focus = dioptresOfReadings(encoders, readings);
  return {
    frames,
    logged,
    framesLogged: share.samples,
    columns,
    row: rowOfFrame,
    convention: log.keys.convention,
    unknown: unknownColumns(share, focusUnconverted),
    focusUnconverted,
    ...(readings !== undefined && encoders !== null ? { focusTable: { lens: encoders.lens, file: encoders.file } } : {}),
    focusQuantisation:
      readings !== undefined && encoders !== null
        ? encoderStep(encoders, writtenDecimals(share, readings, "encoder_focus"))
        : writtenStep(share, columns.focus),
  };
}

/** Unknown columns by frame; a distance that could not be converted travels with them as it was written. */
function unknownColumns(share: LogShare, focusUnconverted: boolean): LensTrack["unknown"] {
  const { log, rowOfFrame } = share;
  const byFrame = (text: (row: number) => string) => (frame: number) => {
    const row = rowOfFrame[frame] ?? -1;
    return row < 0 ? "" : text(row);
  };
  const columns = log.unknown.map(({ name, text }) => ({ name, text: byFrame(text) }));
  if (focusUnconverted && log.focusField !== null) {
    columns.push({ name: `${log.focusField}_from_front`, text: byFrame((row) => log.cell(row, "focus").text) });
  }
  return columns;
}

/** Dioptres of a distance that is longer by some metres; infinity stays infinity. */
function addToDistance(dioptres: Float64Array, metres: number): void {
  for (let i = 0; i < dioptres.length; i++) {
    const d = dioptres[i] as number;
    if (d > 0) dioptres[i] = 1 / (1 / d + metres);
  }
}

/**
 * Resolution of the written distances in dioptres at the take's nearest distance, from the decimals of its first rows;
 * 0 when there is no focus. A step of x metres is x / D^2 dioptres.
 */
function writtenStep(share: LogShare, dioptres: Float64Array | undefined): number {
  const { log } = share;
  if (dioptres === undefined || log.focusField === null) return 0;
  const step = 10 ** -writtenDecimals(share, dioptres, "focus");
  const metres = METRES_PER_FOCUS_UNIT[log.focusField];
  if (metres === undefined) return step;
  let nearest = 0;
  for (const d of dioptres) if (d > nearest) nearest = d;
  return step * metres * nearest * nearest;
}

/** Most decimals among a column's first cells; cells without a positive value are passed over. */
function writtenDecimals({ log, rowOfFrame }: LogShare, values: Float64Array, column: string): number {
  let decimals = 0;
  let looked = 0;
  for (let i = 0; i < rowOfFrame.length && looked < 50; i++) {
    const row = rowOfFrame[i] as number;
    if (row < 0 || !((values[i] as number) > 0)) continue;
    decimals = Math.max(decimals, /[.,](\d+)$/.exec(log.cell(row, column).text.trim())?.[1]?.length ?? 0);
    looked++;
  }
  return decimals;
}

/** Runs of frames that the log lacks. */
export function gapsOf(track: LensTrack): FrameRun[] {
  const gaps: FrameRun[] = [];
  let first = -1;
  for (let i = 0; i <= track.frames; i++) {
    const missing = i < track.frames && track.logged[i] === 0;
    if (missing && first < 0) first = i;
    if (!missing && first >= 0) {
      gaps.push({ first, last: i - 1 });
      first = -1;
    }
  }
  return gaps;
}
