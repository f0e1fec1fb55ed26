/** Labels of a log that say another way of counting than the log does. */
import { MATCH } from "../../core/findings/match.ts";
import type { LensLog } from "../../ingest/log/log-record.ts";
import { droppedPerMinute, nominalRate, rateLabel } from "../../time/frame-rate.ts";
import type { DayContext } from "./day.ts";

export function checkLogLabels({ input, tell }: DayContext): void {
  for (const log of input.logs) {
    const row = droppingRow(log);
    if (row === null) continue;
    tell(MATCH.dropsLabels, {
      place: log.cell(row, "timecode").place,
      field: "timecode",
      message: `The log is read as non-drop-frame at ${rateLabel(log.rate)}, and its labels leave out the first ${droppedPerMinute(log.rate)} of each minute, as drop-frame does.`,
      hint: 'Write "# drop_frame: true" above the header row of the log, or drop_frame: true in show.yaml.',
    });
  }
}

/**
 * The first row after labels that drop-frame leaves out, when every minute that the log runs through has them left out and no row
 * has such a label; `null` otherwise. Minutes divisible by ten keep their labels either way.
 */
function droppingRow(log: LensLog): number | null {
  const dropped = droppedPerMinute(log.rate);
  if (log.dropFrame || dropped === 0 || log.timing.kind !== "timecode") return null;
  const perMinute = nominalRate(log.rate) * 60;
  const { frames } = log.timing;
  let first: number | null = null;
  let before = -1;
  for (let row = 0; row < frames.length; row++) {
    const frame = frames[row] as number;
    if (log.rejected[row] === 1 || frame < 0) continue;
    const inMinute = frame % perMinute;
    const keepsLabels = Math.floor(frame / perMinute) % 10 === 0;
    if (!keepsLabels && inMinute < dropped) return null;
    if (!keepsLabels && inMinute === dropped && before === frame - dropped - 1) first ??= row;
    before = frame;
  }
  return first;
}
