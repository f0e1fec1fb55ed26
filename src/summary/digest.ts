/** What a day leaves behind for the show-wide pages once its frames are dropped. */
import { NOTED_CELLS, type NotedDay, type NotedPlace } from "../model/checks/across-days.ts";
import type { Day, Take } from "../model/types.ts";
import { cameraSeconds } from "./camera-seconds.ts";
import type { DayDigest, PlateState, TakeDigest } from "./digest-types.ts";
import { lensStates } from "./state-histogram.ts";
import type { DaySummary, TakeSummary } from "./types.ts";

export function digestDay(summary: DaySummary, packFiles: readonly { readonly name: string; readonly bytes: number }[]): DayDigest {
  return {
    date: summary.date,
    day: summary.day.record.day,
    record: summary.day.record,
    totals: summary.totals,
    lensUse: summary.lensUse,
    rows: summary.rows,
    findingCounts: summary.findingCounts,
    findings: summary.findings,
    takes: summary.takes.filter((take) => !take.take.duplicate).map(digestTake),
    packFiles: [...packFiles],
    lensStates: lensStates(summary.takes),
    cameraSeconds: cameraSeconds(summary),
    inputs: summary.day.files.map(({ file, sha256, bytes }) => ({ file, sha256, bytes })),
  };
}

function digestTake(summary: TakeSummary): TakeDigest {
  const { take, focal, tStop, focus } = summary;
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
    lens: take.lensId,
    timecodeIn: summary.timecodeIn,
    timecodeOut: summary.timecodeOut,
    durationFrames: take.durationFrames,
    durationSeconds: summary.durationSeconds,
    focalMm: focal === null ? null : { min: focal.minMm, max: focal.maxMm },
    tStop: tStop === null ? null : { widest: tStop.widest, deepest: tStop.deepest },
    focus: focus === null ? null : { nearestM: focus.nearestM, farthestM: focus.farthestM },
    pulls: summary.pulls?.length ?? null,
    distortionCornerPercent: summary.distortionPercent?.corner ?? null,
    findings: summary.findings.length,
    remarks: summary.remarks,
    noted: notedPlace(take),
    rate: { num: take.rate.num, denom: take.rate.denom },
    lightStops: summary.exposure.lightStops,
    beforeNdStops: summary.exposure.beforeNdStops,
    plateState: take.plate === null ? null : plateState(summary),
  };
}

function plateState(summary: TakeSummary): PlateState {
  const { take } = summary;
  return {
    sensorMode: take.sensorMode?.sensorMode ?? null,
    typicalStop: summary.tStop?.typical ?? null,
    heightM: summary.cameraHeightM?.value ?? null,
    tiltDeg: summary.tiltDeg?.value ?? null,
    rollDeg: summary.rollDeg?.value ?? null,
    filters: summary.filters,
    calibration: summary.calibration,
    hasLog: take.track !== null,
    framesMissing: summary.framesMissing,
  };
}

/** What findings across days need of a day, without the figures. */
export function notedDay({ date, record, takes }: Day): NotedDay {
  return {
    date,
    day: record.day,
    record,
    takes: takes
      .filter((take) => !take.duplicate)
      .map((take) => ({
        address: take.address,
        slate: take.slate,
        take: take.take,
        camera: take.camera,
        roll: take.roll,
        clip: take.clip,
        noted: notedPlace(take),
      })),
  };
}

function notedPlace({ note }: Take): NotedPlace | null {
  if (note === null) return null;
  const { file, line } = note.place;
  const cells = NOTED_CELLS.flatMap((cell) => {
    const place = note[cell]?.place;
    return place === undefined ? [] : [[cell, place.column] as const];
  });
  return { file, line, columns: Object.fromEntries(cells) };
}
