/** What the first bytes of a PNG or JPEG say: its size, and its block of EXIF. The pixels are not looked at. */

export interface PictureHeader {
  readonly kind: "png" | "jpeg";
  readonly widthPx: number;
  readonly heightPx: number;
  /** From its TIFF header on; `null` without one. */
  readonly exif: Uint8Array | null;
}

const PNG_MARK = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];
/** "Exif", NUL, NUL: what comes before the TIFF header in a JPEG. */
const EXIF_MARK = [0x45, 0x78, 0x69, 0x66, 0, 0];
/** Start-of-frame markers; C4, C8 and CC mean something else. */
const isFrame = (marker: number): boolean => marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker);
/** Markers without a length. */
const isBare = (marker: number): boolean => marker === 0x01 || (marker >= 0xd0 && marker <= 0xd8);

/**
 * Size and EXIF block; `null` for bytes that are neither PNG nor JPEG, or that end before the size.
 *
 * @source W3C Portable Network Graphics (IHDR, eXIf); ITU-T T.81 B.1 and B.2; CIPA DC-008 4.5.4
 */
export function pictureHeader(bytes: Uint8Array): PictureHeader | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (PNG_MARK.every((byte, i) => bytes[i] === byte)) return pngHeader(bytes, view);
  return bytes[0] === 0xff && bytes[1] === 0xd8 ? jpegHeader(bytes, view) : null;
}

function pngHeader(bytes: Uint8Array, view: DataView): PictureHeader | null {
  if (bytes.length < 24) return null;
  const [widthPx, heightPx] = [view.getUint32(16), view.getUint32(20)];
  let exif: Uint8Array | null = null;
  // Length, type, data, check sum; one after the other.
  for (let at = 8; at + 12 <= bytes.length; at += 12 + view.getUint32(at)) {
    const size = view.getUint32(at);
    if (view.getUint32(at + 4) !== 0x65584966) continue;
    if (at + 8 + size <= bytes.length) exif = bytes.subarray(at + 8, at + 8 + size);
    break;
  }
  return widthPx > 0 && heightPx > 0 ? { kind: "png", widthPx, heightPx, exif } : null;
}

function jpegHeader(bytes: Uint8Array, view: DataView): PictureHeader | null {
  let exif: Uint8Array | null = null;
  let at = 2;
  while (at + 4 <= bytes.length) {
    if (bytes[at] !== 0xff) return null;
    const marker = bytes[at + 1] as number;
    if (marker === 0xff) {
      at++;
      continue;
    }
    if (isBare(marker)) {
      at += 2;
      continue;
    }
    const size = view.getUint16(at + 2);
    if (isFrame(marker)) {
      if (at + 9 > bytes.length) return null;
      const [widthPx, heightPx] = [view.getUint16(at + 7), view.getUint16(at + 5)];
      return widthPx > 0 && heightPx > 0 ? { kind: "jpeg", widthPx, heightPx, exif } : null;
    }
    const isExif = marker === 0xe1 && EXIF_MARK.every((byte, i) => bytes[at + 4 + i] === byte);
    if (isExif && exif === null) exif = bytes.subarray(at + 10, Math.min(bytes.length, at + 2 + size));
    at += 2 + size;
  }
  return null;
}
