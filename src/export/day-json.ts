/** day.json: the contract's figures of a day, keys in the contract's order, numbers unrounded. */

import type { Finding } from "../core/finding.ts";
import { stableJson } from "../core/stable-json.ts";
import type { DaySummary, DepthFigures, PullFigures, TakeSummary } from "../summary/types.ts";
import { formatTimecode } from "../time/timecode.ts";

export interface Tool {
  readonly name: string;
  readonly version: string;
}

/** Text of day.json, LF at the end. */
export function dayJson(summary: DaySummary, tool: Tool): string {
  return stableJson(dayObject(summary, tool));
}

/** The object of day.json. */
export function dayObject(summary: DaySummary, tool: Tool): Record<string, unknown> {
  const { show, day, totals } = summary;
  return {
    schema: "lens-daybook/day/1",
    tool: { name: tool.name, version: tool.version },
    show: { title: show.title, code: show.code, unit: day.record.unit ?? show.unit },
    date: summary.date,
    day: day.record.day,
    of: day.record.of,
    takes: summary.takes.map(takeObject),
    totals: {
      slates: totals.slates,
      takes: totals.takes,
      clips: totals.clips,
      circled: totals.circled,
      pagesScheduled: totals.eighthsScheduled,
      pagesCompleted: totals.eighthsCompleted,
      mediaFrames: totals.mediaFrames,
      mediaSeconds: totals.mediaSeconds,
      circledSeconds: totals.circledSeconds,
      shootingRatio: totals.shootingRatio,
      framesExpected: totals.framesExpected,
      framesLogged: totals.framesLogged,
    },
    lensUse: summary.lensUse.map((use) => ({
      lens: use.lens,
      takes: use.takes,
      frames: use.frames,
      focalMm: use.focalMm,
      tStop: use.tStop,
    })),
    findings: summary.findings.map(findingObject),
    rows: summary.rows,
    slateExposure: summary.slateExposure,
  };
}

function takeObject(summary: TakeSummary): Record<string, unknown> {
  const { take } = summary;
  return {
    address: take.address,
    slate: take.slate,
    take: take.take,
    camera: take.camera,
    scene: take.scene,
    roll: take.roll,
    clip: take.clip,
    circled: take.circled,
    status: take.status,
    plate: take.plate,
    plateOf: take.plateOf,
    timecodeIn: summary.timecodeIn,
    timecodeOut: summary.timecodeOut,
    rate: { num: take.rate.num, denom: take.rate.denom },
    dropFrame: take.dropFrame,
    durationFrames: take.durationFrames,
    captureFps: take.captureFps,
    lens: take.lensId === null ? null : { id: take.lensId, serial: take.lens?.serial ?? null, focalMm: take.lens?.focalMm ?? null },
    sensorMode: take.sensorMode?.sensorMode ?? take.note?.sensorMode?.value ?? null,
    circleOfConfusionMm: take.circleOfConfusionMm,
    log: {
      files: take.logFiles,
      framesExpected: summary.framesExpected,
      framesLogged: summary.framesLogged,
      framesMissing: summary.framesMissing,
      gaps: summary.gaps.map(({ from, to, frames }) => ({ from, to, frames })),
    },
    focalMm: summary.focal === null ? null : { min: summary.focal.minMm, max: summary.focal.maxMm, source: summary.focal.source },
    tStop: summary.tStop,
    focus: summary.focus,
    pulls: summary.pulls === null ? null : summary.pulls.map((pull) => pullObject(pull, summary)),
    depthOfField:
      summary.depthOfField === null
        ? null
        : { shallowest: depthObject(summary.depthOfField.shallowest, summary), stopUsed: summary.depthOfField.stopUsed },
    hyperfocalM: summary.hyperfocalM === null ? null : { min: summary.hyperfocalM.min, max: summary.hyperfocalM.max },
    angleOfViewDeg: summary.angleOfViewDeg,
    distortionPercent: summary.distortionPercent,
    shadingStops: summary.shadingStops,
    entrancePupilMm:
      summary.entrancePupilMm === null ? null : { min: summary.entrancePupilMm.min, max: summary.entrancePupilMm.max },
    cameraHeightM: summary.cameraHeightM?.value ?? null,
    tiltDeg: summary.tiltDeg?.value ?? null,
    rollDeg: summary.rollDeg?.value ?? null,
    filters: summary.filters,
    ndStops: summary.ndStops,
    shutterDeg: summary.shutterDeg,
    ei: summary.ei,
    whiteBalanceK: summary.whiteBalanceK,
    remarks: summary.remarks,
    calibration: summary.calibration,
    exposure: summary.exposure,
    subject: summary.subject,
    calibrationArea: summary.calibrationArea,
    overscan: summary.overscan,
    overscanReason: summary.overscanReason,
  };
}

function frameTimecode(frame: number, { take }: TakeSummary): string | null {
  return take.inFrame === null ? null : formatTimecode(take.inFrame + frame, take.rate, take.dropFrame);
}

function pullObject(pull: PullFigures, summary: TakeSummary): Record<string, unknown> {
  return {
    startTimecode: frameTimecode(pull.startFrame, summary),
    endTimecode: frameTimecode(pull.endFrame, summary),
    startFrame: pull.startFrame,
    frames: pull.frames,
    fromM: pull.fromM,
    toM: pull.toM,
    extentM: pull.extentM,
    extentDioptres: pull.extentDioptres,
    extentDepths: pull.extentDepths,
    peakDioptresPerSecond: pull.peakDioptresPerSecond,
    breathingPercent: pull.breathingPercent,
    breathingFrom: pull.breathingFrom,
  };
}

function depthObject(depth: DepthFigures | null, summary: TakeSummary): Record<string, unknown> | null {
  if (depth === null) return null;
  const timecode = depth.frame === null ? null : frameTimecode(depth.frame, summary);
  return { timecode, focusM: depth.focusM, nearM: depth.nearM, farM: depth.farM, totalM: depth.totalM };
}

/** A finding in the contract's key order. */
function findingObject(finding: Finding): Record<string, unknown> {
  return {
    code: finding.code,
    severity: finding.severity,
    file: finding.file,
    line: finding.line,
    column: finding.column,
    field: finding.field,
    message: finding.message,
    hint: finding.hint,
    take: finding.take,
    accepted: finding.accepted,
  };
}
