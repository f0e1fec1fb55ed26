/** Twelve figures at one frame of a take: the middle logged frame, which every single figure of the take is taken at. */

import { metresFromDioptres, numberFromDistance } from "../core/quantity.ts";
import { NOT_CALCULATED, NOT_LOGGED, NOT_RECORDED } from "../format/absent.ts";
import { degrees, roll, tilt } from "../format/degrees.ts";
import { distance, distanceRange } from "../format/length.ts";
import { fixed, thousands } from "../format/number.ts";
import { percent } from "../format/percent.ts";
import { withUnit } from "../format/space.ts";
import { stops } from "../format/stop.ts";
import type { CalibrationState, TakeSummary } from "../summary/types.ts";
import { formatTimecode } from "../time/timecode.ts";
import { type Fact, fact, factOr } from "./facts.ts";
import type { Distances } from "./names.ts";

export interface Readout {
  readonly timecode: string;
  /** "frame 641 of 754". */
  readonly frame: string;
  readonly facts: readonly Fact[];
}

/** `null` for a take without a log. */
export function readoutAtMiddle(t: TakeSummary, distances: Distances): Readout | null {
  const i = t.middleFrame;
  const f = t.perFrame;
  if (i === null || f === null) return null;
  const dioptres = at(f.focusDioptres, i);
  const focal = at(f.focalMm, i);
  const stop = at(f.tStop, i);
  const hyperfocal = at(f.hyperfocalM, i);
  return {
    timecode: frameTimecode(t, i) ?? `frame ${i}`,
    frame: `frame ${thousands(i + 1)} of ${thousands(t.framesExpected)}`,
    facts: [
      factOr("Focus distance", distanceText(dioptres, distances), NOT_LOGGED, { source: "logged", cls: "v-focus" }),
      factOr("Sharp from", distanceText(at(f.nearDioptres, i), distances), NOT_CALCULATED, { source: "calculated" }),
      factOr("Sharp to", distanceText(at(f.farDioptres, i), distances), NOT_CALCULATED, { source: "calculated" }),
      factOr("Stop", stop === null ? null : `T${fixed(stop, 2)}`, NOT_LOGGED, {
        source: t.tStop?.source ?? "logged",
        cls: "v-stop",
      }),
      factOr("Focal length", focal === null ? null : withUnit(fixed(focal, 1), "mm"), NOT_LOGGED, {
        source: t.focal?.source ?? "logged",
      }),
      factOr("Hyperfocal", hyperfocal === null ? null : distance(hyperfocal, distances), NOT_CALCULATED, { source: "calculated" }),
      factOr("Angle of view, across", degreesText(at(f.angleHorizontalDeg, i)), NOT_CALCULATED, { source: "calculated" }),
      factOr("Distortion at corner", percentText(t.distortionPercent?.corner ?? null), NOT_CALCULATED, {
        source: calibrationWords(t.calibration),
      }),
      factOr("Shading at corner", stopLossText(t.shadingStops?.corner ?? null), NOT_CALCULATED, {
        source: calibrationWords(t.calibration),
      }),
      pupilFact(t),
      ...standFacts(t, distances).slice(0, 2),
    ],
  };
}

/** Lens height, tilt and roll, each from the log's middle frame or the note. */
export function standFacts(t: TakeSummary, distances: Distances): readonly Fact[] {
  const height = t.cameraHeightM;
  return [
    height === null
      ? factOr("Lens height", null, NOT_RECORDED)
      : fact("Lens height", distance(height.value, distances), { source: height.source }),
    t.tiltDeg === null ? factOr("Tilt", null, NOT_RECORDED) : fact("Tilt", tilt(t.tiltDeg.value), { source: t.tiltDeg.source }),
    t.rollDeg === null ? factOr("Roll", null, NOT_RECORDED) : fact("Roll", roll(t.rollDeg.value), { source: t.rollDeg.source }),
  ];
}

function pupilFact(t: TakeSummary): Fact {
  const pupil = t.entrancePupilMm;
  if (pupil === null) return factOr("Entrance pupil", null, NOT_RECORDED);
  const low = fixed(pupil.min, 0);
  const high = fixed(pupil.max, 0);
  return fact("Entrance pupil", withUnit(low === high ? low : `${low} to ${high}`, "mm"), {
    source: `${pupil.source}, in front of the image plane`,
  });
}

/** Where the lens look's figures come from, in words. */
export function calibrationWords(state: CalibrationState): string {
  if (state.kind === "logged") return "logged";
  if (state.kind === "inside") return "kit, between points";
  return state.kind === "nearest" ? "kit, nearest point" : "";
}

export function frameTimecode(t: TakeSummary, frame: number): string | null {
  const { inFrame, rate, dropFrame } = t.take;
  return inFrame === null ? null : formatTimecode(inFrame + frame, rate, dropFrame);
}

function at(values: Float64Array, i: number): number | null {
  const value = values[i];
  return value === undefined || Number.isNaN(value) ? null : value;
}

function distanceText(dioptres: number | null, distances: Distances): string | null {
  return dioptres === null ? null : distance(metresFromDioptres(dioptres), distances);
}

function degreesText(value: number | null): string | null {
  return value === null ? null : degrees(value);
}

function percentText(value: number | null): string | null {
  return value === null ? null : percent(value);
}

/** Negative is darker; the word says so. */
function stopLossText(value: number | null): string | null {
  if (value === null) return null;
  const size = stops(Math.abs(value));
  return value > 0 ? `${size} brighter` : size;
}

/** One sentence on the shallowest depth of field of the take; `null` where none was calculated. */
export function shallowestSentence(t: TakeSummary, distances: Distances): string | null {
  const s = t.depthOfField?.shallowest ?? null;
  if (s === null || t.depthOfField === null) return null;
  const timecode = t.perFrame === null || s.frame === null ? null : frameTimecode(t, s.frame);
  const where = timecode === null ? "With the noted focus" : `Shallowest at ${timecode}, focus`;
  const focus = distance(s.focusM, distances);
  const total = numberFromDistance(s.totalM);
  const span = Number.isFinite(total) ? `, ${distance(total, distances)} deep` : "";
  return `${where} ${focus}: sharp from ${distanceRange(s.nearM, s.farM, distances)}${span}.`;
}
