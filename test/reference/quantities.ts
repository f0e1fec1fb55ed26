/** The quantities that reference files name, each as a function of a case's inputs. */

import { feetAndInches } from "../../src/format/length.ts";
import { eighths } from "../../src/format/pages.ts";
import { stopNumber } from "../../src/format/stop.ts";
import { durationText } from "../../src/format/time.ts";
import { readDistance } from "../../src/ingest/written/distance.ts";
import { readStop } from "../../src/ingest/written/stop.ts";
import * as dof from "../../src/optics/depth-of-field.ts";
import * as exposure from "../../src/optics/exposure.ts";
import * as view from "../../src/optics/field-of-view.ts";
import * as drift from "../../src/time/drift.ts";
import { type FrameRate, parseFrameRate } from "../../src/time/frame-rate.ts";
import { formatTimecode, framesPerDay, parseTimecode } from "../../src/time/timecode.ts";

export type Input = Readonly<Record<string, number | string | boolean>>;
export type Quantity = (input: Input) => number | string | null;

function n(input: Input, key: string): number {
  const value = input[key];
  if (value === "inf") return Number.POSITIVE_INFINITY;
  if (typeof value !== "number") throw new Error(`the case has no number "${key}"`);
  return value;
}

function text(input: Input, key: string): string {
  return String(input[key]);
}

function rate(input: Input, key = "rate"): FrameRate {
  const parsed = parseFrameRate(text(input, key));
  if (!parsed) throw new Error(`no rate: ${input[key]}`);
  return parsed;
}

function lens(input: Input): dof.LensState {
  return { focalMm: n(input, "focalMm"), fNumber: n(input, "fNumber"), cocMm: n(input, "cocMm") };
}

function limits(input: Input): { nearMm: number; farMm: number; totalMm: number } {
  const result = dof.depthOfField({ ...lens(input), imagePlaneMm: n(input, "imagePlaneMm") });
  if (!result) throw new Error("refused");
  return result;
}

function viewInput(input: Input): view.ViewInput {
  return { sideMm: n(input, "sideMm"), focalMm: n(input, "focalMm"), imagePlaneMm: n(input, "imagePlaneMm") };
}

function setup(input: Input, which: "A" | "B"): exposure.ExposureSetup {
  return {
    tStop: n(input, `t${which}`),
    shutterDeg: n(input, `deg${which}`),
    fps: n(input, `fps${which}`),
    ei: n(input, `ei${which}`),
    ndStops: exposure.ndStopsFromDensity(n(input, `nd${which}`)),
  };
}

function exposureDifference(input: Input): number {
  return exposure.relativeExposure(setup(input, "B")).withEi - exposure.relativeExposure(setup(input, "A")).withEi;
}

function objectMm(input: Input): number {
  return dof.objectDistanceMm(n(input, "imagePlaneMm"), n(input, "focalMm")) ?? Number.NaN;
}

export const QUANTITIES: Readonly<Record<string, Quantity>> = {
  hyperfocal: (i) => dof.hyperfocalMm(lens(i)),
  hyperfocalFromInfinity: (i) => dof.hyperfocalMm(lens(i)) - n(i, "focalMm"),
  oneSidedDepthDioptres: (i) => 1000 / (dof.hyperfocalMm(lens(i)) - n(i, "focalMm")),
  totalDepthDioptres: (i) => 2000 / (dof.hyperfocalMm(lens(i)) - n(i, "focalMm")),
  nearFromLens: (i) => dof.nearFromLens(n(i, "objectMm"), dof.hyperfocalMm(lens(i)), n(i, "focalMm")),
  farFromLens: (i) => dof.farFromLens(n(i, "objectMm"), dof.hyperfocalMm(lens(i)), n(i, "focalMm")),
  near: (i) => limits(i).nearMm,
  far: (i) => limits(i).farMm,
  total: (i) => limits(i).totalMm,
  objectDistance: objectMm,
  imageDistance: (i) => dof.imageDistanceMm(n(i, "objectMm"), n(i, "focalMm")),
  magnificationAt: (i) => dof.magnification(objectMm(i), n(i, "focalMm")),
  closeFocusFactor: (i) => exposure.closeFocusFactor(n(i, "magnification")),
  tFromF: (i) => exposure.tFromF(n(i, "fNumber"), n(i, "transmittance")),

  angle: (i) => view.angleOfViewDeg(viewInput(i)),
  diagonalAngle: (i) =>
    view.anglesOfView({ widthMm: n(i, "widthMm"), heightMm: n(i, "heightMm"), focalMm: n(i, "focalMm") })?.diagonal ?? null,
  angleAtMagnification: (i) =>
    view.angleAtMagnificationDeg({
      sideMm: n(i, "sideMm"),
      focalMm: n(i, "focalMm"),
      magnification: n(i, "magnification"),
      ...("pupilMagnification" in i ? { pupilMagnification: n(i, "pupilMagnification") } : {}),
    }),
  breathing: (i) => view.breathingPercent(viewInput(i)),
  fieldSize: (i) => view.fieldSizeMm(viewInput(i)),

  stopsBetween: (i) => exposure.stopsBetween(n(i, "from"), n(i, "to")),
  stopsBetweenLabels: (i) => exposure.stopsBetween(exposure.exactStop(n(i, "from")), exposure.exactStop(n(i, "to"))),
  lightRatio: (i) => exposure.lightRatio(n(i, "from"), n(i, "to")),
  exactStop: (i) => exposure.exactStop(n(i, "label")),
  stopValue: (i) => exposure.stopValue(n(i, "stops")),
  inBetweenStop: (i) => exposure.inBetweenStop(n(i, "label"), n(i, "fraction")),
  splitStop: (i) => exposure.splitStop(n(i, "wider"), n(i, "deeper")),
  readStop: (i) => {
    const reading = readStop(text(i, "text"));
    return reading.ok ? reading.value.from : reading.problem;
  },
  stopText: (i) => stopNumber(n(i, "stop")),
  apertureValue: (i) => exposure.apertureValue(n(i, "fNumber")),
  secondsFromTimeValue: (i) => exposure.secondsFromTimeValue(n(i, "timeValue")),
  exposureValue: (i) => exposure.exposureValue(n(i, "fNumber"), n(i, "seconds")),

  shutterSeconds: (i) => exposure.shutterSeconds(n(i, "degrees"), n(i, "fps")),
  shutterDegrees: (i) => exposure.shutterDegrees(n(i, "seconds"), n(i, "fps")),
  shutterStops: (i) => exposure.shutterStops(n(i, "from"), n(i, "to")),
  ndStopsFromDensity: (i) => exposure.ndStopsFromDensity(n(i, "density")),
  ndStopsFromFactor: (i) => exposure.ndStopsFromFactor(n(i, "factor")),
  ndFactorFromDensity: (i) => exposure.ndFactorFromDensity(n(i, "density")),
  miredFromKelvin: (i) => exposure.miredFromKelvin(n(i, "kelvin")),
  kelvinFromMired: (i) => exposure.kelvinFromMired(n(i, "mired")),
  miredShift: (i) => exposure.miredShift(n(i, "from"), n(i, "to")),
  kelvinAfterShift: (i) => exposure.kelvinFromMired(exposure.miredFromKelvin(n(i, "kelvin")) + n(i, "mired")),
  relativeExposureWithEi: exposureDifference,
  relativeLightWithEi: (i) => 2 ** exposureDifference(i),

  frameOfLabel: (i) => {
    const result = parseTimecode(text(i, "text"), rate(i), i.dropFrame === true);
    return result.ok ? result.frame : result.problem;
  },
  labelOfFrame: (i) => formatTimecode(n(i, "frame"), rate(i), i.dropFrame === true),
  framesPerDay: (i) => framesPerDay(rate(i), i.dropFrame === true),
  labelDayErrorSeconds: (i) => drift.labelDayErrorSeconds(rate(i), i.dropFrame === true),
  labelDayErrorFrames: (i) => (drift.labelDayErrorSeconds(rate(i), i.dropFrame === true) * rate(i).num) / rate(i).denom,
  rateDriftSeconds: (i) => drift.rateDriftSeconds(rate(i, "a"), rate(i, "b"), n(i, "hours") * 3600),
  rateDriftFrames: (i) => drift.rateDriftSeconds(rate(i, "a"), rate(i, "b"), n(i, "hours") * 3600) * 24,
  crystalDriftSeconds: (i) => drift.crystalDriftSeconds(n(i, "ppm"), n(i, "hours") * 3600),
  hoursUntilDrift: (i) => drift.hoursUntilDrift(n(i, "ppm"), n(i, "seconds")),

  readDistance: (i) => {
    const reading = readDistance(text(i, "text"));
    return reading.ok ? reading.value : reading.problem;
  },
  feetAndInches: (i) => feetAndInches(n(i, "m")).replaceAll("\u00a0", " "),
  eighths: (i) => eighths(n(i, "count")).replaceAll("\u00a0", " "),
  durationText: (i) => durationText(n(i, "frames"), rate(i)).replaceAll("\u00a0", " "),
};
