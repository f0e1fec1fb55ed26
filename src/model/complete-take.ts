/** A draft with its log, lens, sensor mode and still. */
import type { Finding } from "../core/finding.ts";
import { CHECK } from "../core/findings/check.ts";
import { findingOf } from "../core/findings/kind.ts";
import { didYouMean } from "../core/nearest-name.ts";
import { rationalToNumber } from "../core/rational.ts";
import type { DayInput, Kit, SensorMode, ShowInput, ShowRecord } from "../ingest/records.ts";
import { sameName } from "./address.ts";
import type { LogShare } from "./distribute.ts";
import type { TakeDraft } from "./draft.ts";
import { encoderFindings } from "./encoder-focus.ts";
import { chooseLens } from "./lens-choice.ts";
import { gapsOf, lensTrack } from "./track.ts";
import type { Take } from "./types.ts";

export function completeTake(
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
  const encoders = (choice.lens === null ? null : show.kit.encoders?.get(choice.lens.id)) ?? null;
  if (share !== null) findings.push(...encoderFindings(share, choice.lensId, encoders, draft.address));
  const track = share === null ? null : lensTrack(share, choice.lens, encoders);
  const loggedSqueeze = track?.columns.squeeze?.find((value) => Number.isFinite(value)) ?? null;
  const stillName = note?.still?.value ?? null;
  const still = stillName === null ? null : (input.stills.find((s) => sameName(s.name) === sameName(stillName)) ?? null);
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
      findingOf(CHECK.modeNotInKit, {
        place: cell?.place ?? null,
        field: "camera",
        message: `Camera "${draft.camera}" is not in kit/cameras.csv, so its sensor area is not known.`,
        hint: `Add a row for it to kit/cameras.csv, or correct the camera letter.${didYouMean(
          draft.camera,
          kit.modes.map((m) => m.camera),
        )} Without it there is no angle of view and no depth of field.`,
        take: draft.address,
      }),
    );
    return null;
  }
  if (noted === null) return modes[0] ?? null;
  const mode = modes.find((m) => sameName(m.sensorMode) === sameName(noted.value));
  if (mode !== undefined) return mode;
  findings.push(
    findingOf(CHECK.modeNotInKit, {
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
