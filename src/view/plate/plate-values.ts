/** Camera and lens values of a plate sheet: a column a camera, absent values in words. */
import { NOT_CALCULATED, NOT_LOGGED, NOT_RECORDED } from "../../format/absent.ts";
import { fps, kelvin } from "../../format/amounts.ts";
import { brief } from "../../format/brief.ts";
import { degrees, roll, shutter, tilt } from "../../format/degrees.ts";
import { areaMm, distance, distanceRange } from "../../format/length.ts";
import { fixed, thousands } from "../../format/number.ts";
import { NBSP } from "../../format/space.ts";
import { stopRange, stops } from "../../format/stop.ts";
import { durationText } from "../../format/time.ts";
import type { TakeSummary, ThreePoints } from "../../summary/types.ts";
import { rateLabel } from "../../time/frame-rate.ts";
import { type Distances, lensName } from "../names.ts";
import { type Cell, cell, column, FIXED, row, type TableModel, table, textOr } from "../table.ts";
import { focalRange } from "../take/take-facts.ts";
import { calibrationWords } from "../take/take-readout.ts";

/** Longer free texts, alone or in one of two columns, would make the sheet longer than its paper. */
const MOST = { alone: 44, beside: 18 } as const;

/** `written`: what people wrote, which may be cut; a figure never is. */
type Value = readonly [text: string | null, absent: string, source?: string | undefined, written?: "written"];
type Line = readonly [term: string, of: (t: TakeSummary) => Value];

/** Where the camera stood and how it was set. */
export function cameraValues(takes: readonly TakeSummary[], system: Distances): TableModel {
  return valuesTable("camera-values", "Camera", takes, [
    ["Clip", ({ take }) => [take.clip, NOT_RECORDED, "", "written"]],
    ["Timecode in", (t) => [t.timecodeIn, NOT_RECORDED]],
    ["Timecode out", (t) => [t.timecodeOut, NOT_RECORDED]],
    [
      "Length",
      ({ take }) => [
        take.durationFrames === 0 ? null : `${durationText(take.durationFrames, take.rate)} at ${rateLabel(take.rate)}`,
        NOT_RECORDED,
      ],
    ],
    ["Body", ({ take }) => [bodyWords(take.sensorMode), NOT_RECORDED, "kit", "written"]],
    ["Sensor mode", ({ take }) => [modeWords(take.sensorMode), NOT_RECORDED, "kit"]],
    ["Active area", ({ take: { sensorMode: m } }) => [m && areaMm(m.activeWidthMm, m.activeHeightMm), NOT_RECORDED, "kit"]],
    ["Capture", ({ take }) => [fps(take.captureFps), NOT_RECORDED, take.captureFpsNoted ? "noted" : "timecode rate"]],
    ["Shutter", (t) => [t.shutterDeg === null ? null : shutter(t.shutterDeg, t.take.captureFps), NOT_RECORDED, "noted"]],
    ["EI", (t) => [t.ei === null ? null : String(t.ei), NOT_RECORDED, "noted"]],
    ["White balance", (t) => [t.whiteBalanceK === null ? null : kelvin(t.whiteBalanceK), NOT_RECORDED, "noted"]],
    ["ND", (t) => [t.ndStops === null ? null : stops(t.ndStops), NOT_RECORDED, "noted"]],
    ["Filters", (t) => [t.filters, NOT_RECORDED, "noted", "written"]],
    ["Lens height", (t) => [t.cameraHeightM && distance(t.cameraHeightM.value, system), NOT_RECORDED, t.cameraHeightM?.source]],
    ["Tilt", (t) => [t.tiltDeg && tilt(t.tiltDeg.value), NOT_RECORDED, t.tiltDeg?.source]],
    ["Roll", (t) => [t.rollDeg && roll(t.rollDeg.value), NOT_RECORDED, t.rollDeg?.source]],
  ]);
}

/** What was in front of the camera and what it does to the picture. */
export function lensValues(takes: readonly TakeSummary[], system: Distances): TableModel {
  const log = (t: TakeSummary): string => (t.take.track === null ? NOT_RECORDED : NOT_LOGGED);
  return valuesTable("lens-values", "Lens", takes, [
    ["Lens", ({ take }) => [take.lensId && lensName(take.lens, take.lensId), NOT_RECORDED, take.lensSource ?? "", "written"]],
    ["Serial number", ({ take }) => [take.lens?.serial ?? null, NOT_RECORDED, "kit", "written"]],
    ["Focal length", (t) => [t.focal && focalRange(t.focal.minMm, t.focal.maxMm), log(t), t.focal?.source]],
    ["Squeeze", ({ take }) => [take.squeeze === 1 ? "1, spherical" : fixed(take.squeeze, 2), NOT_RECORDED]],
    ["Stop", (t) => [t.tStop && stopRange(t.tStop.widest, t.tStop.deepest), log(t), t.tStop?.source]],
    ["Focus", (t) => [t.focus && distanceRange(t.focus.nearestM, t.focus.farthestM, system), log(t), t.focus?.source]],
    ["Subject", (t) => [t.subjectM === null ? null : distance(t.subjectM, system), NOT_RECORDED, "noted"]],
    ["Sharp, shallowest", (t) => [sharpWords(t, system), NOT_CALCULATED, "calculated"]],
    ["Hyperfocal", (t) => [rangeOf(t.hyperfocalM, (m) => distance(m, system)), NOT_CALCULATED, "calculated"]],
    ["Angle of view", (t) => [viewWords(t), NOT_CALCULATED, "calculated"]],
    ["Entrance pupil", (t) => [pupilWords(t), NOT_RECORDED, `${t.entrancePupilMm?.source}, before the image plane`]],
    ["Distortion C, S, T", (t) => [three(t.distortionPercent, "%"), NOT_CALCULATED, lookSource(t)]],
    ["Shading C, S, T", (t) => [three(t.shadingStops, "stops"), NOT_CALCULATED, lookSource(t)]],
    [
      "Look made on",
      ({ take }) => [take.calibration?.madeOn ?? null, take.calibration === null ? "no table" : NOT_RECORDED, "kit"],
    ],
    [
      "Not logged",
      (t) => [t.take.track === null ? "no log" : `${thousands(t.framesMissing)} of ${thousands(t.framesExpected)} frames`, ""],
    ],
  ]);
}

function valuesTable(id: string, caption: string, takes: readonly TakeSummary[], lines: readonly Line[]): TableModel {
  const several = takes.length > 1;
  return table(
    id,
    caption,
    [column(caption), ...takes.map((t) => column(several ? `Camera ${t.take.camera}` : `Take ${t.take.take} ${t.take.camera}`))],
    lines.map(([term, of]) =>
      row(
        cell(term),
        takes.map((t) => valueCell(of(t), several)),
      ),
    ),
    { cls: FIXED },
  );
}

function valueCell([text, absent, source = "", written]: Value, several: boolean): Cell {
  const most = several ? MOST.beside : MOST.alone;
  const shown = text === null || text === "" ? null : written === undefined ? text : brief(text, most, "cut");
  return textOr(shown, absent, shown === null || several ? {} : { note: source });
}

function bodyWords(mode: TakeSummary["take"]["sensorMode"]): string | null {
  if (mode === null || mode.body === null) return null;
  return mode.serial === null ? mode.body : `${mode.body}, ${mode.serial}`;
}

function modeWords(mode: TakeSummary["take"]["sensorMode"]): string | null {
  if (mode === null) return null;
  const pixels =
    mode.resolutionX === null || mode.resolutionY === null ? "" : `, ${mode.resolutionX}${NBSP}×${NBSP}${mode.resolutionY}`;
  return `${brief(mode.sensorMode, MOST.beside, "cut")}${pixels}`;
}

function sharpWords({ depthOfField }: TakeSummary, system: Distances): string | null {
  const shallowest = depthOfField?.shallowest ?? null;
  return shallowest === null ? null : distanceRange(shallowest.nearM, shallowest.farM, system);
}

function rangeOf(range: { readonly min: number; readonly max: number } | null, write: (value: number) => string): string | null {
  if (range === null) return null;
  const [low, high] = [write(range.min), write(range.max)];
  return low === high ? low : `${low} to ${high}`;
}

function viewWords({ angleOfViewDeg: angle }: TakeSummary): string | null {
  return angle === null ? null : `${degrees(angle.horizontal)} across, ${degrees(angle.vertical)} up and down`;
}

function pupilWords({ entrancePupilMm: pupil }: TakeSummary): string | null {
  const range = rangeOf(pupil, (mm) => fixed(mm, 0));
  return range === null ? null : `${range}${NBSP}mm`;
}

function three(points: ThreePoints | null, unit: string): string | null {
  if (points === null) return null;
  return `${[points.corner, points.midSide, points.midTop].map((value) => fixed(value, 2)).join(", ")}${NBSP}${unit}`;
}

function lookSource(t: TakeSummary): string {
  return calibrationWords(t.calibration);
}
