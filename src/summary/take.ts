/** Figures of one take: logged before noted before kit, and every figure says which. */
import type { Finding } from "../core/finding.ts";
import { CHECK } from "../core/findings/check.ts";
import { findingOf } from "../core/findings/kind.ts";
import { metresFromDioptres, type Source } from "../core/quantity.ts";
import { rationalToNumber } from "../core/rational.ts";
import type { NoteRow } from "../ingest/records.ts";
import type { CheckLimits } from "../ingest/show/check-limits.ts";
import type { Take } from "../model/types.ts";
import { shutterDegrees, stopsBetween } from "../optics/exposure.ts";
import { lowerMiddle, minMax } from "../stats/summary.ts";
import { formatTimecode } from "../time/timecode.ts";
import { calibrationArea } from "./calibration-area.ts";
import { depthFromNotes, shallowestDepth } from "./depth.ts";
import { takeExposure } from "./exposure.ts";
import { anglesAt, type FramesAndStop, frameFigures, servedFocal } from "./frames.ts";
import { lensLook } from "./lens-look.ts";
import { naturalFallOffStops } from "./natural-fall-off.ts";
import { takeOverscan } from "./overscan.ts";
import { takePulls } from "./pulls.ts";
import { subjectFocus } from "./subject.ts";
import type { TakeSummary } from "./types.ts";

/** Summarises a take. `found` are the day's findings about it. */
export function summariseTake(take: Take, found: readonly Finding[], limits: CheckLimits): TakeSummary {
  const frames = frameFigures(take);
  const timecode = (frame: number): string | null =>
    take.inFrame === null ? null : formatTimecode(take.inFrame + frame, take.rate, take.dropFrame);
  const middleFrame = middleLoggedFrame(take);
  const look = lensLook(take, frames?.figures ?? null, middleFrame);
  const hyperfocal = hyperfocalRange(take, frames);
  const logged = take.track?.framesLogged ?? 0;
  const findings = [...found, ...findingsOfSummary(take, frames, look.findings, limits.hyperfocalFraction)];
  const note = take.note;
  const exposureParts = {
    tStop: stopRange(take, frames),
    ndStops: note?.ndStops?.value ?? null,
    shutterDeg: shutter(note, take.captureFps),
    ei: note?.ei?.value ?? null,
  };
  const focal = focalRange(take);
  return Object.freeze({
    take,
    timecodeIn: timecode(0),
    timecodeOut: take.durationFrames === 0 ? null : timecode(take.durationFrames),
    framesExpected: take.durationFrames,
    framesLogged: logged,
    framesMissing: take.durationFrames - logged,
    gaps: take.gaps.map((gap) => ({
      ...gap,
      from: timecode(gap.first) ?? "",
      to: timecode(gap.last) ?? "",
      frames: gap.last - gap.first + 1,
    })),
    durationSeconds: take.durationFrames / rationalToNumber(take.rate),
    focal,
    tStop: exposureParts.tStop,
    focus: focusRange(take, frames),
    pulls: takePulls(take, frames),
    depthOfField: frames === null ? depthFromNotes(take) : shallowestDepth(frames),
    hyperfocalM: hyperfocal,
    loggedHyperfocalM: rangeOf(take.track?.columns.hyperfocal_m),
    angleOfViewDeg: angleOfView(take, frames, middleFrame),
    middleFrame,
    distortionPercent: look.distortionPercent,
    shadingStops: look.shadingStops,
    calibration: look.state,
    entrancePupilMm: look.entrancePupilMm,
    cameraHeightM: loggedOrNoted(take, middleFrame, "height_m", note?.heightM?.value),
    tiltDeg: loggedOrNoted(take, middleFrame, "tilt_deg", note?.tiltDeg?.value),
    rollDeg: loggedOrNoted(take, middleFrame, "roll_deg", note?.rollDeg?.value),
    filters: note?.filters?.value ?? null,
    ndStops: exposureParts.ndStops,
    shutterDeg: exposureParts.shutterDeg,
    ei: exposureParts.ei,
    whiteBalanceK: note?.whiteBalanceK?.value ?? null,
    subjectM: note?.subjectM?.value ?? null,
    remarks: note?.remarks?.value ?? null,
    perFrame: frames?.figures ?? null,
    findings,
    exposure: takeExposure({ ...exposureParts, take }),
    subject: subjectFocus(take, frames?.figures ?? null),
    calibrationArea: calibrationArea(take, look.state),
    naturalFallOffStops: look.shadingStops === null ? naturalFallOffStops(take, focal?.minMm ?? null) : null,
    ...takeOverscan(take, frames?.figures ?? null),
  });
}

/** Frame index of the take's middle logged frame: floor((n-1)/2) of the n logged ones. */
function middleLoggedFrame(take: Take): number | null {
  const track = take.track;
  if (track === null || track.framesLogged === 0) return null;
  let left = Math.floor((track.framesLogged - 1) / 2);
  for (let i = 0; i < track.frames; i++) {
    if (track.logged[i] === 1 && left-- === 0) return i;
  }
  return null;
}

function focalRange(take: Take): TakeSummary["focal"] {
  const logged = rangeOf(take.track?.columns.focal_mm);
  if (logged !== null) return { minMm: logged.min, maxMm: logged.max, source: "logged" };
  const noted = take.note?.focalMm?.value ?? null;
  if (noted !== null) return { minMm: Math.min(noted.from, noted.to), maxMm: Math.max(noted.from, noted.to), source: "noted" };
  const marked = take.lens?.focalMm ?? null;
  return marked === null ? null : { minMm: marked, maxMm: marked, source: "kit" };
}

function stopRange(take: Take, frames: FramesAndStop | null): TakeSummary["tStop"] {
  const values = frames?.figures.tStop;
  const logged = rangeOf(values);
  if (logged !== null && values !== undefined) {
    return stopFigures(logged.min, logged.max, lowerMiddle(values), take.track?.columns.t === undefined ? "calculated" : "logged");
  }
  const noted = take.note?.stop?.value ?? null;
  if (noted === null) return null;
  const tau = take.lens?.transmittance ?? null;
  if (noted.kind === "f" && tau === null) return null;
  const scale = noted.kind === "f" && tau !== null ? 1 / Math.sqrt(tau) : 1;
  const widest = Math.min(noted.from, noted.to) * scale;
  const deepest = Math.max(noted.from, noted.to) * scale;
  return stopFigures(widest, deepest, widest === deepest ? widest : null, scale === 1 ? "noted" : "calculated");
}

function stopFigures(widest: number, deepest: number, typical: number | null, source: Source): TakeSummary["tStop"] {
  return { widest, deepest, typical, rangeStops: stopsBetween(widest, deepest), source };
}

function focusRange(take: Take, frames: FramesAndStop | null): TakeSummary["focus"] {
  const values = frames?.figures.focusDioptres;
  const logged = rangeOf(values);
  if (logged !== null && values !== undefined) {
    const first = values.find((value) => !Number.isNaN(value)) as number;
    const last = values.findLast((value) => !Number.isNaN(value)) as number;
    return focusFigures(logged.max, logged.min, first, last, take.track?.focusTable === undefined ? "logged" : "calculated");
  }
  const noted = take.note?.focus?.value ?? null;
  // a logged distance that could not be converted is not replaced by a noted one: the log is what counts, and it is not known
  if (noted === null || take.track?.focusUnconverted === true) return null;
  const { fromDioptres, toDioptres } = noted;
  return focusFigures(Math.max(fromDioptres, toDioptres), Math.min(fromDioptres, toDioptres), fromDioptres, toDioptres, "noted");
}

function focusFigures(
  nearest: number,
  farthest: number,
  start: number,
  end: number,
  source: Source,
): NonNullable<TakeSummary["focus"]> {
  return {
    nearestM: metresFromDioptres(nearest),
    farthestM: metresFromDioptres(farthest),
    startM: metresFromDioptres(start),
    endM: metresFromDioptres(end),
    reachesInfinity: metresFromDioptres(farthest) === "inf",
    extentDioptres: nearest - farthest,
    source,
  };
}

function hyperfocalRange(take: Take, frames: FramesAndStop | null): TakeSummary["hyperfocalM"] {
  if (frames !== null) return minMax(frames.figures.hyperfocalM);
  const noted = depthFromNotes(take);
  return noted === null ? null : noted.hyperfocalM;
}

function angleOfView(take: Take, frames: FramesAndStop | null, middle: number | null): TakeSummary["angleOfViewDeg"] {
  if (frames !== null && middle !== null) {
    return anglesAt(take, frames.figures.focalMm[middle] as number, frames.figures.focusDioptres[middle] as number);
  }
  if (frames !== null) return null;
  const focal = servedFocal(take);
  const focus = take.note?.focus?.value.fromDioptres;
  return focal === null || focus === undefined ? null : anglesAt(take, focal, focus);
}

/** The log at the middle logged frame, else the note. */
function loggedOrNoted(
  take: Take,
  middle: number | null,
  column: "height_m" | "tilt_deg" | "roll_deg",
  noted: number | undefined,
): { value: number; source: Source } | null {
  const values = take.track?.columns[column];
  const logged = middle === null ? undefined : values?.[middle];
  if (logged !== undefined && !Number.isNaN(logged)) return { value: logged, source: "logged" };
  return noted === undefined ? null : { value: noted, source: "noted" };
}

function shutter(note: NoteRow | null, captureFps: number): number | null {
  const written = note?.shutter?.value ?? null;
  if (written === null) return null;
  return "degrees" in written ? written.degrees : shutterDegrees(written.seconds, captureFps);
}

function findingsOfSummary(take: Take, frames: FramesAndStop | null, look: readonly Finding[], hyperfocalLimit: number): Finding[] {
  const found: Finding[] = [...look];
  const place = take.logLines[0] === undefined ? null : { file: take.logLines[0].file, line: take.logLines[0].first, column: 1 };
  const logged = take.track?.columns.hyperfocal_m;
  if (logged !== undefined && frames !== null) {
    const i = logged.findIndex((value, at) => Math.abs(value / (frames.figures.hyperfocalM[at] as number) - 1) > hyperfocalLimit);
    if (i >= 0) {
      const calculated = frames.figures.hyperfocalM[i] as number;
      found.push(
        findingOf(CHECK.hyperfocalDiffers, {
          place,
          field: "hyperfocal_m",
          message: `The log's hyperfocal distance ${String(logged[i])} m is ${(100 * Math.abs((logged[i] as number) / calculated - 1)).toFixed(1)} % from the calculated ${calculated.toFixed(2)} m.`,
          hint: "The recorder may use another circle of confusion, or the T-stop for the f-number. Both figures are kept.",
          take: take.address,
        }),
      );
    }
  }
  const tooNear = frames === null ? -1 : firstRefused(frames, take.circleOfConfusionMm);
  if (tooNear >= 0) {
    found.push(
      findingOf(CHECK.tooNear, {
        place,
        field: "focus_m",
        message: "Some distances are under four focal lengths from the image plane; no depth of field is given for those frames.",
        hint: "Look at the unit of the distance column if the lens cannot focus this near.",
        take: take.address,
      }),
    );
  }
  return found;
}

function firstRefused(frames: FramesAndStop, coc: number | null): number {
  if (coc === null || frames.stopUsed === null) return -1;
  const { focusDioptres, focalMm } = frames.figures;
  return focusDioptres.findIndex((d, i) => d > 0 && 1000 / d < 4 * (focalMm[i] as number));
}

function rangeOf(values: Float64Array | undefined): { readonly min: number; readonly max: number } | null {
  return values === undefined ? null : minMax(values);
}
