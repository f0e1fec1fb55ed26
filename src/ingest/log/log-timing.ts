import type { FindingCollector } from "../../core/findings/collect.ts";
import { LOG } from "../../core/findings/log.ts";
import type { LogTable } from "../../csv/log-table.ts";
import { parseTimecode } from "../../time/timecode.ts";
import { readNumber } from "../written/number.ts";
import type { LogHead } from "./log-keys.ts";
import type { LogLayout } from "./log-layout.ts";
import type { LogTiming } from "./log-record.ts";

/** When the rows of a log were; rows without a readable time are marked in `rejected`, each with its finding. */
export function timingOf(
  table: LogTable,
  layout: LogLayout,
  head: LogHead,
  file: string,
  rejected: Uint8Array,
  found: FindingCollector,
): LogTiming {
  const { timing } = layout;
  if (timing === null) {
    rejected.fill(1);
    return { kind: "frame", frames: new Int32Array(table.rows).fill(-1), start: null };
  }
  if (timing.name === "timecode") {
    const frames = table.labels ?? new Int32Array(table.rows).fill(-1);
    settleLabels(table, timing.column, frames, head, file, rejected, found);
    return { kind: "timecode", frames };
  }
  const seconds = settleCounts(table, timing.column, timing.name, head, file, rejected, found);
  if (timing.name === "time_s") return { kind: "time", seconds, start: head.start };
  return { kind: "frame", frames: Int32Array.from(seconds, (value) => (Number.isNaN(value) ? -1 : value)), start: head.start };
}

function settleLabels(
  table: LogTable,
  column: number,
  frames: Int32Array,
  head: LogHead,
  file: string,
  rejected: Uint8Array,
  found: FindingCollector,
): void {
  for (let row = 0; row < table.rows; row++) {
    if ((frames[row] as number) >= 0 || rejected[row] === 1) continue;
    const text = table.cell(row, column).text.trim();
    const result = text === "" ? null : parseTimecode(text, head.rate, head.dropFrame);
    if (result?.ok) {
      frames[row] = result.frame;
      continue;
    }
    rejected[row] = 1;
    const dropped = result?.kind === "dropped-label";
    found.addIn(file, dropped ? LOG.droppedLabel : LOG.badTimecode, () => ({
      place: table.cell(row, column).place,
      field: "timecode",
      message: result?.problem ?? "the timecode is blank",
      hint: /[.,]\d{3,}$/.test(text)
        ? "A time of day with thousandths is no timecode: log the timecode, or seconds from the start in time_s."
        : dropped
          ? 'Look at the recorder\'s drop-frame setting; if its labels are not drop-frame, write "# drop_frame: false".'
          : "Write hours:minutes:seconds:frames at the log's rate. The row is rejected until then.",
    }));
  }
}

function settleCounts(
  table: LogTable,
  column: number,
  name: "frame" | "time_s",
  head: LogHead,
  file: string,
  rejected: Uint8Array,
  found: FindingCollector,
): Float64Array {
  const values = table.numbers[column] ?? new Float64Array(table.rows).fill(Number.NaN);
  for (const { row, column: c } of table.odd) {
    if (c !== column) continue;
    const number = readNumber(table.cell(row, c).text, head.decimal);
    if (number.ok) values[row] = number.value;
  }
  for (let row = 0; row < table.rows; row++) {
    const value = values[row] as number;
    const good = value >= 0 && (name === "time_s" ? Number.isFinite(value) : value < 2 ** 31 && Number.isInteger(value));
    if (good) continue;
    values[row] = Number.NaN;
    if (rejected[row] === 1) continue;
    rejected[row] = 1;
    found.addIn(file, LOG.badCount, () => {
      const cell = table.cell(row, column);
      const text = cell.text.trim();
      return {
        place: cell.place,
        field: name,
        message: text === "" ? `${name} is blank` : `${name} cannot be used: "${text}"`,
        hint: name === "frame" ? "Write a whole number from 0 on." : "Write seconds from 0 on, such as 0.0417.",
      };
    });
  }
  return values;
}
