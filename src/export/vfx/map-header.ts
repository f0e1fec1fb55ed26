/** Header attributes of a map: what lens it is of, at what setting, and how to read the values. */
import type { TakeSummary } from "../../summary/types.ts";
import type { ExrAttributes, ExrValue } from "../exr-writer.ts";
import { frameTimecode } from "./lens-rows.ts";
import type { MapFile, MapKind } from "./map-plan.ts";
import type { MapSize } from "./map-size.ts";
import { captureRate } from "./opentrackio-static.ts";
import { exposureSeconds, metresOfFocus } from "./units.ts";

const HOW: Readonly<Record<MapKind, string>> = {
  undistort:
    "UV map that takes a recorded picture to the ideal one: the output pixel is the ideal position, R = u and G = v are where to look in the recorded picture.",
  redistort:
    "UV map that takes an ideal picture to the recorded one: the output pixel is the recorded position, R = u and G = v are where to look in the ideal picture.",
  shading:
    "Brightness factor of the lens at the recorded pixel, R = G = B, 1 in the middle: divide linear light by it to take shading off, multiply to put it on.",
};
const UV =
  "u = (x + 0.5) / width from the left, v = (y + 0.5) / height from the top; 0 to 1 is the display window. B is 0. -1, -1: not defined there.";

/** The header of a map beside its windows. Names and units are those of OpenEXR's standard attributes where it has one. */
export function mapHeader(summary: TakeSummary, file: MapFile, size: MapSize): ExrAttributes {
  const { take, perFrame, shutterDeg, ei } = summary;
  const { lens, sensorMode: mode } = take;
  const i = file.frame;
  const at = (values: ArrayLike<number> | undefined): number | null => {
    const value = values?.[i];
    return value === undefined || Number.isNaN(value) ? null : value;
  };
  const dioptres = at(perFrame?.focusDioptres);
  const metres = dioptres === null ? null : metresOfFocus(dioptres);
  const pupil = at(take.track?.columns.entrance_pupil_mm) ?? file.look.tablePupilMm ?? lens?.entrancePupilMm ?? null;
  const rate = captureRate(take.captureFps, take.rate);
  const shutter = shutterDeg !== null && shutterDeg > 0 && shutterDeg <= 360 ? shutterDeg : null;
  return present({
    comments: text(file.kind === "shading" ? HOW.shading : `${HOW[file.kind]} ${UV}`),
    mapKind: text(file.kind),
    mapFrame: int(i),
    recordedResolution: text(`${size.recordedWidth}x${size.recordedHeight}`),
    overscan: file.overscan === 1 ? null : float(file.overscan),
    cameraLabel: text(take.camera),
    cameraModel: text(mode?.body),
    cameraSerialNumber: text(mode?.serial),
    reelName: text(take.roll),
    lensMake: text(lens?.maker),
    lensModel: text([lens?.series, take.lensId].filter((part) => part).join(" ")),
    lensSerialNumber: text(lens?.serial),
    // the number on the barrel of a prime; a zoom has none
    nominalFocalLength: float(lens?.kind === "prime" ? lens.focalMm : null),
    pinholeFocalLength: float(at(perFrame?.focalMm)),
    // metres; infinity is left out, and focusDioptres is 0
    focus: metres === null || !Number.isFinite(metres) ? null : float(metres),
    focusDioptres: float(dioptres),
    aperture: float(at(perFrame?.fStop)),
    tStop: float(at(perFrame?.tStop)),
    // mm here, where OpenTrackIO has metres
    entrancePupilOffset: float(pupil),
    shutterAngle: float(shutter),
    expTime: float(shutter === null ? null : exposureSeconds(shutter, take.captureFps)),
    isoSpeed: float(ei),
    captureRate: rate === null ? null : { type: "rational", value: rate },
    framesPerSecond: { type: "rational", value: { num: take.rate.num, denom: take.rate.denom } },
    timeCode: timeCode(summary, i),
  });
}

/**
 * A label in the packing of 60 Hz television, which counts to 29: `null` above 30 frames a second.
 * @source OpenEXR, ImfTimeCode.h
 */
function timeCode(summary: TakeSummary, frame: number): ExrValue | null {
  const { rate } = summary.take;
  const label = frameTimecode(summary, frame);
  if (label === null || Math.round(rate.num / rate.denom) > 30) return null;
  return { type: "timecode", value: [packedTimeCode(label), 0] };
}

/** @example packedTimeCode("10:03:00;05") // 0x10030045 */
export function packedTimeCode(label: string): number {
  const [hours = 0, minutes = 0, seconds = 0, frames = 0] = label.split(/[:;]/).map(Number);
  const bcd = (n: number): number => Math.floor(n / 10) * 16 + (n % 10);
  const drop = label.includes(";") ? 1 << 6 : 0;
  return bcd(frames) + drop + bcd(seconds) * 2 ** 8 + bcd(minutes) * 2 ** 16 + bcd(hours) * 2 ** 24;
}

function present(attributes: Readonly<Record<string, ExrValue | null>>): ExrAttributes {
  return Object.fromEntries(Object.entries(attributes).filter((entry): entry is [string, ExrValue] => entry[1] !== null));
}

function text(value: string | null | undefined): ExrValue | null {
  return value === null || value === undefined || value === "" ? null : { type: "string", value };
}

function float(value: number | null | undefined): ExrValue | null {
  return value === null || value === undefined ? null : { type: "float", value };
}

function int(value: number): ExrValue {
  return { type: "int", value };
}
