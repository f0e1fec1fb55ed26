/** A take's figures as the words that tables and sheets print, each with its source. */
import { metresFromDioptres, type Source } from "../core/quantity.ts";
import { NOT_CALCULATED, NOT_LOGGED, NOT_RECORDED } from "../format/absent.ts";
import { fps, kelvin } from "../format/amounts.ts";
import { degrees, roll, shutter, tilt } from "../format/degrees.ts";
import { type DistanceSystem, distance, distanceRange, millimetres, millimetresRange } from "../format/length.ts";
import { fixed, trimmed } from "../format/number.ts";
import { percent } from "../format/percent.ts";
import { stopRange, stops, transmittanceText } from "../format/stop.ts";
import { durationText } from "../format/time.ts";
import { listWords, sentenceCase } from "../format/words.ts";
import type { CalibrationState, TakeSummary } from "../summary/types.ts";
import { formatTimecode } from "../time/timecode.ts";
import { lensName } from "../view/names.ts";

/** A named figure. `source` is `null` where the figure is absent. */
export interface WordedFigure {
  readonly term: string;
  readonly text: string;
  readonly source: string | null;
}

/** Where the figures of a take's row come from, and what the row has no column for, without a full stop. */
export function sourcesWords(t: TakeSummary): string {
  const { take } = t;
  const named: readonly (readonly [string, Source | null])[] = [
    ["timecode", t.timecodeIn === null ? null : take.note?.tcIn == null ? "logged" : "noted"],
    ["lens", take.lensId === null ? null : (take.lensSource ?? "noted")],
    ["focal length", t.focal?.source ?? null],
    ["stop", t.tStop?.source ?? null],
    ["focus", t.focus?.source ?? null],
  ];
  const bySource = (["logged", "noted", "kit", "calculated"] as const).flatMap((source) => {
    const names = named.filter(([, from]) => from === source).map(([name]) => name);
    return names.length === 0 ? [] : [`${listWords(names)} ${source === "kit" ? "from the kit" : source}`];
  });
  const parts = [
    ...bySource,
    ...(take.lens?.serial == null ? [] : [`serial ${take.lens.serial}`]),
    ...(take.roll === null ? [] : [`roll ${take.roll}`]),
  ];
  return sentenceCase(parts.length === 0 ? NOT_RECORDED : parts.join("; "));
}

export function lengthText(t: TakeSummary): string {
  return t.take.durationFrames === 0 ? NOT_RECORDED : durationText(t.take.durationFrames, t.take.rate);
}

export function lensText(t: TakeSummary): string | null {
  const { lens, lensId } = t.take;
  if (lensId === null) return null;
  return lens === null ? `${lensId}, not in the kit` : lensName(lens, lensId);
}

export function focalText(t: TakeSummary): string | null {
  return t.focal === null ? null : focalRange(t.focal.minMm, t.focal.maxMm);
}

/** Focal lengths from the shorter to the longer: `35 to 50 mm`. */
export function focalRange(minMm: number, maxMm: number): string {
  const low = trimmed(minMm, 1);
  return low === trimmed(maxMm, 1) ? millimetres(round1(maxMm)) : `${low} to ${millimetres(round1(maxMm))}`;
}

export function stopText(t: TakeSummary): string | null {
  return t.tStop === null ? null : stopRange(t.tStop.widest, t.tStop.deepest);
}

export function focusText(t: TakeSummary, distances: DistanceSystem): string | null {
  return t.focus === null ? null : distanceRange(t.focus.nearestM, t.focus.farthestM, distances);
}

/** `4`, or the words for why there is no count. */
export function pullCount(t: TakeSummary): string {
  return t.pulls === null ? NOT_LOGGED : String(t.pulls.length);
}

/** Timecode of a frame of the take; its number where the take has no timecode. */
export function frameTimecode(t: TakeSummary, frame: number): string {
  const { inFrame, rate, dropFrame } = t.take;
  return inFrame === null ? `frame ${frame}` : formatTimecode(inFrame + frame, rate, dropFrame);
}

/** What people wrote down beyond the figures of the take's row. */
export function notedFigures(t: TakeSummary, distances: DistanceSystem): readonly WordedFigure[] {
  const { take } = t;
  return [
    figure("filters", t.filters, "noted"),
    figure("ND", t.ndStops === null ? null : stops(t.ndStops), "noted"),
    figure("shutter", t.shutterDeg === null ? null : shutter(t.shutterDeg, take.captureFps), "noted"),
    figure("EI", t.ei === null ? null : trimmed(t.ei, 0), "noted"),
    figure("white balance", t.whiteBalanceK === null ? null : kelvin(t.whiteBalanceK), "noted"),
    figure("capture", take.captureFpsNoted ? fps(take.captureFps) : null, "noted"),
    figure("sound", take.sound === "mos" ? "MOS" : take.sound, "noted"),
    figure("subject", t.subjectM === null ? null : distance(t.subjectM, distances), "noted"),
    figure(
      "lens height",
      t.cameraHeightM === null ? null : distance(t.cameraHeightM.value, distances),
      t.cameraHeightM?.source ?? null,
    ),
    figure("tilt", t.tiltDeg === null ? null : tilt(t.tiltDeg.value), t.tiltDeg?.source ?? null),
    figure("roll angle", t.rollDeg === null ? null : roll(t.rollDeg.value), t.rollDeg?.source ?? null),
    figure("sensor mode", take.sensorMode?.sensorMode ?? null, take.note?.sensorMode == null ? "kit" : "noted"),
  ];
}

/** What was worked out, at the take's middle logged frame where it changes over the take. */
export function calculatedFigures(t: TakeSummary, distances: DistanceSystem): readonly WordedFigure[] {
  const shallow = t.depthOfField?.shallowest ?? null;
  const coc = t.take.circleOfConfusionMm;
  const angle = t.angleOfViewDeg;
  const hyper = t.hyperfocalM;
  return [
    figure(
      "shallowest depth",
      shallow === null
        ? null
        : `${distanceRange(shallow.nearM, shallow.farM, distances)} at focus ${distance(shallow.focusM, distances)}, ${
            shallow.frame === null ? "from the note" : frameTimecode(t, shallow.frame)
          }`,
      "calculated",
      NOT_CALCULATED,
    ),
    figure(
      "depth rests on",
      t.depthOfField === null || coc === null ? null : `circle of confusion ${fixed(coc, 4)} mm and ${stopUsedText(t)}`,
      "kit",
      NOT_CALCULATED,
    ),
    figure("hyperfocal", hyper === null ? null : distanceRange(hyper.min, hyper.max, distances), "calculated", NOT_CALCULATED),
    figure(
      "angle of view",
      angle === null ? null : `${degrees(angle.horizontal)} by ${degrees(angle.vertical)}`,
      "calculated",
      NOT_CALCULATED,
    ),
    figure("distortion", distortionText(t), "kit", NOT_CALCULATED),
    figure("shading", shadingText(t), "kit", NOT_CALCULATED),
    figure(
      "entrance pupil",
      t.entrancePupilMm === null ? null : millimetresRange(round1(t.entrancePupilMm.min), round1(t.entrancePupilMm.max)),
      t.entrancePupilMm?.source ?? null,
    ),
  ];
}

/** Which f-number the depth of field was calculated with. */
export function stopUsedText(t: TakeSummary): string {
  switch (t.depthOfField?.stopUsed) {
    case "f":
      return "the f-number of the log";
    case "t-times-root-tau":
      return `T times the root of the transmittance${tauText(t.take.lens?.transmittance ?? null)}`;
    case "t":
      return "T in place of the f-number, as the transmittance is not known";
    default:
      return NOT_CALCULATED;
  }
}

/** Why the lens look is absent or comes from beside the table, as a clause; else empty. */
export function calibrationNote(state: CalibrationState, distances: DistanceSystem): string {
  if (state.kind === "none") return state.reason;
  if (state.kind !== "nearest") return "";
  if (state.axes.length === 0) return "the lens's table has no values here, its nearest row is shown";
  const axes = state.axes.map(
    ({ axis, asked, used }) => `${axis} ${axisText(axis, asked, distances)}, table to ${axisText(axis, used, distances)}`,
  );
  return `beyond the lens's table (${axes.join("; ")}), the nearest point is shown`;
}

/** The table's axes: millimetres, 1 / distance as the distance that it is, T. */
function axisText(axis: "focal" | "focus" | "stop", value: number, distances: DistanceSystem): string {
  if (axis === "focal") return millimetres(round1(value));
  return axis === "focus" ? distance(metresFromDioptres(value), distances) : `T${trimmed(value, 2)}`;
}

function distortionText(t: TakeSummary): string | null {
  const d = t.distortionPercent;
  return d === null ? null : `${percent(d.corner)} corner, ${percent(d.midSide)} side, ${percent(d.midTop)} top`;
}

function shadingText(t: TakeSummary): string | null {
  const s = t.shadingStops;
  return s === null ? null : `${stops(s.corner)} corner, ${fixed(s.midSide, 2)} side, ${fixed(s.midTop, 2)} top`;
}

function tauText(tau: number | null): string {
  return tau === null ? "" : ` ${transmittanceText(tau)}`;
}

function figure(term: string, text: string | null, source: string | null, absent = NOT_RECORDED): WordedFigure {
  return text === null ? { term, text: absent, source: null } : { term, text, source };
}

function round1(mm: number): number {
  return Math.round(mm * 10) / 10;
}
