/** Twelve figures at one frame of a take: the middle logged frame, which every single figure of the take is taken at. */

import { numberFromDistance } from "../../core/quantity.ts";
import { NOT_RECORDED } from "../../format/absent.ts";
import { roll, tilt } from "../../format/degrees.ts";
import { distance, distanceRange } from "../../format/length.ts";
import { thousands } from "../../format/number.ts";
import { type FrameValues, readout } from "../../format/readout.ts";
import type { TakeSummary, ThreePoints } from "../../summary/types.ts";
import { formatTimecode } from "../../time/timecode.ts";
import { type Fact, fact, factOr } from "../facts.ts";
import { calibrationWords, frameValues, readoutSources } from "../frame-values.ts";
import type { Distances } from "../names.ts";

export { calibrationWords } from "../frame-values.ts";

export interface Readout {
  readonly timecode: string;
  /** "frame 641 of 754". */
  readonly frame: string;
  readonly facts: readonly Fact[];
}

/** `null` for a take without a log. */
export function readoutAtMiddle(t: TakeSummary, distances: Distances): Readout | null {
  const i = t.middleFrame;
  const values = i === null ? null : frameValues(t, i);
  if (i === null || values === null) return null;
  return {
    timecode: frameTimecode(t, i) ?? `frame ${i}`,
    frame: `frame ${thousands(i + 1)} of ${thousands(t.framesExpected)}`,
    facts: readout({ ...values, ...ownFigures(t) }, readoutSources(t), distances).map(({ term, value, source, cls }) =>
      fact(term, value, { source, cls }),
    ),
  };
}

/** The lens look that stands for the take on every page and in the pack; it is that of this frame. */
function ownFigures(t: TakeSummary): Pick<FrameValues, "distortion" | "shading" | "lookSource"> {
  const three = (points: ThreePoints | null): FrameValues["distortion"] =>
    points === null ? [Number.NaN, Number.NaN, Number.NaN] : [points.corner, points.midSide, points.midTop];
  return {
    distortion: three(t.distortionPercent),
    shading: three(t.shadingStops),
    lookSource: calibrationWords(t.calibration),
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

export function frameTimecode(t: TakeSummary, frame: number): string | null {
  const { inFrame, rate, dropFrame } = t.take;
  return inFrame === null ? null : formatTimecode(inFrame + frame, rate, dropFrame);
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
