import readExif from "exif-reader";
import { NO_STILL_DATA, type StillData } from "./still-lens.ts";

/** What no camera writes; a damaged block may claim any size. */
const LARGEST = 1_000_000;
/** Subject distance "infinity" as EXIF has it. */
const EXIF_INFINITY = 0xffffffff;

/** Focal length, stop, distance, exposure and date of an EXIF block (from its TIFF header on); what cannot be read is not there. */
export function stillDataOfExif(block: Uint8Array): StillData {
  if (block.length > LARGEST) return NO_STILL_DATA;
  try {
    const { Image: image, Photo: photo } = readExif(Buffer.from(block.buffer, block.byteOffset, block.byteLength));
    const metres = numberOf(photo?.SubjectDistance);
    return {
      ...NO_STILL_DATA,
      focalMm: positive(photo?.FocalLength),
      focusDioptres: metres === null || metres <= 0 ? null : metres >= EXIF_INFINITY ? 0 : 1 / metres,
      fNumber: positive(photo?.FNumber),
      exposureSeconds: positive(photo?.ExposureTime),
      iso: positive(photo?.ISOSpeedRatings),
      lensModel: textOf(photo?.LensModel),
      lensSerial: textOf(photo?.LensSerialNumber),
      taken: dateOf(photo?.DateTimeOriginal) ?? dateOf(image?.DateTime),
    };
  } catch {
    return NO_STILL_DATA;
  }
}

function numberOf(value: unknown): number | null {
  const one: unknown = Array.isArray(value) ? value[0] : value;
  return typeof one === "number" && Number.isFinite(one) ? one : null;
}

function positive(value: unknown): number | null {
  const number = numberOf(value);
  return number !== null && number > 0 ? number : null;
}

function textOf(value: unknown): string | null {
  return typeof value === "string" && value.trim() !== "" ? value.trim() : null;
}

/** The library gives local time as if it were of Greenwich: back to the digits that were written. */
function dateOf(value: unknown): string | null {
  if (!(value instanceof Date) || Number.isNaN(value.getTime())) return null;
  return value.toISOString().slice(0, 19).replaceAll("-", ":").replace("T", " ");
}
