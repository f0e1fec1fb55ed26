/** From the records of a day to its takes: who they are, when they ran, which log rows and which lens belong to them. */
import { type Finding, finding, sortFindings } from "../core/finding.ts";
import { rationalToNumber } from "../core/rational.ts";
import type { DayInput, Kit, LensLog, NoteRow, SensorMode, ShowInput, ShowRecord } from "../ingest/records.ts";
import { nominalRate } from "../time/frame-rate.ts";
import { framesForward, framesPerDay } from "../time/timecode.ts";
import { sameName, takeAddress } from "./address.ts";
import { checkDay, checkTake } from "./checks.ts";
import { pictureFrames } from "./clock.ts";
import type { TakeDraft } from "./draft.ts";
import { notedExtent } from "./extent.ts";
import { chooseLens } from "./lens-choice.ts";
import { type LogShare, matchLogs, ruleOf } from "./match.ts";
import { beginOfShootingDay, secondsInto } from "./order.ts";
import { gapsOf, lensTrack } from "./track.ts";
import type { Day, Take } from "./types.ts";

/**
 * Joins a day's notes and logs.
 *
 * @param earlier findings of reading the show and the day; they are kept
 * @returns takes in shooting order, then by camera; every log row counted once in `rows`
 */
export function buildDay(show: ShowInput, input: DayInput, earlier: readonly Finding[]): Day {
  const findings: Finding[] = [...earlier];
  const drafts = draftTakes(show.show, input, findings);
  const matching = matchLogs(drafts, input.logs, input.record);
  findings.push(...matching.findings);

  const starts = drafts.filter((draft) => draft.inFrame !== null).map(secondOfDay);
  const begin = beginOfShootingDay(starts, input.record.call);
  const takes: Take[] = [];
  let previousOrder = 0;
  drafts.forEach((draft, i) => {
    const order = draft.inFrame === null ? previousOrder : secondsInto(begin, secondOfDay(draft));
    previousOrder = order;
    const take = completeTake(draft, matching.served.get(i) ?? null, order, show, input, findings);
    takes.push(take);
    findings.push(...checkTake(take, show.show, input, show.kit));
  });
  const position = new Map(takes.map((take, i) => [take, i]));
  takes.sort(
    (a, b) =>
      a.order - b.order ||
      (a.camera < b.camera ? -1 : a.camera > b.camera ? 1 : (position.get(a) as number) - (position.get(b) as number)),
  );
  return Object.freeze({
    show: show.show,
    date: input.date,
    record: input.record,
    takes,
    rows: matching.rows,
    logs: matching.logs,
    findings: sortFindings([...findings, ...checkDay(takes)]),
    files: input.files,
  });
}

function secondOfDay(draft: TakeDraft): number {
  return (draft.inFrame as number) / (draft.dropFrame ? rationalToNumber(draft.rate) : nominalRate(draft.rate));
}

function draftTakes(show: ShowRecord, input: DayInput, findings: Finding[]): TakeDraft[] {
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
    finding({
      code: "MATCH409",
      severity: "check",
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

function completeTake(
  draft: TakeDraft,
  share: LogShare | null,
  order: number,
  show: ShowInput,
  input: DayInput,
  findings: Finding[],
): Take {
  const { note } = draft;
  const choice = chooseLens(note, share, show.kit, draft.address);
  findings.push(...choice.findings);
  const sensorMode = sensorModeOf(draft, show.kit, findings);
  const track = share === null ? null : lensTrack(share, choice.lens);
  const loggedSqueeze = track?.columns.squeeze?.find((value) => Number.isFinite(value)) ?? null;
  const stillName = note?.still?.value ?? null;
  const still = stillName === null ? null : (input.stills.find((s) => sameName(s.name) === sameName(stillName)) ?? null);
  if (stillName !== null && still === null && note?.still != null) {
    findings.push(
      finding({
        code: "MATCH414",
        severity: "check",
        place: note.still.place,
        field: "still",
        message: `There is no still "${stillName}" in ${input.folder}/stills.`,
        hint: "Put the picture there or correct the name; capital letters do not matter.",
        take: draft.address,
      }),
    );
  }
  return Object.freeze({
    address: draft.address,
    duplicate: draft.duplicate,
    slate: draft.slate,
    take: draft.take,
    camera: draft.camera,
    scene: note?.scene?.value ?? null,
    roll: note?.roll?.value ?? null,
    clip: draft.clip,
    circled: note?.circled ?? false,
    status: note?.status?.value ?? null,
    sound: note?.sound?.value ?? null,
    plate: note?.plate?.value ?? null,
    plateOf: note?.plateOf?.value ?? null,
    note,
    rate: draft.rate,
    dropFrame: draft.dropFrame,
    inFrame: draft.inFrame,
    durationFrames: draft.durationFrames,
    order,
    captureFps: note?.captureFps?.value ?? rationalToNumber(draft.rate),
    captureFpsNoted: note?.captureFps != null,
    lensId: choice.lensId,
    lensSource: choice.lensSource,
    lens: choice.lens,
    calibration: choice.lens === null ? null : (show.kit.calibration.get(choice.lens.id) ?? null),
    sensorMode,
    squeeze: loggedSqueeze ?? choice.lens?.squeeze ?? sensorMode?.squeeze ?? 1,
    circleOfConfusionMm: circleOfConfusion(show.show, sensorMode),
    logFiles: share === null ? [] : [share.log.file],
    logLines: share === null ? [] : [logLines(share)],
    track,
    gaps: track === null ? [] : gapsOf(track),
    still,
  });
}

function logLines(share: LogShare): Take["logLines"][number] {
  let first = Number.POSITIVE_INFINITY;
  let last = 0;
  for (const row of share.rowOfFrame) {
    if (row < 0) continue;
    const line = share.log.lineOf(row);
    first = Math.min(first, line);
    last = Math.max(last, line);
  }
  return { file: share.log.file, first, last, used: share.samples, sha256: share.log.sha256, matchedBy: share.rule };
}

/** The noted mode of the camera, else its first row in the kit. */
function sensorModeOf(draft: TakeDraft, kit: Kit, findings: Finding[]): SensorMode | null {
  const modes = kit.modes.filter((mode) => sameName(mode.camera) === sameName(draft.camera));
  const noted = draft.note?.sensorMode ?? null;
  if (modes.length === 0) {
    const cell = draft.note?.camera ?? null;
    findings.push(
      finding({
        code: "CHECK707",
        severity: "check",
        place: cell?.place ?? null,
        field: "camera",
        message: `Camera "${draft.camera}" is not in kit/cameras.csv, so its sensor area is not known.`,
        hint: "Add a row for it to kit/cameras.csv, or correct the camera letter. Without it there is no angle of view and no depth of field.",
        take: draft.address,
      }),
    );
    return null;
  }
  if (noted === null) return modes[0] ?? null;
  const mode = modes.find((m) => sameName(m.sensorMode) === sameName(noted.value));
  if (mode !== undefined) return mode;
  findings.push(
    finding({
      code: "CHECK707",
      severity: "check",
      place: noted.place,
      field: "sensor_mode",
      message: `Camera ${draft.camera} has no sensor mode "${noted.value}" in kit/cameras.csv; nothing that needs the sensor area is calculated.`,
      hint: `Write one of: ${modes.map((m) => m.sensorMode).join(", ")}; or add the mode to kit/cameras.csv.`,
      take: draft.address,
    }),
  );
  return null;
}

function circleOfConfusion(show: ShowRecord, mode: SensorMode | null): number | null {
  const set = show.circleOfConfusionMm;
  if (typeof set === "number") return set;
  if (mode === null) return null;
  return set?.get(mode.sensorMode) ?? Math.hypot(mode.activeWidthMm, mode.activeHeightMm) / 1500;
}

function duplicateAddress(note: NoteRow, first: NoteRow | null, address: string): Finding {
  const same = first !== null && first.slate.value === note.slate.value && first.take.value === note.take.value;
  return finding({
    code: "MATCH406",
    severity: "error",
    place: note.place,
    field: "take",
    message: same
      ? `Slate ${note.slate.value}, take ${note.take.value}, camera ${note.camera.value} stands twice in the notes (first in line ${first?.place.line ?? "?"}).`
      : `Slate ${note.slate.value}, take ${note.take.value} has the address ${address}, which line ${first?.place.line ?? "?"} has already.`,
    hint: "Give the later row its own take number. Until then it has no page and counts in no total.",
    take: address,
  });
}
