/** All values of plates as rows: a term, and what each take has, with where it comes from. */
import { NOT_CALCULATED, NOT_RECORDED } from "../../format/absent.ts";
import { fps, kelvin } from "../../format/amounts.ts";
import { degrees, roll, shutter, tilt } from "../../format/degrees.ts";
import { areaMm, type DistanceSystem, distance, distanceRange, millimetresRange } from "../../format/length.ts";
import { fixed, thousands, trimmed } from "../../format/number.ts";
import { percent, signedPercent } from "../../format/percent.ts";
import { NBSP } from "../../format/space.ts";
import { stops } from "../../format/stop.ts";
import type { TakeSummary } from "../../summary/types.ts";
import { plateWords, sentence, standing, tradeWords } from "../../view/names.ts";
import { focalText, focusText, frameTimecode, lengthText, lensText, stopText, stopUsedText } from "../take-words.ts";

export interface PlateRow {
  readonly term: string;
  readonly text: (t: TakeSummary) => string;
}

export function plateRows(distances: DistanceSystem): readonly PlateRow[] {
  return [...takeRows(), ...cameraRows(distances), ...lensRows(distances), ...lookRows()];
}

function takeRows(): readonly PlateRow[] {
  return [
    { term: "Plate", text: (t) => `${plateWords(t.take) ?? NOT_RECORDED}; ${standingWords(t)}` },
    { term: "Clip, roll", text: ({ take }) => `${take.clip ?? NOT_RECORDED}, roll ${take.roll ?? NOT_RECORDED}` },
    {
      term: "In, first after",
      text: (t) => (t.timecodeIn === null ? NOT_RECORDED : `${t.timecodeIn}, ${t.timecodeOut}`),
    },
    { term: "Length", text: (t) => (t.take.durationFrames === 0 ? NOT_RECORDED : `${lengthText(t)}, ${framesText(t)}`) },
  ];
}

function standingWords(t: TakeSummary): string {
  const words = standing({ ...t.take, plate: null });
  return words === ""
    ? `standing ${NOT_RECORDED}`
    : words
        .replace(/\.$/, "")
        .toLowerCase()
        .replace(/\bng\b/, "NG");
}

function framesText(t: TakeSummary): string {
  if (t.take.track === null) return `${thousands(t.framesExpected)} frames, no log`;
  const missing = t.framesMissing === 0 ? "all logged" : `${thousands(t.framesMissing)} not logged`;
  return `${thousands(t.framesExpected)} frames, ${missing}`;
}

function cameraRows(distances: DistanceSystem): readonly PlateRow[] {
  return [
    { term: "Camera", text: cameraText },
    { term: "Sensor mode", text: modeText },
    {
      term: "Height, tilt, roll",
      text: (t) =>
        withSources([
          { figure: t.cameraHeightM, term: "lens height", write: (m) => distance(m, distances) },
          { figure: t.tiltDeg, term: "tilt", write: tilt },
          { figure: t.rollDeg, term: "roll", write: roll },
        ]),
    },
    { term: "Subject", text: (t) => noted(t.subjectM, (m) => distance(m, distances)) },
    { term: "Filters, ND", text: (t) => `${t.filters ?? `filters ${NOT_RECORDED}`}; ${ndText(t)}` },
    {
      term: "Shutter, EI, white",
      text: (t) =>
        [
          t.shutterDeg === null ? `shutter ${NOT_RECORDED}` : shutter(t.shutterDeg, t.take.captureFps),
          t.ei === null ? `EI ${NOT_RECORDED}` : `EI ${trimmed(t.ei, 0)}`,
          t.whiteBalanceK === null ? `white balance ${NOT_RECORDED}` : kelvin(t.whiteBalanceK),
        ].join("; "),
    },
    {
      term: "Capture, sound",
      text: ({ take }) =>
        `${fps(take.captureFps)} (${take.captureFpsNoted ? "noted" : "timecode rate"}); ${take.sound === null ? `sound ${NOT_RECORDED}` : tradeWords(take.sound)}`,
    },
  ];
}

function cameraText({ take }: TakeSummary): string {
  const mode = take.sensorMode;
  if (mode === null) return `${take.camera}, not in the kit`;
  return `${take.camera}, ${mode.body ?? `body ${NOT_RECORDED}`}, serial ${mode.serial ?? NOT_RECORDED} (kit)`;
}

function modeText({ take }: TakeSummary): string {
  const mode = take.sensorMode;
  if (mode === null) return NOT_RECORDED;
  const pixels = mode.resolutionX === null || mode.resolutionY === null ? "" : `, ${mode.resolutionX} × ${mode.resolutionY}`;
  const squeeze = take.squeeze === 1 ? "" : `, squeeze ×${NBSP}${trimmed(take.squeeze, 2)}`;
  return `${mode.sensorMode}${pixels}, ${areaMm(mode.activeWidthMm, mode.activeHeightMm)}${squeeze}`;
}

function lensRows(distances: DistanceSystem): readonly PlateRow[] {
  return [
    {
      term: "Lens",
      text: (t) =>
        t.take.lensId === null
          ? NOT_RECORDED
          : `${lensText(t)}, serial ${t.take.lens?.serial ?? NOT_RECORDED} (${t.take.lensSource ?? "noted"})`,
    },
    { term: "Focal length", text: (t) => sourced(focalText(t), t.focal?.source) },
    { term: "Stop", text: (t) => sourced(stopText(t), t.tStop?.source) },
    { term: "Focus", text: (t) => sourced(focusText(t, distances), t.focus?.source) },
    { term: "Shallowest depth", text: (t) => sharpText(t, distances) },
    {
      term: "Depth rests on",
      text: (t) => {
        const coc = t.take.circleOfConfusionMm;
        return t.depthOfField === null || coc === null
          ? NOT_CALCULATED
          : `circle of confusion ${fixed(coc, 4)} mm; ${stopUsedText(t)}`;
      },
    },
    {
      term: "Hyperfocal",
      text: ({ hyperfocalM: h }) => (h === null ? NOT_CALCULATED : distanceRange(h.min, h.max, distances)),
    },
    {
      term: "Angle of view",
      text: ({ angleOfViewDeg: a }) =>
        a === null ? NOT_CALCULATED : `${degrees(a.horizontal)} across, ${degrees(a.vertical)} high`,
    },
    {
      term: "Entrance pupil",
      text: ({ entrancePupilMm: p }) =>
        p === null ? NOT_RECORDED : `${millimetresRange(tenth(p.min), tenth(p.max))} (${p.source})`,
    },
  ];
}

function sharpText(t: TakeSummary, distances: DistanceSystem): string {
  const shallow = t.depthOfField?.shallowest ?? null;
  if (shallow === null) return NOT_CALCULATED;
  const at = shallow.frame === null ? "from the note" : frameTimecode(t, shallow.frame);
  return `${distanceRange(shallow.nearM, shallow.farM, distances)} at ${at}`;
}

/** Distortion and shading in corner, mid-side and mid-top at the middle logged frame, and what they ask of the picture. */
function lookRows(): readonly PlateRow[] {
  return [
    {
      term: "Distortion C, S, T",
      text: ({ distortionPercent: d }) =>
        d === null ? NOT_CALCULATED : `${fixed(d.corner, 2)}, ${fixed(d.midSide, 2)}, ${percent(d.midTop)}`,
    },
    {
      term: "Shading C, S, T",
      text: (t) => {
        const s = t.shadingStops;
        if (s !== null) return `${fixed(s.corner, 2)}, ${fixed(s.midSide, 2)}, ${stops(s.midTop)}`;
        const natural = t.naturalFallOffStops;
        return natural === null
          ? NOT_CALCULATED
          : `not measured; natural fall-off alone, an estimate: ${stops(natural)} at the corner`;
      },
    },
    { term: "Lens look from", text: lookSource },
    { term: "Canvas, lens off", text: canvasText },
  ];
}

function lookSource(t: TakeSummary): string {
  const state = t.calibration;
  const at = t.middleFrame === null ? "" : `, at ${frameTimecode(t, t.middleFrame)}`;
  switch (state.kind) {
    case "logged":
      return `coefficients of the log${at}`;
    case "inside":
      return `the lens's table${at}`;
    case "nearest":
      if (state.axes.length === 0) return `nearest row of the lens's table, which has no values here${at}`;
      return `nearest point of the lens's table (beyond it in ${state.axes.map(({ axis }) => axis).join(", ")})${at}`;
    default:
      return sentence(state.reason);
  }
}

function canvasText(t: TakeSummary): string {
  const canvas = t.overscan?.undistort ?? null;
  if (canvas === null) return t.overscanReason === null ? NOT_CALCULATED : `${NOT_CALCULATED}: ${t.overscanReason}`;
  return `${thousands(canvas.widthPx)} × ${thousands(canvas.heightPx)} pixels (${signedPercent(canvas.percent, 1)})`;
}

function ndText(t: TakeSummary): string {
  return t.ndStops === null ? `ND ${NOT_RECORDED}` : `ND ${stops(t.ndStops)}`;
}

interface SourcedTerm {
  readonly figure: { readonly value: number; readonly source: string } | null;
  readonly term: string;
  readonly write: (value: number) => string;
}

/** "lens height 1.55 m, tilt 1.5° down (noted); roll not recorded": a source once for all that have it. */
function withSources(terms: readonly SourcedTerm[]): string {
  const sources = [...new Set(terms.map(({ figure }) => figure?.source ?? null))];
  const clauses = sources.map((source) => {
    const mine = terms.filter(({ figure }) => (figure?.source ?? null) === source);
    const words = mine.map(({ figure, term, write }) => `${term} ${figure === null ? NOT_RECORDED : write(figure.value)}`);
    return `${words.join(", ")}${source === null ? "" : ` (${source})`}`;
  });
  return clauses.join("; ");
}

function noted<T>(value: T | null, write: (value: T) => string): string {
  return value === null ? NOT_RECORDED : `${write(value)} (noted)`;
}

function sourced(text: string | null, source: string | undefined): string {
  return text === null ? NOT_RECORDED : `${text} (${source})`;
}

function tenth(mm: number): number {
  return Math.round(mm * 10) / 10;
}
