/** Gives the rows of one log to the frames of the takes they name. */
import type { Finding } from "../core/finding.ts";
import { findingOf } from "../core/findings/kind.ts";
import { MATCH } from "../core/findings/match.ts";
import type { LensLog } from "../ingest/log/log-record.ts";
import type { DayRecord } from "../ingest/records.ts";
import { rateLabel } from "../time/frame-rate.ts";
import { hasOwnRate, type PictureFrame, pictureFrames } from "./clock.ts";
import type { TakeDraft } from "./draft.ts";
import type { DraftIndex } from "./draft-index.ts";
import { type KeyOf, type MatchRule, ruleOf } from "./match-rule.ts";
import { positionIn } from "./position.ts";
import { StrayRows } from "./stray-rows.ts";

/** Rows of one log that fell on one take's frames. */
export interface LogShare {
  readonly log: LensLog;
  readonly rule: MatchRule;
  /** Row of the log for each frame of the take, -1 where there is none. */
  readonly rowOfFrame: Int32Array;
  readonly samples: number;
}

export interface Distribution {
  readonly shares: ReadonlyMap<number, LogShare>;
  readonly findings: readonly Finding[];
}

export function distribute(log: LensLog, index: DraftIndex, record: DayRecord): Distribution {
  const findings: Finding[] = [];
  const rule = ruleOf(log);
  if (rule === null) {
    findings.push(
      findingOf(MATCH.namesNothing, {
        place: { file: log.file, line: 1, column: 1 },
        message: "The log names no clip, no slate and take, and no camera, so its rows belong to no take.",
        hint: 'Add a line such as "# clip: A012C003", or "# slate: 24B" with "# take: 3", or "# camera: A" above the header row.',
      }),
    );
    return { shares: new Map(), findings };
  }
  const key = (name: "clip" | "slate" | "take" | "camera", row: number): string | null => {
    const column = log.rowKeys[name]?.(row).trim();
    return column === undefined || column === "" ? log.keys[name] : column;
  };
  const candidatesOf = candidateFinder(log, rule, index, key);
  const clocks = new Map<string | null, PictureFrame>();
  const clockOf = (camera: string | null): PictureFrame => {
    const known = clocks.get(camera);
    if (known !== undefined) return known;
    const made = pictureFrames(log, camera, record);
    clocks.set(camera, made);
    return made;
  };

  const open = new Map<number, { rowOfFrame: Int32Array; distance: Float32Array | null; samples: number }>();
  const stray = new StrayRows();
  let last = -1; // rows come in runs of one take, so the take of the row before is asked first
  for (let row = 0; row < log.rows; row++) {
    if (log.rejected[row] === 1) continue;
    const candidates = candidatesOf(row);
    if (candidates.length === 0) {
      stray.nobody(row);
      continue;
    }
    let placed = false;
    const order = last >= 0 && candidates.length > 1 && candidates.includes(last) ? [last, ...candidates] : candidates;
    for (const i of order) {
      const draft = index.drafts[i] as TakeDraft;
      const position = positionIn(draft, log, row, clockOf(draft.camera));
      if (position === null) continue;
      const frame = Math.round(position);
      if (frame < 0 || frame >= draft.durationFrames) continue;
      last = i;
      let share = open.get(i);
      if (share === undefined) {
        const between = log.timing.kind === "time" || hasOwnRate(log, draft.rate);
        const distance = between ? new Float32Array(draft.durationFrames) : null;
        share = { rowOfFrame: new Int32Array(draft.durationFrames).fill(-1), distance, samples: 0 };
        open.set(i, share);
      }
      const away = Math.abs(position - frame);
      if (share.rowOfFrame[frame] === -1) share.samples++;
      else if (share.distance === null || away >= (share.distance[frame] as number)) {
        stray.spare(row);
        placed = true;
        break;
      } else stray.spare(row);
      share.rowOfFrame[frame] = row;
      if (share.distance !== null) share.distance[frame] = away;
      placed = true;
      break;
    }
    if (!placed) stray.outside(row, candidates);
  }
  const resampled = [...open.values()].some((share) => share.distance !== null);
  findings.push(...stray.report(log, rule, index, clockOf, key, resampled));
  for (const [i, share] of open) {
    const found = resampledFinding(log, index.drafts[i] as TakeDraft, share.rowOfFrame, share.distance);
    if (found !== null) findings.push(found);
  }
  const shares = new Map<number, LogShare>();
  for (const [i, share] of open) shares.set(i, { log, rule, rowOfFrame: share.rowOfFrame, samples: share.samples });
  return { shares, findings };
}

/** Samples further from their frame than this are remarked on. */
const OFF_FRAME = 0.05;

/** How far from the frames the samples are that serve a take, for logs that count other frames or seconds. */
function resampledFinding(log: LensLog, draft: TakeDraft, rowOfFrame: Int32Array, distance: Float32Array | null): Finding | null {
  if (distance === null) return null;
  let farthest = 0;
  let sum = 0;
  let samples = 0;
  for (let i = 0; i < rowOfFrame.length; i++) {
    if ((rowOfFrame[i] as number) < 0) continue;
    const away = distance[i] as number;
    farthest = Math.max(farthest, away);
    sum += away;
    samples++;
  }
  if (samples === 0 || farthest <= OFF_FRAME) return null;
  return findingOf(MATCH.resampled, {
    place: log.cell(rowOfFrame.find((row) => row >= 0) ?? 0, "timecode").place,
    message: `The log's samples do not fall on the frames of the picture (${rateLabel(draft.rate)} a second): each frame has the nearest sample, ${(sum / samples).toFixed(2)} frame away on average and ${farthest.toFixed(2)} at most.`,
    hint: "Nothing needs to be done. Nothing is interpolated; a frame without a sample within half a frame is not logged.",
    take: draft.address,
  });
}

function candidateFinder(log: LensLog, rule: MatchRule, index: DraftIndex, key: KeyOf): (row: number) => readonly number[] {
  const find = (row: number): readonly number[] => {
    if (rule === "clip") {
      const clip = key("clip", row);
      return clip === null ? [] : index.clip(clip);
    }
    const camera = key("camera", row);
    if (rule === "slate and take") return index.slateAndTake(key("slate", row) ?? "", key("take", row) ?? "", camera);
    return camera === null ? [] : index.camera(camera);
  };
  const byRow =
    log.rowKeys.clip !== undefined ||
    log.rowKeys.slate !== undefined ||
    log.rowKeys.take !== undefined ||
    log.rowKeys.camera !== undefined;
  if (!byRow) {
    const fixed = find(0);
    return () => fixed;
  }
  const known = new Map<string, readonly number[]>();
  return (row) => {
    const name = `${key("clip", row)}\u0000${key("slate", row)}\u0000${key("take", row)}\u0000${key("camera", row)}`;
    const found = known.get(name);
    if (found !== undefined) return found;
    const made = find(row);
    known.set(name, made);
    return made;
  };
}
