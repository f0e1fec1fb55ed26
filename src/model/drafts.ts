/** Takes before their logs are known: from the notes, or from logs that name a take where there are no notes. */
import type { Finding } from "../core/finding.ts";
import { findingOf } from "../core/findings/kind.ts";
import { MATCH } from "../core/findings/match.ts";
import type { LensLog } from "../ingest/log/log-record.ts";
import type { DayInput, NoteRow, ShowRecord } from "../ingest/records.ts";
import { framesForward, framesPerDay } from "../time/timecode.ts";
import { sameName, takeAddress } from "./address.ts";
import { pictureFrames } from "./clock.ts";
import type { TakeDraft } from "./draft.ts";
import { notedExtent } from "./extent.ts";
import { ruleOf } from "./match-rule.ts";

export function draftTakes(show: ShowRecord, input: DayInput, findings: Finding[]): TakeDraft[] {
  const seen = new Map<string, NoteRow | null>();
  const drafts: TakeDraft[] = [];
  for (const note of input.notes) {
    const [slate, take, camera] = [note.slate.value, note.take.value, note.camera.value];
    const address = takeAddress(camera, slate, take);
    const duplicate = seen.has(address);
    if (duplicate) findings.push(duplicateAddress(note, seen.get(address) ?? null, address));
    else seen.set(address, note);
    const extent = notedExtent(note, show, address);
    findings.push(...extent.findings);
    const draft: TakeDraft = {
      address,
      duplicate,
      slate,
      take,
      camera,
      clip: note.clip?.value ?? null,
      note,
      rate: extent.rate,
      dropFrame: extent.dropFrame,
      inFrame: extent.inFrame,
      durationFrames:
        extent.inFrame === null || extent.outFrame === null
          ? 0
          : framesForward(extent.inFrame, extent.outFrame, extent.rate, extent.dropFrame),
    };
    drafts.push(draft.durationFrames > 0 ? draft : extentFromLog(draft, input, findings));
  }
  if (input.notesFile === null) drafts.push(...draftsFromLogs(show, input, seen));
  return drafts;
}

/** A day without notes: logs that name slate, take and camera become takes, with the log's extent. */
function draftsFromLogs(show: ShowRecord, input: DayInput, seen: Map<string, NoteRow | null>): TakeDraft[] {
  const drafts: TakeDraft[] = [];
  for (const log of input.logs) {
    const { slate, take, camera, clip } = log.keys;
    if (slate === null || take === null || camera === null) continue;
    const address = takeAddress(camera, slate, take);
    if (seen.has(address)) continue;
    seen.set(address, null);
    const rate = log.keys.rate ?? show.rate;
    const dropFrame = log.keys.dropFrame ?? show.dropFrame;
    const base = {
      address,
      duplicate: false,
      slate,
      take,
      camera,
      clip,
      note: null,
      rate,
      dropFrame,
      inFrame: null,
      durationFrames: 0,
    };
    const draft = withExtent(base, [log], input);
    if (draft !== null) drafts.push(draft);
  }
  return drafts;
}

/** The log's extent for what the notes leave open, from logs that name the take. */
function extentFromLog(draft: TakeDraft, input: DayInput, findings: Finding[]): TakeDraft {
  const naming = input.logs.filter((log) => names(log, draft));
  const completed = withExtent(draft, naming, input);
  if (completed !== null) return completed;
  findings.push(
    findingOf(MATCH.noExtent, {
      place: draft.note?.place ?? null,
      field: "tc_in",
      message: "Neither the notes nor a log say when this take ran, so it has no length and no log.",
      hint: "Write tc_in and tc_out, or give the take's log its clip, or its slate and take.",
      take: draft.address,
    }),
  );
  return draft;
}

function names(log: LensLog, draft: TakeDraft): boolean {
  const rule = ruleOf(log);
  if (rule === "clip") return draft.clip !== null && log.keys.clip !== null && sameName(log.keys.clip) === sameName(draft.clip);
  if (rule !== "slate and take" || log.keys.slate === null || log.keys.take === null) return false;
  return (
    sameName(log.keys.slate) === sameName(draft.slate) &&
    sameName(log.keys.take) === sameName(draft.take) &&
    (log.keys.camera === null || sameName(log.keys.camera) === sameName(draft.camera))
  );
}

function withExtent(draft: TakeDraft, logs: readonly LensLog[], input: DayInput): TakeDraft | null {
  for (const log of logs) {
    const clock = pictureFrames(log, draft.camera, input.record);
    const perDay = framesPerDay(draft.rate, draft.dropFrame);
    let first: number | null = null;
    let longest = 0;
    for (let row = 0; row < log.rows; row++) {
      if (log.rejected[row] === 1) continue;
      const frame = clock(row, draft.rate, draft.dropFrame);
      if (frame === null) continue;
      const whole = Math.round(frame) % perDay;
      first ??= draft.inFrame ?? whole;
      const forward = framesForward(first, whole, draft.rate, draft.dropFrame);
      if (forward < perDay / 2) longest = Math.max(longest, forward);
      else if (draft.inFrame === null) {
        longest += perDay - forward; // rows out of order: an earlier one moves the start
        first = whole;
      }
    }
    if (first !== null) return { ...draft, inFrame: first, durationFrames: longest + 1 };
  }
  return null;
}

function duplicateAddress(note: NoteRow, first: NoteRow | null, address: string): Finding {
  const same = first !== null && first.slate.value === note.slate.value && first.take.value === note.take.value;
  return findingOf(MATCH.addressTwice, {
    place: note.place,
    field: "take",
    message: same
      ? `Slate ${note.slate.value}, take ${note.take.value}, camera ${note.camera.value} stands twice in the notes (first in line ${first?.place.line ?? "?"}).`
      : `Slate ${note.slate.value}, take ${note.take.value} has the address ${address}, which line ${first?.place.line ?? "?"} has already.`,
    hint: "Give the later row its own take number. Until then it has no page and counts in no total.",
    take: address,
  });
}
