/** Where a log row falls in a take. */
import type { LensLog } from "../ingest/log/log-record.ts";
import { framesPerDay } from "../time/timecode.ts";
import { framesSinceStart, type PictureFrame } from "./clock.ts";
import type { TakeDraft } from "./draft.ts";

/** Frames since the take's start, perhaps a fraction; `null` when the take has no extent. */
export function positionIn(draft: TakeDraft, log: LensLog, row: number, clock: PictureFrame): number | null {
  if (draft.durationFrames === 0) return null;
  const picture = clock(row, draft.rate, draft.dropFrame);
  if (picture === null) return framesSinceStart(log, row, draft.rate) + log.keys.clockOffsetFrames;
  if (draft.inFrame === null) return null;
  const perDay = framesPerDay(draft.rate, draft.dropFrame);
  const forward = (((picture - draft.inFrame) % perDay) + perDay) % perDay;
  return forward > perDay / 2 ? forward - perDay : forward;
}
