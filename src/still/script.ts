/** A still as a script: a page from the disk may show a picture file and may not read its pixels, but it may read its own data. */

import type { PictureHeader } from "../ingest/pictures/picture-header.ts";
import { readPng, reduced, writePng } from "./picture.ts";

/** Global that still scripts call, defined by `assets/take.js`. */
const RECEIVER = "lensDaybookStill";
/** A page's canvas is no wider. */
const MOST_WIDTH_PX = 960;
const MOST_PIXELS = 64_000_000;
/** JPEG files cannot be made smaller here; larger ones are left out. */
const MOST_JPEG_BYTES = 4_000_000;

/**
 * Text of the script that hands a still to the page as a data address, PNG no wider than 960 pixels; `null` for a still
 * that is too large or cannot be read.
 */
export function stillScript(bytes: Uint8Array, size: PictureHeader): string | null {
  const carried = size.kind === "jpeg" ? (bytes.length > MOST_JPEG_BYTES ? null : bytes) : carriedPng(bytes, size);
  if (carried === null) return null;
  const base64 = Buffer.from(carried.buffer, carried.byteOffset, carried.byteLength).toString("base64");
  return `${RECEIVER}("data:image/${size.kind};base64,${base64}");\n`;
}

function carriedPng(bytes: Uint8Array, size: PictureHeader): Uint8Array | null {
  if (size.widthPx * size.heightPx > MOST_PIXELS) return null;
  const picture = readPng(bytes);
  if (picture === null) return null;
  const small = reduced(picture, MOST_WIDTH_PX);
  return small === picture ? bytes : writePng(small);
}
