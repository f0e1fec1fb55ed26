/** Camera set-up of a take: every fact the notes and the kit can hold, with its source or the words that it is absent. */
import { NOT_RECORDED } from "../../format/absent.ts";
import { fps, kelvin } from "../../format/amounts.ts";
import { shutter } from "../../format/degrees.ts";
import { areaMm, distance } from "../../format/length.ts";
import { fixed, significant } from "../../format/number.ts";
import { stops, transmittanceText } from "../../format/stop.ts";
import type { SlateExposure } from "../../summary/exposure.ts";
import type { TakeSummary } from "../../summary/types.ts";
import { type Fact, fact, factOr } from "../facts.ts";
import type { Distances } from "../names.ts";
import { plateWords, tradeWords } from "../names.ts";
import { exposureFacts } from "./take-exposure.ts";
import { standFacts } from "./take-readout.ts";

export function setupFacts(t: TakeSummary, distances: Distances, slate: SlateExposure | null): readonly Fact[] {
  const { take } = t;
  const noted = { source: "noted" } as const;
  return [
    factOr("Scene", take.scene, NOT_RECORDED, noted),
    bodyFact(t),
    modeFact(t),
    ...standFacts(t, distances),
    factOr("Subject", t.subjectM === null ? null : distance(t.subjectM, distances), NOT_RECORDED, noted),
    factOr("Filters", t.filters, NOT_RECORDED, noted),
    factOr("ND", t.ndStops === null ? null : stops(t.ndStops), NOT_RECORDED, noted),
    factOr("Shutter", t.shutterDeg === null ? null : shutter(t.shutterDeg, take.captureFps), NOT_RECORDED, noted),
    factOr("EI", t.ei === null ? null : String(t.ei), NOT_RECORDED, noted),
    ...exposureFacts(t.exposure, slate),
    factOr("White balance", t.whiteBalanceK === null ? null : kelvin(t.whiteBalanceK), NOT_RECORDED, noted),
    captureFact(t),
    factOr("Sound", take.sound === null ? null : tradeWords(take.sound), NOT_RECORDED, noted),
    squeezeFact(t),
    ...plateFacts(t),
    factOr("Remark", t.remarks, NOT_RECORDED, noted),
  ];
}

function bodyFact(t: TakeSummary): Fact {
  const mode = t.take.sensorMode;
  const serial = mode?.serial == null ? "" : `, serial ${mode.serial}`;
  if (mode === null) return fact("Camera", `${t.take.camera}, not in the kit`, { source: "noted" });
  return fact("Camera", `${mode.body ?? "Body not recorded"}, camera ${t.take.camera}${serial}`, { source: "kit" });
}

function modeFact(t: TakeSummary): Fact {
  const mode = t.take.sensorMode;
  if (mode === null) return factOr("Sensor mode", null, NOT_RECORDED);
  const pixels = mode.resolutionX === null || mode.resolutionY === null ? "" : `, ${mode.resolutionX} × ${mode.resolutionY}`;
  const source = t.take.note?.sensorMode == null ? "kit, first mode" : "noted, kit";
  return fact("Sensor mode", `${mode.sensorMode}${pixels}, ${areaMm(mode.activeWidthMm, mode.activeHeightMm)}`, { source });
}

function captureFact(t: TakeSummary): Fact {
  const { captureFps, captureFpsNoted } = t.take;
  return fact("Capture", fps(captureFps), { source: captureFpsNoted ? "noted" : "the timecode rate" });
}

function squeezeFact(t: TakeSummary): Fact {
  const { squeeze } = t.take;
  return fact("Squeeze", squeeze === 1 ? "1, spherical" : fixed(squeeze, 2), { source: "log, lens or mode" });
}

function plateFacts(t: TakeSummary): readonly Fact[] {
  const words = plateWords(t.take);
  return words === null ? [] : [fact("Plate", words, { source: "noted" })];
}

/** What the calculated depth of field rests on: circle of confusion and the f-number that was used. */
export function depthBasis(t: TakeSummary, showSays: boolean): string {
  const c = t.take.circleOfConfusionMm;
  if (t.depthOfField === null || c === null) return "No depth of field: it needs focus, stop, focal length and a sensor mode.";
  const pupils = t.take.lens?.pupilMagnification ?? null;
  const pupilWords = pupils === null ? "" : ` Pupil magnification ${significant(pupils, 3)} (kit).`;
  const circle = `Circle of confusion ${significant(c, 3)} mm (${showSays ? "show.yaml" : "sensor diagonal / 1500"}).${pupilWords}`;
  const tau = t.take.lens?.transmittance ?? null;
  const tauWords = tau === null ? "" : ` ${transmittanceText(tau)}`;
  if (t.depthOfField.stopUsed === "f") return `${circle} f-number from the log.`;
  if (t.depthOfField.stopUsed === "t-times-root-tau")
    return `${circle} f-number from T and the lens's transmittance${tauWords} (kit).`;
  return `${circle} T stands in for the f-number: the lens's transmittance is not known, so the depth is a little too deep.`;
}
