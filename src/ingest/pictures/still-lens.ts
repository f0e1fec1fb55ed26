/** What the file of a still says of itself: the picture's size, and the lens and exposure data that cameras write into it. */
import type { ExrPart, ExrValue } from "./exr-header.ts";

/** In this project's units; `null` where the file does not say it. */
export interface StillData {
  readonly widthPx: number | null;
  readonly heightPx: number | null;
  /** As the lens is marked, else as a model of the lens needs it, else as a thick lens has it. */
  readonly focalMm: number | null;
  /** Dioptres (1/m); 0 is infinity. */
  readonly focusDioptres: number | null;
  readonly tStop: number | null;
  readonly fNumber: number | null;
  readonly entrancePupilMm: number | null;
  readonly shutterDeg: number | null;
  readonly exposureSeconds: number | null;
  readonly iso: number | null;
  readonly lensModel: string | null;
  readonly lensSerial: string | null;
  readonly camera: string | null;
  readonly reel: string | null;
  /** `HH:MM:SS:FF`, with `;` before the frames when drop-frame. */
  readonly timecode: string | null;
  /** As the file writes it, `YYYY:MM:DD hh:mm:ss`, local time. */
  readonly taken: string | null;
}

export const NO_STILL_DATA: StillData = Object.freeze({
  widthPx: null,
  heightPx: null,
  focalMm: null,
  focusDioptres: null,
  tStop: null,
  fNumber: null,
  entrancePupilMm: null,
  shutterDeg: null,
  exposureSeconds: null,
  iso: null,
  lensModel: null,
  lensSerial: null,
  camera: null,
  reel: null,
  timecode: null,
  taken: null,
});

/**
 * The standard attributes of an OpenEXR header: an attribute of the first part that has it. Focus is in m, focal lengths and the
 * entrance pupil are in mm.
 *
 * @source OpenEXR, ImfStandardAttributes.h
 */
export function stillDataOfExr(parts: readonly ExrPart[]): StillData {
  const value = (name: string): ExrValue => parts.map((part) => part.get(name)?.value ?? null).find((v) => v !== null) ?? null;
  const text = (name: string): string | null => {
    const found = value(name);
    // A serial number that is all digits is sometimes written as a whole number.
    const written = typeof found === "number" ? String(found) : found;
    return typeof written === "string" && written.trim() !== "" ? written.trim() : null;
  };
  const positive = (name: string): number | null => {
    const found = value(name);
    return typeof found === "number" && found > 0 && Number.isFinite(found) ? found : null;
  };
  const focus = value("focus");
  const window = value("displayWindow");
  const size = Array.isArray(window) ? (window as readonly number[]) : null;
  const pupil = value("entrancePupilOffset");
  return {
    widthPx: size === null ? null : (size[2] as number) - (size[0] as number) + 1,
    heightPx: size === null ? null : (size[3] as number) - (size[1] as number) + 1,
    focalMm: positive("nominalFocalLength") ?? positive("pinholeFocalLength") ?? positive("effectiveFocalLength"),
    focusDioptres: typeof focus === "number" && focus > 0 ? 1 / focus : null,
    tStop: positive("tStop"),
    fNumber: positive("aperture"),
    entrancePupilMm: typeof pupil === "number" && Number.isFinite(pupil) ? pupil : null,
    shutterDeg: positive("shutterAngle"),
    exposureSeconds: positive("expTime"),
    iso: positive("isoSpeed"),
    lensModel: text("lensModel"),
    lensSerial: text("lensSerialNumber"),
    camera: text("cameraLabel"),
    reel: text("reelName"),
    timecode: timecodeOfWords(value("timeCode")),
    taken: text("capDate"),
  };
}

/**
 * The label in the first word of a time code, packed in binary coded decimals as for 60-field television; `null` when its digits are
 * none.
 *
 * @source OpenEXR, ImfTimeCode.h (TV60_PACKING)
 * @example timecodeOfWords([0x10030045, 0]) // "10:03:00;05"
 */
export function timecodeOfWords(value: ExrValue): string | null {
  if (!Array.isArray(value) || value.length !== 2) return null;
  const word = value[0] as number;
  const two = (shift: number, tensMask: number): string | null => {
    const ones = (word >>> shift) & 0xf;
    return ones > 9 ? null : `${(word >>> (shift + 4)) & tensMask}${ones}`;
  };
  const [frames, seconds, minutes, hours] = [two(0, 3), two(8, 7), two(16, 7), two(24, 3)];
  if (frames === null || seconds === null || minutes === null || hours === null) return null;
  if (Number(seconds) > 59 || Number(minutes) > 59 || Number(hours) > 23) return null;
  return `${hours}:${minutes}:${seconds}${(word & 0x40) === 0 ? ":" : ";"}${frames}`;
}
