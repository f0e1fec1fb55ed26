/** Focus from the readings of a focus encoder, through the marks of the lens (kit/encoders/<lens>.csv). */

import type { Finding } from "../core/finding.ts";
import { type FindingKind, findingOf } from "../core/findings/kind.ts";
import { LOG } from "../core/findings/log.ts";
import type { EncoderMark, EncoderTable } from "../ingest/log/encoder-table.ts";
import type { LogShare } from "./distribute.ts";

/**
 * Dioptres of a reading: linear in 1/distance between two marks, the nearest mark beyond them. NaN stays NaN.
 *
 * @example dioptresOfReading([{ encoder: 0, focusDioptres: 0 }, { encoder: 100, focusDioptres: 2 }], 50) // 1
 */
export function dioptresOfReading(marks: readonly Pick<EncoderMark, "encoder" | "focusDioptres">[], reading: number): number {
  if (Number.isNaN(reading)) return Number.NaN;
  let low = 0;
  let high = marks.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((marks[middle] as EncoderMark).encoder <= reading) low = middle;
    else high = middle;
  }
  const a = marks[low] as EncoderMark;
  const b = marks[high] as EncoderMark;
  const part = Math.min(1, Math.max(0, (reading - a.encoder) / (b.encoder - a.encoder)));
  return a.focusDioptres + part * (b.focusDioptres - a.focusDioptres);
}

/** The same for all frames of a take. */
export function dioptresOfReadings(table: EncoderTable, readings: Float64Array): Float64Array {
  return readings.map((reading) => dioptresOfReading(table.marks, reading));
}

/** The largest step in dioptres that one unit of the last written decimal of the readings makes. */
export function encoderStep(table: EncoderTable, decimals: number): number {
  let steepest = 0;
  table.marks.slice(1).forEach((mark, i) => {
    const before = table.marks[i] as EncoderMark;
    steepest = Math.max(steepest, Math.abs((mark.focusDioptres - before.focusDioptres) / (mark.encoder - before.encoder)));
  });
  return steepest * 10 ** -decimals;
}

/** What there is to say about a take whose log has encoder readings and no distances: no table, or readings beyond its marks. */
export function encoderFindings(share: LogShare, lensId: string | null, table: EncoderTable | null, address: string): Finding[] {
  const { log, rowOfFrame } = share;
  const readings = log.columns.encoder_focus;
  if (log.columns.focus !== undefined || readings === undefined) return [];
  const rows = [...rowOfFrame].filter((row) => row >= 0 && !Number.isNaN(readings[row] as number));
  const [first] = rows;
  if (first === undefined) return [];
  const say = (kind: FindingKind, row: number, message: string, hint: string): Finding[] => [
    findingOf(kind, { place: log.cell(row, "encoder_focus").place, field: "encoder_focus", message, hint, take: address }),
  ];
  if (table === null) {
    const lens = lensId ?? "<lens>";
    return say(
      LOG.noEncoderTable,
      first,
      `the log has encoder readings and no distances, and there is no kit/encoders/${lens}.csv`,
      `Write kit/encoders/${lens}.csv with the columns encoder and focus_m, a row for each mark of the lens${lensId === null ? ", and say the lens in the notes or the log" : ""}.`,
    );
  }
  const low = (table.marks[0] as EncoderMark).encoder;
  const high = (table.marks.at(-1) as EncoderMark).encoder;
  const beyond = rows.filter((row) => (readings[row] as number) < low || (readings[row] as number) > high);
  const [strange] = beyond;
  if (strange === undefined) return [];
  return say(
    LOG.encoderBeyond,
    strange,
    `encoder_focus is ${log.cell(strange, "encoder_focus").text.trim()}, and the marks of ${table.lens} go from ${low} to ${high}${beyond.length === 1 ? "" : `; ${beyond.length} frames of the take lie beyond`}`,
    `The distance of the nearest mark is used there. Look whether the encoder was calibrated anew, and add its end marks to ${table.file}.`,
  );
}
