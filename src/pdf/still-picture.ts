/** Stills as the PDF can hold them: opaque, in RGB or grey, no larger than the paper can show. */
import { pictureHeader } from "../ingest/pictures/picture-header.ts";
import { type Picture, readPng, reduced, writePng } from "../still/picture.ts";

/** A still of a take: the name of its file and its bytes. */
export interface Still {
  readonly name: string;
  readonly bytes: Uint8Array;
}

export interface PrintPicture {
  readonly bytes: Uint8Array;
  readonly widthPx: number;
  readonly heightPx: number;
}

/** Some 270 dots an inch where it is printed. */
const MOST_WIDTH_PX = 960;
/** Larger pictures would take the memory of many days. */
const MOST_PIXELS = 64_000_000;
/** JPEG files cannot be made smaller here. */
const MOST_JPEG_BYTES = 1_000_000;

/** `null` for a picture that cannot be read, is too large, or is in inks (CMYK), which the PDF's one colour space forbids. */
export function printPicture(bytes: Uint8Array): PrintPicture | null {
  const header = pictureHeader(bytes);
  if (header === null || header.widthPx < 1 || header.heightPx < 1) return null;
  const { widthPx, heightPx } = header;
  if (header.kind === "jpeg") return isPrintableJpeg(bytes) ? { bytes, widthPx, heightPx } : null;
  if (widthPx * heightPx > MOST_PIXELS) return null;
  const picture = readPng(bytes);
  if (picture === null) return null;
  const small = onPaper(reduced(picture, MOST_WIDTH_PX));
  return { bytes: writePng(small), widthPx: small.widthPx, heightPx: small.heightPx };
}

/** What is clear shows the paper. */
function onPaper(picture: Picture): Picture {
  const rgba = new Uint8Array(picture.rgba.length);
  for (let i = 0; i < rgba.length; i += 4) {
    const cover = (picture.rgba[i + 3] ?? 255) / 255;
    for (let channel = 0; channel < 3; channel++)
      rgba[i + channel] = Math.round((picture.rgba[i + channel] ?? 0) * cover + 255 * (1 - cover));
    rgba[i + 3] = 255;
  }
  return { ...picture, rgba };
}

/**
 * Whether a JPEG is of 8 bits, baseline or progressive, in grey or in three channels, and ends as it should.
 *
 * @source ITU-T T.81, B.1.1 and B.2.2
 */
function isPrintableJpeg(bytes: Uint8Array): boolean {
  if (bytes.length > MOST_JPEG_BYTES || bytes.at(-2) !== 0xff || bytes.at(-1) !== 0xd9) return false;
  for (let at = 2; at + 9 < bytes.length; ) {
    if (bytes[at] !== 0xff) return false;
    const marker = bytes[at + 1] ?? 0;
    if (marker === 0xff) {
      at++;
      continue;
    }
    if (marker >= 0xc0 && marker <= 0xc2) return bytes[at + 4] === 8 && (bytes[at + 9] === 1 || bytes[at + 9] === 3);
    at += 2 + (((bytes[at + 2] ?? 0) << 8) | (bytes[at + 3] ?? 0));
  }
  return false;
}
